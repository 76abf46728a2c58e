import react from '@vitejs/plugin-react';
import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config';
import { lockedDown } from './.tools/content-policy.ts';
import { licences } from './.tools/licences-plugin.ts';
import { offline } from './.tools/offline-plugin.ts';

const here = import.meta.dirname;
const shipped = licences(here);

type ProjectConfig = TestProjectInlineConfiguration['test'];

const tests = (name: string, include: string, more: ProjectConfig) => ({
  test: { name, root: here, include: [include], setupFiles: `${here}/tests/support/one-seed.ts`, ...more },
});

const MOCKED = 'tests/**/*.mocked.test.{ts,tsx}';
const UNIT_MS = 60_000;

export default defineConfig({
  root: `${here}/app`,
  // Relative addresses let the built folder be served from any path.
  base: './',
  publicDir: `${here}/public`,
  plugins: [
    react(),
    lockedDown(),
    shipped.page,
    offline({
      worker: `${here}/app/service-worker/service-worker.ts`,
      publicDir: `${here}/public`,
    }),
  ],
  worker: { plugins: () => [shipped.thread()] },
  build: {
    outDir: `${here}/dist`,
    emptyOutDir: true,
    target: 'es2023',
    // The page's policy lets in files of its own and no data addresses.
    assetsInlineLimit: (file) => (file.endsWith('.webp') ? false : undefined),
    // Whatever runs es2023 preloads modules by itself.
    modulePreload: { polyfill: false },
    // What the first screen needs, in one piece: seven small ones compress worse. It is 600 kB before gzip.
    chunkSizeWarningLimit: 700,
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  server: { host: '127.0.0.1' },
  test: {
    root: here,
    // Left to itself the runner leaves one core idle, which of two is half the time.
    maxWorkers: '100%',
    projects: [
      // One world for all files: to make it anew for each takes longer than the tests. Those that mock modules are apart.
      tests('unit', 'tests/**/*.test.{ts,tsx}', { exclude: [MOCKED], isolate: false, testTimeout: UNIT_MS }),
      tests('mocked', MOCKED, { testTimeout: UNIT_MS }),
      tests('bench', 'tests/**/*.bench.ts', { testTimeout: 600_000 }),
    ],
  },
});
