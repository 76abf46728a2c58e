import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { lockedDown } from './.tools/content-policy.ts';
import { licences } from './.tools/licences-plugin.ts';
import { offline } from './.tools/offline-plugin.ts';

const here = import.meta.dirname;

const tests = (name: string, include: string, timeout: number) => ({
  test: { name, root: here, include: [include], testTimeout: timeout },
});

export default defineConfig({
  root: `${here}/app`,
  // Relative addresses let the built folder be served from any path.
  base: './',
  publicDir: `${here}/public`,
  plugins: [
    react(),
    lockedDown(),
    licences(here),
    offline({
      worker: `${here}/app/service-worker/service-worker.ts`,
      publicDir: `${here}/public`,
    }),
  ],
  build: {
    outDir: `${here}/dist`,
    emptyOutDir: true,
    target: 'es2023',
    // Whatever runs es2023 preloads modules by itself.
    modulePreload: { polyfill: false },
    // What the first screen needs, in one piece: seven small ones compress worse. It is 600 kB before gzip.
    chunkSizeWarningLimit: 700,
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
  },
  server: { host: '127.0.0.1' },
  test: {
    root: here,
    projects: [
      tests('unit', 'tests/**/*.test.{ts,tsx}', 60_000),
      tests('bench', 'tests/**/*.bench.ts', 600_000),
    ],
  },
});
