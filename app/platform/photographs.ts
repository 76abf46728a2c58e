import { fail, ok, type Result } from '../../src/index.ts';
import { browserShelf, type Shelf } from './storage.ts';

/** A picture made small enough to be kept and drawn. */
export interface Picture {
  readonly image: Blob;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The way of photographs into the browser, and the place where they stay. */
export interface Photographs {
  /** A picture that the user picks; `null` when nothing was picked. */
  pick(): Promise<Result<Picture | null, string>>;
  /** A picture that the user dropped or pasted. */
  read(file: Blob): Promise<Result<Picture, string>>;
  readonly shelf: Shelf;
}

/** A camera's largest files are below this. */
const MOST_BYTES = 60 * 1024 * 1024;
/** Larger ones would take more memory than a phone has, whatever the size of their file. */
const MOST_PIXELS = 80_000_000;
/** Enough to tell two pins apart on a panel of 3U; longer sides are made so long, px. */
const LONGEST_PX = 2000;
const QUALITY = 0.85;
/** What browsers show; drawings in text, which may hold anything, are left out. */
const TYPES = ['image/jpeg', 'image/png', 'image/webp', 'image/avif', 'image/gif', 'image/bmp'];

const NO_PICTURE = 'This is no photograph that the browser can show. A JPEG or PNG will do.';
const TOO_LARGE = 'The photograph is too large. One of at most 60 MB and 80 megapixels will do.';

function load(address: string): Promise<HTMLImageElement> {
  return new Promise((resolve, reject) => {
    const image = new Image();
    image.onload = () => resolve(image);
    image.onerror = reject;
    image.src = address;
  });
}

const encode = (canvas: HTMLCanvasElement, type: string): Promise<Blob | null> =>
  new Promise((resolve) => canvas.toBlob(resolve, type, QUALITY));

/** Drawn anew and written anew: what else the file held, such as the place where it was taken, is left behind. */
async function redrawn(image: HTMLImageElement): Promise<Result<Picture, string>> {
  const { naturalWidth, naturalHeight } = image;
  if (naturalWidth === 0 || naturalHeight === 0) return fail(NO_PICTURE);
  if (naturalWidth * naturalHeight > MOST_PIXELS) return fail(TOO_LARGE);
  const scale = Math.min(1, LONGEST_PX / Math.max(naturalWidth, naturalHeight));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(naturalHeight * scale));
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const written = await encode(canvas, 'image/webp');
  return written ? ok({ image: written, widthPx: canvas.width, heightPx: canvas.height }) : fail(NO_PICTURE);
}

async function readPicture(file: Blob): Promise<Result<Picture, string>> {
  if (!TYPES.includes(file.type)) return fail(NO_PICTURE);
  if (file.size > MOST_BYTES) return fail(TOO_LARGE);
  const address = URL.createObjectURL(file);
  try {
    return await redrawn(await load(address));
  } catch {
    return fail(NO_PICTURE);
  } finally {
    URL.revokeObjectURL(address);
  }
}

function askForPicture(): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = TYPES.join(',');
    input.onchange = () => resolve(input.files?.[0] ?? null);
    input.oncancel = () => resolve(null);
    input.click();
  });
}

export const browserPhotographs = (): Photographs => ({
  async pick() {
    const file = await askForPicture();
    return file ? readPicture(file) : ok(null);
  },
  read: readPicture,
  shelf: browserShelf(undefined, { name: 'ribbonwright-photographs', store: 'photographs' }),
});
