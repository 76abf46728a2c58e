import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type StaticServer, serveFolder } from '../../.tools/serve.ts';

describe('the static server', () => {
  const house = mkdtempSync(join(tmpdir(), 'ribbonwright-'));
  let server: StaticServer;

  beforeAll(async () => {
    mkdirSync(join(house, 'served'));
    writeFileSync(join(house, 'secret.txt'), 'secret');
    writeFileSync(join(house, 'served', 'index.html'), '<p>home</p>');
    writeFileSync(join(house, 'served', 'a b.js'), 'export {};');
    server = await serveFolder(join(house, 'served'));
  });

  afterAll(async () => {
    await server.close();
    rmSync(house, { recursive: true });
  });

  test.each([
    ['/', 200, 'text/html; charset=utf-8'],
    ['/?layout=1', 200, 'text/html; charset=utf-8'],
    ['/a%20b.js', 200, 'text/javascript; charset=utf-8'],
    ['/missing.js', 404, 'text/plain; charset=utf-8'],
    ['/missing/', 404, 'text/plain; charset=utf-8'],
    ['/../secret.txt', 404, 'text/plain; charset=utf-8'],
    ['/..%2fsecret.txt', 400, 'text/plain; charset=utf-8'],
    ['/%2e%2e%2fsecret.txt', 400, 'text/plain; charset=utf-8'],
    ['/%zz', 400, 'text/plain; charset=utf-8'],
    ['/%00', 400, 'text/plain; charset=utf-8'],
  ])('answers %s with %i', async (path, status, mediaType) => {
    expect(await ask(server.origin, path)).toEqual({ status, mediaType });
  });

  test('refuses to be written to', async () => {
    const { status } = await fetch(server.origin, { method: 'POST', body: 'x' });
    expect(status).toBe(405);
  });

  test('takes another port if the one wanted is taken', async () => {
    const second = await serveFolder(join(house, 'served'), Number(new URL(server.origin).port));
    expect(second.origin).not.toBe(server.origin);
    expect((await fetch(second.origin)).status).toBe(200);
    await second.close();
  });
});

/** Asks for `path` as it is written: fetch would tidy it first. */
const ask = (origin: string, path: string) =>
  new Promise((resolve, reject) => {
    request(origin, { path }, (response) => {
      response.resume();
      resolve({ status: response.statusCode, mediaType: response.headers['content-type'] });
    })
      .on('error', reject)
      .end();
  });
