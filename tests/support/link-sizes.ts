import { Buffer } from 'node:buffer';
import { brotliCompressSync, constants, deflateRawSync } from 'node:zlib';
import type { Layout } from '../../src/layout/layout.ts';
import { linkOf } from '../../src/share/link.ts';

/** An address of 60 characters. */
export const ADDRESS = 'https://a-case-for-the-shoreline-trio.example.org/ribbonwright/'.slice(0, 60);

/** Letters that so many bytes take in an address (RFC 4648: four for three, none to fill up). */
const lettersFor = (bytes: number): number => Math.ceil((bytes * 4) / 3);

/** How long the link of a layout is, and how long it would be by general means. */
export function linkSizes(layout: Layout) {
  const plain = Buffer.from(JSON.stringify(layout));
  const link = linkOf(layout);
  if (!link.ok) throw new Error(link.error.kind);
  const deflated = deflateRawSync(plain, { level: 9 }).length;
  const brotli = brotliCompressSync(plain, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }).length;
  return {
    plain: plain.length,
    deflated: lettersFor(deflated),
    brotli: lettersFor(brotli),
    ours: link.value.length,
    ratio: link.value.length / lettersFor(brotli),
  };
}
