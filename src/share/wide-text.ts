/*
 * Text as bytes, whatever its code units: halves of surrogate pairs that stand alone are written as the three bytes of
 * their own number (as in WTF-8), and the zero as two bytes, so that a zero byte can end a text.
 */

export function toBytes(text: string): number[] {
  const bytes: number[] = [];
  for (const character of text) {
    const code = character.codePointAt(0) as number;
    if (code > 0 && code < 0x80) bytes.push(code);
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 63));
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63));
    else
      bytes.push(
        0xf0 | (code >> 18),
        0x80 | ((code >> 12) & 63),
        0x80 | ((code >> 6) & 63),
        0x80 | (code & 63),
      );
  }
  return bytes;
}

/** Undefined where no text makes these bytes. */
export function fromBytes(bytes: readonly number[]): string | undefined {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; ) {
    const lead = bytes[at++] as number;
    const more =
      lead < 0x80 ? 0 : lead < 0xc0 ? -1 : lead < 0xe0 ? 1 : lead < 0xf0 ? 2 : lead < 0xf8 ? 3 : -1;
    if (more < 0) return undefined;
    let code = more === 0 ? lead : lead & (0x3f >> more);
    for (let i = 0; i < more; i++) {
      const byte = bytes[at++];
      if (byte === undefined || (byte & 0xc0) !== 0x80) return undefined;
      code = code * 64 + (byte & 63);
    }
    if (code > 0x10ffff) return undefined;
    parts.push(String.fromCodePoint(code));
  }
  return parts.join('');
}
