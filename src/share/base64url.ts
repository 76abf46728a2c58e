const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Bytes in letters that an address may hold as they are (RFC 4648, clause 5), without padding. */
export function toBase64Url(bytes: Uint8Array): string {
  const letters: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(i, i + 3);
    const three = (a << 16) | (b << 8) | c;
    const count = Math.min(3, bytes.length - i) + 1;
    for (let k = 0; k < count; k++) letters.push(LETTERS[(three >> (18 - 6 * k)) & 63] as string);
  }
  return letters.join('');
}

/** Undefined where no bytes are written so. */
export function fromBase64Url(text: string): Uint8Array | undefined {
  if (text.length % 4 === 1) return undefined;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const letter of text) {
    const value = LETTERS.indexOf(letter);
    if (value < 0) return undefined;
    held = ((held << 6) | value) & 0xffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at++] = (held >> bits) & 0xff;
    }
  }
  return bytes;
}
