import type { Layout } from '../layout/layout.ts';
import { describeFailure, type OpenFailure, openDocument } from '../layout/open.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import { fromBase64Url, toBase64Url } from './base64url.ts';
import { crc32 } from './checksum.ts';
import { pack, type Unreadable, unpack } from './codec.ts';

/** Why nothing can be opened from a link. Nothing of it is taken. */
export type LinkFailure =
  | { readonly kind: 'no-link' | 'cut' | Unreadable }
  | { readonly kind: 'too-new'; readonly form: number }
  | { readonly kind: 'unusable'; readonly failure: OpenFailure };

/** The form of links that this program writes, and the newest that it reads. */
const FORM = 1;

/** Where the layout begins in a link. A part of an address behind this sign stays in the browser: no server sees it. */
const MARK = `#rw${FORM}.`;

const LINK = /(?:^|[#<(\s])rw(\d{1,6})\.([\w-]*)(.*)$/s;

/** Far more than a link of as many steps as are taken can have. */
const MOST_CHARACTERS = 1_000_000;

const SUM_BYTES = 4;

/** Seven bits to a byte, the last ones first; all but the last byte have their eighth bit set. */
function lengthBytes(length: number): number[] {
  const bytes: number[] = [];
  let rest = length;
  for (; rest > 127; rest = Math.floor(rest / 128)) bytes.push((rest % 128) | 128);
  return [...bytes, rest];
}

/**
 * A link that carries the whole layout.
 * @param base - the address of the app; without it, the part that goes behind any
 */
export function linkOf(layout: Layout, base = ''): Result<string, LinkFailure> {
  const packed = pack(layout);
  if (!packed.ok) return fail({ kind: packed.error });
  const body = packed.value;
  const sum = crc32(body);
  const head = [...lengthBytes(body.length), ...[24, 16, 8, 0].map((bits) => (sum >>> bits) & 0xff)];
  const [address = ''] = base.split('#');
  return ok(address + MARK + toBase64Url(Uint8Array.from([...head, ...body])));
}

/** The layout that a link carries, opened as any file is. Takes bounded time, whatever the link says. */
export function openLink(text: string): Result<Layout, LinkFailure> {
  if (text.length > MOST_CHARACTERS) return fail({ kind: 'too-big' });
  const [, form, letters = '', rest = ''] = LINK.exec(text) ?? [];
  if (form === undefined) return fail({ kind: 'no-link' });
  if (Number(form) !== FORM)
    return fail(Number(form) > FORM ? { kind: 'too-new', form: Number(form) } : { kind: 'no-link' });
  const body = gatherBody(letters, rest);
  if (!body.ok) return body;
  const unpacked = unpack(body.value);
  if (!unpacked.ok) return fail({ kind: unpacked.error });
  const opened = openDocument(unpacked.value);
  return opened.ok ? opened : fail({ kind: 'unusable', failure: opened.error });
}

/** A sign that no link holds stands in the middle of it. */
const SPOILT = /^[^\s\w]+[\w-]/;

/** Some programs break long lines: words are taken on until the link is whole. */
function gatherBody(letters: string, rest: string): Result<Uint8Array, LinkFailure> {
  const first = bodyOf(letters);
  if (first.ok || first.error.kind !== 'cut') return first;
  if (SPOILT.test(rest)) return fail({ kind: 'damaged' });
  let all = letters;
  for (const word of rest.trim().split(/\s+/)) {
    if (!/^[\w-]+$/.test(word)) break;
    all += word;
    const body = bodyOf(all);
    if (body.ok) return body;
    if (body.error.kind !== 'cut') break;
  }
  return first;
}

/** The packed layout, if it is all there and as it was written. */
function bodyOf(letters: string): Result<Uint8Array, LinkFailure> {
  const isCutAnywhere = letters.length % 4 === 1;
  const bytes = fromBase64Url(isCutAnywhere ? letters.slice(0, -1) : letters);
  if (!bytes) return fail({ kind: 'damaged' });
  let length = 0;
  let at = 0;
  for (let unit = 1; ; unit *= 128) {
    const byte = bytes[at++];
    if (byte === undefined) return fail({ kind: 'cut' });
    length += (byte & 127) * unit;
    if (byte < 128) break;
    if (at > 4) return fail({ kind: 'damaged' });
  }
  const body = bytes.subarray(at + SUM_BYTES);
  if (body.length < length) return fail({ kind: 'cut' });
  const sum = bytes.subarray(at, at + SUM_BYTES).reduce((all, byte) => all * 256 + byte, 0);
  return body.length === length && crc32(body) === sum ? ok(body) : fail({ kind: 'damaged' });
}

/** One clear line that says what is wrong with a link. */
export function describeLinkFailure(failure: LinkFailure): string {
  switch (failure.kind) {
    case 'no-link':
      return 'this is no link of a layout: it has no "#rw1." in it';
    case 'cut':
      return 'the link was cut short on its way; ask for it again, or for a file';
    case 'damaged':
      return 'the link was changed on its way and cannot be read; ask for it again, or for a file';
    case 'too-big':
      return 'this is too large for a link; a file carries it';
    case 'too-new':
      return `the link was made by a newer program: form ${failure.form}; this one reads up to form ${FORM}`;
    case 'unusable':
      return `the layout of the link cannot be used: ${describeFailure(failure.failure)}`;
  }
}
