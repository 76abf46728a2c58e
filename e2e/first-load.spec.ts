import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { builtApp } from '../.tools/serve.ts';
import { expect, test } from './fixtures.ts';

/** JavaScript that the first screen waits for, bytes of gzip -9: React, its reconciler for the canvas and Konva are 142,000 of them. */
const MOST_BYTES = 190_000;

/** Scripts that the page names, and all that they import at once. */
function waitedFor(): ReadonlySet<string> {
  const found = new Set<string>();
  const follow = (file: string): void => {
    if (found.has(file)) return;
    found.add(file);
    const code = readFileSync(`${builtApp}/${file}`, 'utf8');
    for (const [, name] of code.matchAll(/\b(?:from|import)\s*"\.\/([^"]+\.js)"/g)) follow(`assets/${name}`);
  };
  const page = readFileSync(`${builtApp}/index.html`, 'utf8');
  for (const [, file] of page.matchAll(/(?:src|href)="\.\/([^"]+\.js)"/g)) follow(file as string);
  return found;
}

test('the first screen waits for little', () => {
  const files = [...waitedFor()];
  expect(files.length).toBeGreaterThan(0);
  const bytes = files.map((file) => gzipSync(readFileSync(`${builtApp}/${file}`), { level: 9 }).length);
  expect(bytes.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(MOST_BYTES);
});
