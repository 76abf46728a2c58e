import { fail, type Layout, ok, type Result } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import type { Shelf } from '../platform/storage.ts';
import { STOCK_ID } from '../stock/stock-record.ts';
import { asCopy, firstRecord, isKept, type KeptLayout } from './kept-layout.ts';
import { bringPhotographs, type PackedPhotograph } from './packed-photographs.ts';

const FORMAT = 'ribbonwright-layouts';
const VERSION = 1;

/** All layouts in one file, with the photographs of their kinds. What could not be read is carried along as the text that it is. */
interface Bundle {
  readonly format: typeof FORMAT;
  readonly version: typeof VERSION;
  readonly layouts: readonly unknown[];
  readonly unread?: readonly { readonly title: string; readonly text: string }[];
  readonly photographs?: readonly PackedPhotograph[];
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

export function writeBundle(
  kept: readonly KeptLayout[],
  photographs: readonly PackedPhotograph[] = [],
): string {
  const read = kept.map(({ id, title, text }) => ({ id, title, text, data: parse(text) }));
  const unread = read.filter(({ data }) => data === undefined).map(({ title, text }) => ({ title, text }));
  const layouts = read
    .filter(({ data }) => data !== undefined)
    .map(({ id, data }) => (typeof data === 'object' && data !== null ? { ...data, id } : data));
  const bundle: Bundle = {
    format: FORMAT,
    version: VERSION,
    layouts,
    ...(unread.length > 0 && { unread }),
    ...(photographs.length > 0 && { photographs }),
  };
  return `${JSON.stringify(bundle, null, 1)}\n`;
}

interface Unpacked {
  readonly layouts: readonly Layout[];
  /** Why the others cannot be opened. */
  readonly refused: readonly string[];
  /** As the file has them: nothing is known of them yet. */
  readonly photographs: unknown;
}

/** The layouts in the text of a file; `null`: it is no file of layouts. */
export async function readBundle(text: string): Promise<Result<Unpacked, string> | null> {
  const data = parse(text.replace(/^\uFEFF/, ''));
  if (typeof data !== 'object' || data === null || !('format' in data) || data.format !== FORMAT) return null;
  const { version, layouts, photographs } = data as Partial<Record<string, unknown>>;
  if (typeof version === 'number' && version > VERSION) return fail('it was made by a newer program');
  if (!Array.isArray(layouts)) return fail('it holds no list of layouts');
  const { describeFailure, openDocument } = await import('../../src/document.ts');
  const opened = layouts.map((one) => openDocument(one));
  return ok({
    layouts: opened.flatMap((one) => (one.ok ? [one.value] : [])),
    refused: opened.flatMap((one) => (one.ok ? [] : [describeFailure(one.error)])),
    photographs,
  });
}

interface Brought {
  readonly is: 'new' | 'beside' | 'here';
  /** What it is called on the shelf. */
  readonly id: string;
}

/** Puts one on the shelf. What stands there under its id stays: another content goes beside it, the same is left out. */
async function bring(
  shelf: Shelf,
  layout: Layout,
  freshId: () => string,
  now: number,
): Promise<Brought | null> {
  // The stock's own place on the shelf is no layout's.
  const isOwn = layout.id !== undefined && layout.id !== STOCK_ID;
  const own = isOwn ? layout : { ...layout, id: freshId() };
  const id = own.id ?? '';
  const fresh = firstRecord(own, id, now);
  const done = await shelf.change(id, (before) => (before === undefined ? fresh : null));
  if (!done.ok) return null;
  const { before } = done.value;
  if (before === undefined) return { is: 'new', id };
  if (isKept(before) && before.text === fresh.text) return { is: 'here', id };
  const copy = asCopy(own, freshId());
  const record = firstRecord(copy, copy.id ?? '', now);
  return (await shelf.change(record.id, () => record)).ok ? { is: 'beside', id: record.id } : null;
}

const sentence = (count: number, words: string, noun = 'layout'): string[] =>
  count === 0 ? [] : [`${count} ${count === 1 ? noun : `${noun}s`} ${words}.`];

/** Brings back all layouts of a file; answers with what was done, or `null` where it is no file of layouts. */
export async function bringBack({ keep, platform }: Editor, text: string): Promise<string | null> {
  const read = await readBundle(text);
  if (!read) return null;
  if (!read.ok) return `Not brought back: ${read.error}.`;
  const { keeper } = keep.getState();
  if (!keeper) return 'Not brought back: the program is still loading.';
  await keeper.flush();
  const outcomes: (Brought | null)[] = [];
  const names = new Map<string, string>();
  for (const layout of read.value.layouts) {
    const brought = await bring(keeper.shelf, layout, platform.freshId, platform.clock.now());
    outcomes.push(brought);
    if (brought && layout.id !== undefined) names.set(layout.id, brought.id);
  }
  const count = (which: Brought['is'] | undefined): number =>
    outcomes.filter((one) => one?.is === which).length;
  const { refused, photographs } = read.value;
  const { came, failed } = await bringPhotographs(await platform.photographs(), photographs, names);
  const said = [
    ...sentence(count('new'), 'brought back'),
    ...sentence(count('beside'), 'brought back beside the newer or older one of the same name'),
    ...sentence(count('here'), 'here already'),
    ...sentence(count(undefined), 'not brought back: the browser did not keep them'),
    ...sentence(came, 'came along', 'photograph'),
    ...sentence(failed, 'could not be brought back', 'photograph'),
    ...(refused.length > 0 ? [`Not opened: ${refused.slice(0, 3).join('; ')}.`] : []),
  ];
  return said.join(' ') || 'The file holds no layouts.';
}
