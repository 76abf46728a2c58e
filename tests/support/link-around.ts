import type { Layout } from '../../src/layout/layout.ts';
import { toBase64Url } from '../../src/share/base64url.ts';
import { crc32 } from '../../src/share/checksum.ts';
import { codeKit } from '../../src/share/code-kit.ts';
import { codeLayout } from '../../src/share/code-take.ts';
import { Coder } from '../../src/share/coder.ts';
import { BitWriter } from '../../src/share/range-coder.ts';

/** A link around bytes that say what they like, with the right length and sum. */
export function linkAround(body: Uint8Array): string {
  const length: number[] = [];
  let rest = body.length;
  for (; rest > 127; rest >>= 7) length.push((rest & 127) | 128);
  const sum = crc32(body);
  const head = [...length, rest, ...[24, 16, 8, 0].map((bits) => (sum >>> bits) & 255)];
  return `#rw1.${toBase64Url(Uint8Array.from([...head, ...body]))}`;
}

/** A link around data that no layout is made of. */
export function linkAroundData(data: unknown): string {
  const bits = new BitWriter();
  codeLayout(new Coder(bits, Number.POSITIVE_INFINITY), data as Layout, codeKit);
  return linkAround(bits.bytes());
}
