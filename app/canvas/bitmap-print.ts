import type { Layer } from 'konva/lib/Layer.js';

function swap(shown: HTMLCanvasElement, hidden: HTMLCanvasElement): void {
  shown.style.display = 'block';
  hidden.style.display = 'none';
}

/**
 * Shows a layer as a bitmap, in place of its canvas, as soon as it has not been drawn for a while. With every frame that
 * changes anything a browser makes a picture of each canvas in sight, changed or not, at the cost of its size; a bitmap
 * it shows again for nothing. So what stands still costs nothing while another layer moves. Answers with what ends it; a
 * browser without the means goes on showing the canvas.
 *
 * @param restMs - 0 for a layer that seldom changes: it is never shown otherwise
 */
export function printAtRest(layer: Layer, restMs: number): () => void {
  const canvas = layer.getCanvas()._canvas;
  const print = canvas.ownerDocument.createElement('canvas');
  const printer = print.getContext('bitmaprenderer');
  if (!printer || typeof createImageBitmap === 'undefined') return () => {};
  let timer: ReturnType<typeof setTimeout> | undefined;
  let drawnAtMs = 0;
  let drawing = 0;

  const show = async (): Promise<void> => {
    const shown = drawing;
    if (canvas.width === 0 || canvas.height === 0) return;
    // A picture of the canvas as it is, not a copy: that is made where the canvas is drawn on again.
    const bitmap = await createImageBitmap(canvas).catch(() => null);
    if (!bitmap) return;
    if (shown !== drawing) {
      bitmap.close();
      return;
    }
    printer.transferFromImageBitmap(bitmap);
    print.style.cssText = canvas.style.cssText;
    swap(print, canvas);
  };
  const look = (): void => {
    const leftMs = drawnAtMs + restMs - performance.now();
    timer = leftMs > 0 ? setTimeout(look, leftMs) : undefined;
    if (leftMs <= 0) void show();
  };
  const follow = (): void => {
    drawing++;
    swap(canvas, print);
    drawnAtMs = performance.now();
    if (restMs === 0) void show();
    else timer ??= setTimeout(look, restMs);
  };

  print.className = 'print';
  print.style.display = 'none';
  canvas.after(print);
  layer.on('draw.print', follow);
  follow();
  return () => {
    drawing++;
    layer.off('draw.print');
    clearTimeout(timer);
    swap(canvas, print);
    print.remove();
  };
}
