import { readdirSync, readFileSync } from 'node:fs';
import { posix, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { sourceFacts } from './source-facts.ts';

const PROJECT = fileURLToPath(new URL('..', import.meta.url));

/** The only files of the core that the app may name; all but the first are apart so that a page can load them late. */
const DOORS = [
  'src/index.ts',
  'src/document.ts',
  'src/share.ts',
  'src/stock.ts',
  'src/sheet.ts',
  'src/help.ts',
  'src/planner.ts',
];
const DOOR = 'a door';

/**
 * The layers of the core, lowest first; layers on one line know nothing of each other.
 * The doors gather every layer but the command line, which stands before them like any other guest.
 */
const LAYERS = [
  ['layout'],
  ['geometry'],
  ['wiring'],
  ['edit'],
  ['electrical'],
  ['checks'],
  ['planner'],
  ['drawing'],
  ['share', 'table'],
  ['sheet', 'stock'],
  ['help'],
  [DOOR],
  ['cli'],
];

const CORE_PACKAGES = ['valibot', '@valibot/to-json-schema'];

describe('the source', () => {
  const paths = ['src', 'app'].flatMap(sourcesIn);

  test('was found', () => {
    expect(paths).toEqual(expect.arrayContaining([...DOORS, 'app/main.tsx']));
  });

  test.each(paths)('%s keeps to its room', (path) => {
    expect(faultsOf(path, readFileSync(PROJECT + path, 'utf8'))).toEqual([]);
  });
});

describe('the rules of the house', () => {
  test.each([
    ['src/geometry/a.ts', `import { b } from '../layout/b.ts';`],
    ['src/geometry/a.ts', `export type { B } from './b.ts';`],
    ['src/sheet/a.ts', `import { b } from '../planner/b.ts';`],
    ['src/layout/a.ts', `import * as v from 'valibot';`],
    ['src/index.ts', `export { b } from './share/b.ts';`],
    ['app/a.ts', `const files = import('../src/document.ts');`],
    ['src/cli/a.ts', `import { readFileSync } from 'node:fs'; import { b } from '../index.ts'; Date.now();`],
    ['src/layout/a.ts', `const parsed = new Date('2026-01-01'); const half = Math.round(0.5);`],
    [
      'app/canvas/a.tsx',
      `import { b } from '../../src/index.ts'; import '../b.css'; import { useState } from 'react';`,
    ],
  ])('let %s hold: %s', (path, text) => {
    expect(faultsOf(path, text)).toEqual([]);
  });

  test.each([
    ['src/layout/a.ts', `import { b } from '../geometry/b.ts';`, 'layout may not import geometry'],
    ['src/geometry/a.ts', `import type { B } from '../wiring/b.ts';`, 'geometry may not import wiring'],
    ['src/wiring/a.ts', `export * from '../checks/b.ts';`, 'wiring may not import checks'],
    ['src/edit/a.ts', `type B = import('../checks/b.ts').B;`, 'edit may not import checks'],
    ['src/checks/a.ts', `const b = import('../planner/b.ts');`, 'checks may not import planner'],
    ['src/checks/rules/a.ts', `import { b } from '../../planner/b.ts';`, 'checks may not import planner'],
    ['src/share/a.ts', `import { b } from '../sheet/b.ts';`, 'share may not import sheet'],
    ['src/share/a.ts', `import { b } from '../cli/b.ts';`, 'share may not import cli'],
    ['src/index.ts', `export { b } from './cli/b.ts';`, 'a door may not import cli'],
    ['src/layout/a.ts', `import { b } from '../index.ts';`, 'layout may not import a door'],
    ['src/attic/a.ts', `export const b = 1;`, 'attic is no layer'],
    ['src/layout/a.ts', `import { b } from '../attic/b.ts';`, 'attic is no layer'],
    ['src/layout/a.ts', `import { b } from '../../app/b.ts';`, 'leads out of src: app/b.ts'],
    ['src/cli/a.ts', `import { b } from '../../app/b.ts';`, 'leads out of src: app/b.ts'],
    ['src/layout/a.ts', `import { readFileSync } from 'node:fs';`, 'may not use node:fs'],
    ['src/layout/a.ts', `import { create } from 'zustand';`, 'may not use zustand'],
    ['src/layout/a.ts', `const at = Date.now();`, 'asks Date.now'],
    ['src/layout/a.ts', `const at = new Date();`, 'asks new Date()'],
    ['src/layout/a.ts', `const at = Date();`, 'asks Date()'],
    ['src/layout/a.ts', `const dice = [1].map(Math.random);`, 'asks Math.random'],
    ['src/layout/a.ts', `const dice = Math['random']();`, 'asks Math.random'],
    ['app/a.ts', `import { b } from '../src/layout/b.ts';`, 'reaches past the doors: src/layout/b.ts'],
    ['app/a.ts', `import type { B } from '../src/layout/b.ts';`, 'reaches past the doors: src/layout/b.ts'],
    ['app/a.ts', `import { b } from '../tests/b.ts';`, 'leads out of app: tests/b.ts'],
    ['app/a.ts', `import { join } from 'node:path';`, 'may not use node:path'],
  ])('forbid %s to hold: %s', (path, text, fault) => {
    expect(faultsOf(path, text)).toEqual([fault]);
  });

  test('do not pass over what cannot be read', () => {
    expect(() => faultsOf('src/layout/a.ts', 'import {')).toThrow('src/layout/a.ts');
  });
});

function sourcesIn(wing: string): string[] {
  return readdirSync(PROJECT + wing, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|mts|js|mjs)$/.test(name))
    .map((name) => `${wing}/${name.split(sep).join('/')}`);
}

/** What is wrong with a file of `src` or `app`, one line each. */
function faultsOf(path: string, text: string): string[] {
  const { imports, surprises } = sourceFacts(path, text);
  if (path.startsWith('app/')) return imports.flatMap((module) => faultOfAppImport(path, module) ?? []);
  const layer = layerOf(path);
  const strayRoom = isKnown(layer) ? [] : [`${layer} is no layer`];
  const askedFor = layer === 'cli' ? [] : surprises.map((surprise) => `asks ${surprise}`);
  return [...strayRoom, ...imports.flatMap((module) => faultOfCoreImport(path, module) ?? []), ...askedFor];
}

function faultOfAppImport(path: string, module: string): string | undefined {
  if (!isRelative(module)) return module.startsWith('node:') ? `may not use ${module}` : undefined;
  const target = resolve(path, module);
  if (target.startsWith('app/') || DOORS.includes(target)) return undefined;
  return target.startsWith('src/') ? `reaches past the doors: ${target}` : `leads out of app: ${target}`;
}

function faultOfCoreImport(path: string, module: string): string | undefined {
  const from = layerOf(path);
  if (!isRelative(module)) {
    return from === 'cli' || CORE_PACKAGES.includes(module) ? undefined : `may not use ${module}`;
  }
  const target = resolve(path, module);
  if (!target.startsWith('src/')) return `leads out of src: ${target}`;
  const to = layerOf(target);
  if (!isKnown(to)) return `${to} is no layer`;
  return from === to || rank(from) > rank(to) ? undefined : `${from} may not import ${to}`;
}

const isRelative = (module: string) => module.startsWith('.');

const resolve = (path: string, module: string) => posix.join(posix.dirname(path), module);

const layerOf = (path: string) => (DOORS.includes(path) ? DOOR : (path.split('/')[1] ?? path));

const isKnown = (layer: string) => rank(layer) >= 0;

const rank = (layer: string) => LAYERS.findIndex((layers) => layers.includes(layer));
