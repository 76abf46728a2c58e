import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const HOST = '127.0.0.1';

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webp': 'image/webp',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff2': 'font/woff2',
};

export const builtApp = fileURLToPath(new URL('../dist/', import.meta.url));

export type StaticServer = { readonly origin: string; readonly close: () => Promise<void> };

/**
 * Serves the files of `folder` on the loopback address.
 * A missing file is a plain 404: answering it with index.html, as single-page servers do, would hide a broken build.
 * @param port The port wanted; 0, or a port that is taken, means any free one.
 */
export async function serveFolder(folder: string, port = 0): Promise<StaticServer> {
  const server = createServer(async (request, response) => {
    const answer = await answerTo(folder, request.method ?? '', request.url ?? '/');
    response.writeHead(answer.status, {
      'content-type': answer.mediaType,
      'content-length': answer.body.length,
      'cache-control': 'no-cache',
      'x-content-type-options': 'nosniff',
    });
    response.end(request.method === 'HEAD' ? undefined : answer.body);
  });
  await listen(server, port);
  const { port: bound } = server.address() as AddressInfo;
  return { origin: `http://${HOST}:${bound}`, close: () => close(server) };
}

type Answer = { readonly status: number; readonly mediaType: string; readonly body: Buffer };

const refusal = (status: number, words: string): Answer => ({
  status,
  mediaType: 'text/plain; charset=utf-8',
  body: Buffer.from(`${words}\n`),
});

async function answerTo(folder: string, method: string, url: string): Promise<Answer> {
  if (method !== 'GET' && method !== 'HEAD') return refusal(405, 'Only GET and HEAD');
  const path = fileFor(folder, url);
  if (path === undefined) return refusal(400, 'No such address');
  try {
    const mediaType = MEDIA_TYPES[extname(path)] ?? 'application/octet-stream';
    return { status: 200, mediaType, body: await readFile(path) };
  } catch {
    return refusal(404, 'Not found');
  }
}

/** The file that a request means, or undefined if its address is malformed or leads out of `folder`. */
function fileFor(folder: string, url: string): string | undefined {
  const root = normalize(folder + sep);
  try {
    const path = decodeURIComponent(new URL(url, `http://${HOST}`).pathname);
    if (path.includes('\0')) return undefined;
    const file = join(root, path.endsWith('/') ? `${path}index.html` : path);
    return file.startsWith(root) ? file : undefined;
  } catch {
    return undefined;
  }
}

async function listen(server: Server, port: number): Promise<void> {
  try {
    await listenOn(server, port);
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw problem;
    await listenOn(server, 0);
  }
}

const listenOn = (server: Server, port: number) =>
  new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, HOST, () => {
      server.off('error', reject);
      resolve();
    });
  });

const close = (server: Server) =>
  new Promise<void>((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
