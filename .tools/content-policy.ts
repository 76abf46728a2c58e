import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';
import { sheetStyle } from '../src/sheet/sheet-style.ts';

const hashOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** The bench sheet is previewed in a frame that lives by the page's policy: its two style sheets are known by heart. */
const SHEET_STYLES = (['a4', 'letter'] as const).map((paper) => hashOf(sheetStyle(paper)));

/**
 * What the built page may do: the program's own files, and nothing else from anywhere. A WebAssembly solver would need
 * 'wasm-unsafe-eval' in script-src; it allows no eval of text.
 */
const DIRECTIVES: Readonly<Record<string, readonly string[]>> = {
  'default-src': ["'none'"],
  'script-src': ["'self'"],
  'worker-src': ["'self'"],
  'style-src': ["'self'", "'unsafe-inline'"],
  'style-src-elem': ["'self'", ...SHEET_STYLES],
  // Places and sizes on the sheet are attributes; nothing can be fetched by one, since no foreign picture may be.
  'style-src-attr': ["'unsafe-inline'"],
  // blob: is how a photograph, or a drawing that is to be a picture, comes to the screen.
  'img-src': ["'self'", 'blob:'],
  'connect-src': ["'self'"],
  'manifest-src': ["'self'"],
  'base-uri': ["'none'"],
  'form-action': ["'none'"],
  'require-trusted-types-for': ["'script'"],
  'trusted-types': ['default', 'ribbonwright-sheet'],
};

const contentPolicy = Object.entries(DIRECTIVES)
  .map(([name, sources]) => [name, ...sources].join(' '))
  .join('; ');

/** Locks the built page down. The dev server's page is left alone: it works by inline scripts. */
export const lockedDown = (): Plugin => ({
  name: 'locked-down',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: (html) =>
      html.replace(
        '<meta charset="utf-8" />',
        (charset) =>
          `${charset}\n    <meta http-equiv="Content-Security-Policy" content="${contentPolicy}" />`,
      ),
  },
});
