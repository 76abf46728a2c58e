import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hashOf } from '../../src/sheet/fnv-hash.ts';

// Test vectors of the 64-bit FNV-1a as its authors publish them; from memory.
test.each([
  ['', 0xcbf29ce484222325n],
  ['a', 0xaf63dc4c8601ec8cn],
  ['foobar', 0x85944171f73967e8n],
])('hashes %j as published', (text, hash) => {
  expect(hashOf(text)).toBe(hash);
});

test('is what its definition says, in whole numbers without end', () => {
  const byDefinition = (text: string): bigint => {
    let hash = 0xcbf29ce484222325n;
    for (let i = 0; i < text.length; i++)
      hash = BigInt.asUintN(64, (hash ^ BigInt(text.charCodeAt(i))) * 0x100000001b3n);
    return hash;
  };
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => hashOf(text) === byDefinition(text)),
    {
      numRuns: 30,
    },
  );
});
