import type { Similarity } from '../../src/index.ts';
import { isKeptPhotograph, type KeptPhotograph, photographId } from '../kinds/photograph.ts';
import type { Photographs } from '../platform/photographs.ts';

/** A photograph of a rear as a file of layouts carries it. */
export interface PackedPhotograph {
  /** Of its layout, as it stands in the file. */
  readonly layout: string;
  readonly kind: string;
  readonly type: string;
  /** The picture, base64. */
  readonly image: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly laid: Similarity;
  readonly opacity: number;
}

/** A file may hold any number; each takes a moment to be drawn anew. */
const MOST = 500;

/** Bytes that go through one call; all at once would be too many arguments. */
const PIECE = 0x8000;

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += PIECE) text += String.fromCharCode(...bytes.subarray(i, i + PIECE));
  return btoa(text);
}

const fromBase64 = (text: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

async function packed({ id, image, ...rest }: KeptPhotograph): Promise<PackedPhotograph> {
  const space = id.indexOf(' ');
  const { widthPx, heightPx, laid, opacity } = rest;
  return {
    layout: id.slice(0, space),
    kind: id.slice(space + 1),
    type: image.type,
    image: toBase64(new Uint8Array(await image.arrayBuffer())),
    widthPx,
    heightPx,
    laid,
    opacity,
  };
}

/** All photographs of some layouts; none where the browser does not give them out. */
export async function packPhotographs(
  { shelf }: Photographs,
  layouts: ReadonlySet<string>,
): Promise<readonly PackedPhotograph[]> {
  const found = await shelf.all();
  if (!found.ok) return [];
  const kept = found.value
    .filter(isKeptPhotograph)
    .filter(({ id }) => layouts.has(id.slice(0, id.indexOf(' '))));
  return Promise.all(kept.map(packed));
}

const isText = (value: unknown): value is string => typeof value === 'string';

/** Draws a picture of a file anew, as one that a user picks, and asks whether all that is said of it holds. */
async function unpacked(photographs: Photographs, one: unknown): Promise<KeptPhotograph | null> {
  if (typeof one !== 'object' || one === null) return null;
  const { layout, kind, type, image, widthPx, heightPx, laid, opacity } = one as Record<string, unknown>;
  if (![layout, kind, type, image].every(isText)) return null;
  let file: Blob;
  try {
    file = new Blob([fromBase64(image as string)], { type: type as string });
  } catch {
    return null;
  }
  const read = await photographs.read(file);
  // Another size than is said, and it would not lie where it lay.
  if (!read.ok || read.value.widthPx !== widthPx || read.value.heightPx !== heightPx) return null;
  const record = { id: photographId({ id: layout as string }, kind as string), ...read.value, laid, opacity };
  return isKeptPhotograph(record) ? record : null;
}

/**
 * Puts the photographs of a file beside those that are here, which stay.
 *
 * @param names - ids of layouts in the file, and what they are called here
 * @returns how many came, and how many could not be read or kept
 */
export async function bringPhotographs(
  photographs: Photographs,
  found: unknown,
  names: ReadonlyMap<string, string>,
): Promise<{ readonly came: number; readonly failed: number }> {
  if (!Array.isArray(found)) return { came: 0, failed: 0 };
  let [came, failed] = [0, Math.max(0, found.length - MOST)];
  for (const one of found.slice(0, MOST)) {
    const record = await unpacked(photographs, one);
    const { layout, kind } = (one ?? {}) as Partial<PackedPhotograph>;
    const here = names.get(layout ?? '');
    if (!record || here === undefined) {
      failed++;
      continue;
    }
    const id = photographId({ id: here }, kind ?? '');
    const done = await photographs.shelf.change(id, (before) =>
      before === undefined ? { ...record, id } : null,
    );
    if (!done.ok) failed++;
    else if (done.value.before === undefined) came++;
  }
  return { came, failed };
}
