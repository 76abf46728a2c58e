import { describe, expect, it } from 'vitest';
import { browserFiles } from '../../../app/platform/files.ts';
import { parseTable } from '../../../app/stock/table-text.ts';

const files = browserFiles({});
const read = async (...bytes: number[]) => files.read(new File([new Uint8Array(bytes)], 'a.csv'), 'table');

/* Bytes of "é;½" by the encodings' own tables: RFC 3629, RFC 2781, and code page 1252 from memory. */
describe('the file of a table', () => {
  it.each([
    ['UTF-8', [0xc3, 0xa9, 0x3b, 0xc2, 0xbd]],
    ['UTF-16, little end first', [0xff, 0xfe, 0xe9, 0, 0x3b, 0, 0xbd, 0]],
    ['UTF-16, big end first', [0xfe, 0xff, 0, 0xe9, 0, 0x3b, 0, 0xbd]],
    ['code page 1252', [0xe9, 0x3b, 0xbd]],
  ])('may be written in %s', async (_, bytes) => {
    expect(await read(...bytes)).toEqual({ ok: true, value: 'é;½' });
  });
});

describe('what stands between cells', () => {
  it.each([
    [
      'a;b,c\n1;2',
      [
        ['a', 'b,c'],
        ['1', '2'],
      ],
    ],
    [
      'a\tb;c\n1\t2',
      [
        ['a', 'b;c'],
        ['1', '2'],
      ],
    ],
    [
      '"a;x",b\n1,2',
      [
        ['a;x', 'b'],
        ['1', '2'],
      ],
    ],
    ['a\n1,5', [['a'], ['1', '5']]],
    ['a;b\r\n\r\n"x\r\ny";"say ""so"""', [['a', 'b'], [''], ['x\r\ny', 'say "so"']]],
  ])('%j', (text, cells) => {
    expect(parseTable(text)).toEqual({ ok: true, value: cells });
  });
});
