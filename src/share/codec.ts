import type { Layout } from '../layout/layout.ts';
import { fail, ok, type Result } from '../layout/result.ts';
import { codeKit } from './code-kit.ts';
import { codeLayout } from './code-take.ts';
import { Coder } from './coder.ts';
import { BitReader, BitWriter } from './range-coder.ts';
import { Unusable } from './unusable.ts';

/** Why a compact form cannot be read or written: it is not what was written, or it takes more than it may. */
export type Unreadable = Unusable['kind'];

/** An opened layout in as few bytes as may be; all of it, and keys that nobody knows too. The order of keys is not kept. */
export function pack(layout: Layout): Result<Uint8Array, Unreadable> {
  const bits = new BitWriter();
  return guard(() => {
    codeLayout(new Coder(bits), layout, codeKit);
    return bits.bytes();
  });
}

/** What `pack` was given. The bytes may come from anywhere, so what comes out is yet to be opened as a document. */
export function unpack(bytes: Uint8Array): Result<unknown, Unreadable> {
  const bits = new BitReader(bytes);
  return guard(() => {
    const layout = codeLayout(new Coder(bits), undefined, codeKit);
    if (!bits.isWhole) throw new Unusable('damaged');
    return layout;
  });
}

function guard<T>(work: () => T): Result<T, Unreadable> {
  try {
    return ok(work());
  } catch (thrown) {
    if (thrown instanceof Unusable) return fail(thrown.kind);
    throw thrown;
  }
}
