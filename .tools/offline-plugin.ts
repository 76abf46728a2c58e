import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { type Plugin, transformWithOxc } from 'vite';

type Options = {
  /** The service worker's source; it must import nothing. */
  readonly worker: string;
  /** Copied beside the build as it is. */
  readonly publicDir: string;
};

const NAME = 'service-worker.js';
const NEVER_KEPT = /\.map$/;

/** Writes the service worker with the list of all files of the build and one hash of them in front. */
export function offline({ worker, publicDir }: Options): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      async handler(_options, bundle) {
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

function filesIn(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => statSync(join(folder, file)).isFile())
    .map((file) => file.split(sep).join('/'));
}
