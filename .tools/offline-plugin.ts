import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { type Plugin, transformWithOxc } from 'vite';

type Options = {
  /** The service worker's source; it must import nothing. */
  readonly worker: string;
  /** Copied beside the build as it is. */
  readonly publicDir: string;
  /** A source that is loaded late by its code, but that the first screen waits for. */
  readonly early: string;
};

const NAME = 'service-worker.js';
const NEVER_KEPT = /\.map$/;

/**
 * Writes the service worker with the list of all files of the build and one hash of them in front, and has the page fetch
 * early what its first screen waits for.
 */
export function offline({ worker, publicDir, early }: Options): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      async handler(_options, bundle) {
        const page = bundle['index.html'];
        const chunk = Object.values(bundle).find(
          (one) => one.type === 'chunk' && one.facadeModuleId === early,
        );
        if (page?.type !== 'asset' || chunk?.type !== 'chunk')
          this.error('the page or what it waits for is not in the build');
        const html = textOf(page.source);
        const links = [chunk.fileName, ...chunk.imports]
          .filter((file) => !html.includes(file))
          .map((file) => `  <link rel="modulepreload" crossorigin href="./${file}">\n  `);
        page.source = html.replace('</head>', `${links.join('')}</head>`);

        const contents = new Map<string, string | Uint8Array>();
        for (const [file, one] of Object.entries(bundle)) {
          contents.set(file, one.type === 'chunk' ? one.code : one.source);
        }
        for (const file of filesIn(publicDir)) contents.set(file, readFileSync(join(publicDir, file)));
        const files = [...contents.keys()].filter((file) => !NEVER_KEPT.test(file)).sort();

        const { code } = await transformWithOxc(readFileSync(worker, 'utf8'), worker);
        const hash = createHash('sha256').update(code);
        for (const file of files) hash.update(`${file}\0`).update(contents.get(file) ?? '');
        const build = { hash: hash.digest('hex').slice(0, 16), files };
        const source = `const BUILD = ${JSON.stringify(build)};\n${code.replace(/export\s*\{\s*\};?/, '')}`;
        this.emitFile({ type: 'asset', fileName: NAME, source });
      },
    },
  };
}

const textOf = (source: string | Uint8Array): string =>
  typeof source === 'string' ? source : new TextDecoder().decode(source);

function filesIn(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => statSync(join(folder, file)).isFile())
    .map((file) => file.split(sep).join('/'));
}
