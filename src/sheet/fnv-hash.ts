/**
 * FNV-1a of 64 bits over UTF-16 units (its two constants from memory), in four digits of 16 bits, lowest first: whole
 * numbers of a machine are many times as fast as BigInt. The prime is 2^40 + 0x1b3: a shift by two digits and eight bits
 * beside a small factor.
 */
export function hashOf(text: string): bigint {
  let [a, b, c, d] = [0x2325, 0x8422, 0x9ce4, 0xcbf2];
  for (let i = 0; i < text.length; i++) {
    a ^= text.charCodeAt(i);
    const [lowest, low] = [a, b];
    a *= 0x1b3;
    b = b * 0x1b3 + (a >>> 16);
    c = c * 0x1b3 + (lowest << 8) + (b >>> 16);
    d = (d * 0x1b3 + (low << 8) + (c >>> 16)) & 0xffff;
    a &= 0xffff;
    b &= 0xffff;
    c &= 0xffff;
  }
  return (BigInt(d) << 48n) | (BigInt(c) << 32n) | (BigInt(b) << 16n) | BigInt(a);
}
