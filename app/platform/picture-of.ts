import { fail, ok, type Result } from '../../src/index.ts';

/** Browsers draw nothing on a canvas longer than this, px. */
const LONGEST_PX = 16_000;

interface Drawn {
  readonly png: Blob;
  /** What it came to: less than asked where the canvas would have been too large. */
  readonly dpi: number;
}

const toBlob = (canvas: HTMLCanvasElement): Promise<Blob | null> =>
  new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));

/** An SVG whose size is in mm as a PNG of so many dots to the inch, on white. */
export async function pictureOf(svg: string, dpi: number): Promise<Result<Drawn, string>> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const asked = dpi / 96;
    const scale = Math.min(asked, LONGEST_PX / Math.max(image.width, image.height, 1));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(image.width * scale));
    canvas.height = Math.max(1, Math.round(image.height * scale));
    const ctx = canvas.getContext('2d');
    if (!ctx) return fail('This browser has no canvas');
    ctx.fillStyle = '#fff';
    ctx.fillRect(0, 0, canvas.width, canvas.height);
    ctx.drawImage(image, 0, 0, canvas.width, canvas.height);
    const png = await toBlob(canvas);
    return png ? ok({ png, dpi: Math.round(scale * 96) }) : fail('The picture is too large for this browser');
  } catch {
    return fail('The drawing could not be made into a picture');
  } finally {
    URL.revokeObjectURL(url);
  }
}
