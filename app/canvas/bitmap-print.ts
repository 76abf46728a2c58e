import type { Layer } from 'konva/lib/Layer.js';

/** A layer that has not been drawn for so long rests, ms: longer than a slow hand takes from one move to the next. */
const REST_MS = 500;

/**
 * Shows a layer that rests as a bitmap, in place of its canvas. With every frame that changes anything a browser makes
 * a picture of each canvas in sight, changed or not, at the cost of its size; a bitmap it shows again for nothing. So
 * what stands still costs nothing while another layer moves. Answers with what ends it; a browser without the means
 * goes on showing the canvas.
 */
export function printAtRest(layer: Layer): () => void {
  const canvas = layer.getCanvas()._canvas;
  const print = canvas.ownerDocument.createElement('canvas');
  const sheet = print.getContext('bitmaprenderer');
  const press = typeof OffscreenCanvas === 'undefined' ? null : new OffscreenCanvas(1, 1);
  const ink = press?.getContext('2d');
  if (!sheet || !press || !ink) return () => {};
  let timer: ReturnType<typeof setTimeout> | undefined;
  let drawnSince = false;

  const show = (shown: HTMLCanvasElement, hidden: HTMLCanvasElement): void => {
    shown.style.display = 'block';
    hidden.style.display = 'none';
  };
  const look = (): void => {
    timer = drawnSince ? setTimeout(look, REST_MS) : undefined;
    drawnSince = false;
    const { width, height, style } = canvas;
    if (timer !== undefined || width === 0 || height === 0) return;
    press.width = width;
    press.height = height;
    ink.drawImage(canvas, 0, 0);
    sheet.transferFromImageBitmap(press.transferToImageBitmap());
    print.style.cssText = style.cssText;
    show(print, canvas);
  };
  const follow = (): void => {
    show(canvas, print);
    drawnSince = timer !== undefined;
    timer ??= setTimeout(look, REST_MS);
  };

  print.className = 'print';
  print.style.display = 'none';
  canvas.after(print);
  layer.on('draw.print', follow);
  return () => {
    layer.off('draw.print');
    clearTimeout(timer);
    show(canvas, print);
    print.remove();
  };
}
