import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin, Rolldown } from 'vite';
import type { Licence } from '../app/licences/licence.ts';

const LICENCE_FILE = /^(licen[cs]e|copying)(\.(md|txt|mit))?$/i;

/** What a module of the build came from; the bundler's own helpers have no file. */
function folderOf(id: string, root: string): string | undefined {
  if (id.includes('vite/preload-helper')) return join(root, 'node_modules/vite');
  if (id.includes('rolldown/runtime')) return join(root, 'node_modules/rolldown');
  return /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+/.exec(id.replaceAll('\\', '/').split('?')[0] ?? '')?.[0];
}

/** What a package of ours bundles itself and tells after its own terms; of the bundler only a helper comes along. */
const OF_OTHERS = /\n# Licenses of bundled dependencies[\s\S]*/;

function licenceOf(folder: string): Licence {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((each) => LICENCE_FILE.test(each));
  // What says nothing of it must not be shipped.
  if (typeof license !== 'string') throw new Error(`${name} does not say under which licence it stands`);
  const text = file ? readFileSync(join(folder, file), 'utf8').replace(OF_OTHERS, '').trim() : '';
  return { name, version, licence: license, text };
}

/** Writes `licences.json`: of every package of which anything is in the build, its name, version, licence and text. */
export function licences(root: string): { readonly page: Plugin; readonly thread: () => Plugin } {
  /** Of threads too, which are bundled apart. */
  const folders = new Set<string>();
  const own: Licence = {
    name: 'Ribbonwright',
    version: JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).version,
    licence: 'MIT',
    text: readFileSync(join(root, 'LICENSE'), 'utf8').trim(),
  };
  const note = (bundle: Rolldown.OutputBundle): void => {
    for (const chunk of Object.values(bundle)) {
      if (chunk.type !== 'chunk') continue;
      for (const id of Object.keys(chunk.modules)) {
        const folder = folderOf(id, root);
        if (folder && existsSync(join(folder, 'package.json'))) folders.add(folder);
      }
    }
  };
  return {
    // Threads are bundled first.
    thread: () => ({ name: 'licences-of-threads', generateBundle: (_options, bundle) => note(bundle) }),
    page: {
      name: 'licences',
      apply: 'build',
      generateBundle(_options, bundle) {
        note(bundle);
        const found = [...folders].map(licenceOf).sort((a, b) => a.name.localeCompare(b.name));
        this.emitFile({ type: 'asset', fileName: 'licences.json', source: JSON.stringify([own, ...found]) });
      },
    },
  };
}
