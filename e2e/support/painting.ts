import type { Page } from 'playwright/test';

/** Calls that put paint on a canvas, and what they take of bitmaps. */
export interface Painting {
  readonly calls: number;
  readonly bitmapPixels: number;
  readonly byName: Readonly<Record<string, number>>;
}

declare global {
  interface Window {
    painting: { calls: number; bitmapPixels: number; byName: Record<string, number> };
  }
}

/** Counts, in every page that is opened from now on, what is painted on canvases, those behind the scene included. */
export async function countPainting(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.painting = { calls: 0, bitmapPixels: 0, byName: {} };
    type Paints = Record<string, (...args: unknown[]) => unknown>;
    const contexts = [
      CanvasRenderingContext2D,
      OffscreenCanvasRenderingContext2D,
      ImageBitmapRenderingContext,
    ].map((context) => context.prototype as unknown as Paints);
    const names = [
      'fill',
      'stroke',
      'fillRect',
      'strokeRect',
      'clearRect',
      'fillText',
      'strokeText',
      'drawImage',
      'putImageData',
      'transferFromImageBitmap',
    ];
    const fromBitmaps = new Set(['drawImage', 'putImageData', 'transferFromImageBitmap']);
    for (const proto of contexts) {
      for (const name of names) {
        const paint = proto[name];
        if (!paint) continue;
        proto[name] = function (this: unknown, ...args: unknown[]): unknown {
          const { painting } = window;
          painting.calls++;
          painting.byName[name] = (painting.byName[name] ?? 0) + 1;
          if (fromBitmaps.has(name)) {
            const source = args[0] as { width?: number; height?: number };
            painting.bitmapPixels += (source.width ?? 0) * (source.height ?? 0);
          }
          return paint.apply(this, args);
        };
      }
    }
  });
}

export const startCounting = (page: Page): Promise<void> =>
  page.evaluate(() => {
    window.painting = { calls: 0, bitmapPixels: 0, byName: {} };
  });

export const readCount = (page: Page): Promise<Painting> => page.evaluate(() => window.painting);
