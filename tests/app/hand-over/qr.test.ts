import { encode } from 'uqr';
import { describe, expect, it } from 'vitest';
import { MOST_IN_QR } from '../../../app/hand-over/length-words.ts';

describe('the QR code', () => {
  // ISO/IEC 18004, table 7: version 25, level M, holds 997 bytes; a symbol of version v is 17 + 4v marks wide.
  it('of the longest link is of version 25, and one more letter takes the next', () => {
    const of = (length: number) => encode('a'.repeat(length), { ecc: 'M', border: 0 });
    expect([of(MOST_IN_QR).version, of(MOST_IN_QR).size]).toEqual([25, 117]);
    expect(of(MOST_IN_QR + 1).version).toBe(26);
  });
});
