import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fnv64 } from '../../src/layout/fnv-hash.ts';
import { runs } from '../support/runs.ts';

/** As it is defined: each unit into the low bits, then times the prime, of 64 bits. */
function byDefinition(text: string): bigint {
  let hash = 0xcbf29ce484222325n;
  for (let i = 0; i < text.length; i++)
    hash = BigInt.asUintN(64, (hash ^ BigInt(text.charCodeAt(i))) * 0x100000001b3n);
  return hash;
}

it('gives what its authors publish (from memory)', () => {
  expect(fnv64('')).toBe(0xcbf29ce484222325n);
  expect(fnv64('a')).toBe(0xaf63dc4c8601ec8cn);
  expect(fnv64('foobar')).toBe(0x85944171f73967e8n);
});

it('is what whole numbers without end give', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
      expect(fnv64(text)).toBe(byDefinition(text));
    }),
    runs(200),
  );
});
