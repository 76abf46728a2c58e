import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { fromBase64Url, toBase64Url } from '../../src/share/base64url.ts';
import { crc32 } from '../../src/share/checksum.ts';
import { describeLinkFailure, type LinkFailure, linkOf, openLink } from '../../src/share/link.ts';
import { FIXTURE } from '../support/fixture.ts';
import { fortyModules } from '../support/forty-modules.ts';
import { linkAround, linkAroundData } from '../support/link-around.ts';
import { ADDRESS, linkSizes } from '../support/link-sizes.ts';
import { runs } from '../support/runs.ts';

const BASE = 'https://example.org/rack/';

function linkTo(layout: Layout): string {
  const link = linkOf(layout, BASE);
  if (!link.ok) throw new Error(link.error.kind);
  return link.value;
}

const demo = JSON.parse(JSON.stringify(demoLayout())) as Layout;
const LINK = linkTo(demo);
const LETTERS = LINK.slice(LINK.indexOf('.', LINK.indexOf('#')) + 1);

function failureOf(text: string): LinkFailure {
  const opened = openLink(text);
  if (opened.ok) throw new Error('it opened');
  const words = describeLinkFailure(opened.error);
  expect(words).toMatch(/^[^\n]{10,400}$/);
  return opened.error;
}

describe('a link', () => {
  it('carries the whole layout behind an address', () => {
    expect(LINK).toMatch(/^https:\/\/example\.org\/rack\/#rw1\.[\w-]+$/);
    expect(openLink(LINK)).toEqual({ ok: true, value: demo });
  });

  it('takes the place of what stood behind the address before', () => {
    expect(linkOf(demo, `${BASE}?a=1#old`)).toEqual({
      ok: true,
      value: `${BASE}?a=1${LINK.slice(BASE.length)}`,
    });
  });

  it.each([
    ['bare', LINK.slice(BASE.length)],
    ['without its sign', LINK.slice(BASE.length + 1)],
    ['in brackets', `<${LINK}>`],
    ['at the end of a sentence', ` (see ${LINK}).`],
    ['with words behind it', `${LINK} what do you think?\nGreetings`],
    ['broken over lines', LINK.replace(/(.{70})/g, '$1\r\n')],
  ])('is read %s', (_, text) => {
    expect(openLink(text)).toEqual({ ok: true, value: demo });
  });
});

describe('the form of links', () => {
  it('stays as it is: a real link of form 1 opens for ever, and is written so', () => {
    const link = readFileSync(new URL('../fixtures/link-form-1.txt', import.meta.url), 'utf8').trim();
    expect(openLink(link)).toEqual({ ok: true, value: JSON.parse(FIXTURE) });
    expect(linkOf(JSON.parse(FIXTURE))).toEqual({ ok: true, value: link });
  });
});

describe('a broken link says one clear thing', () => {
  it.each<[string, string, LinkFailure['kind']]>([
    ['an empty text', '', 'no-link'],
    ['another address', 'https://example.org/#section-2', 'no-link'],
    ['an older form that never was', '#rw0.AAAA', 'no-link'],
    ['a newer form', LINK.replace('#rw1.', '#rw2.'), 'too-new'],
    ['nothing behind the sign', '#rw1.', 'cut'],
    ['the first half', LINK.slice(0, LINK.length / 2), 'cut'],
    ['all but the last letter', LINK.slice(0, -1), 'cut'],
    [
      'one letter changed',
      LINK.replace(/(.{200})(.)/, (_, before, letter) => before + (letter === 'A' ? 'B' : 'A')),
      'damaged',
    ],
    ['a sign that no link holds', LINK.replace(/(.{200})(.)/, '$1*'), 'damaged'],
    ['something behind it', `${LINK}AAAA`, 'damaged'],
    [
      'two letters changing places',
      `#rw1.${LETTERS.slice(0, 100)}${LETTERS[101]}${LETTERS[100]}${LETTERS.slice(102)}`,
      'damaged',
    ],
    [
      'bytes of chance with the right sum',
      linkAround(Uint8Array.from({ length: 400 }, (_, i) => (i * 97 + 13) & 255)),
      'damaged',
    ],
    ['a text without end', `#rw1.${'A'.repeat(2_000_000)}`, 'too-big'],
  ])('%s', (_, text, kind) => {
    expect(failureOf(text).kind).toBe(kind);
  });

  it('one cut anywhere was cut', () => {
    for (let length = 0; length < LETTERS.length; length += 7) {
      expect(failureOf(`#rw1.${LETTERS.slice(0, length)}`).kind).toBe('cut');
    }
  });

  it('one with any one letter changed was damaged or cut, and never opens', () => {
    for (let at = 0; at < LETTERS.length; at += 5) {
      const letter = LETTERS[at] === 'Q' ? 'R' : 'Q';
      expect(['damaged', 'cut']).toContain(
        failureOf(`#rw1.${LETTERS.slice(0, at)}${letter}${LETTERS.slice(at + 1)}`).kind,
      );
    }
  });

  it('one around a layout that cannot be used tells where', () => {
    const bad = { ...demo, takes: [{ ...demo.takes[0], name: 'x'.repeat(2000) }] };
    expect(describeLinkFailure(failureOf(linkAroundData(bad)))).toMatch(
      /takes\[0\]\.name: holds more than 1000 characters/,
    );
  });

  it.each(['__proto__', 'constructor', 'prototype'])(
    'one with the key %s is refused, and nothing inherits from it',
    (key) => {
      const evil = JSON.parse(JSON.stringify(demo).replace('"kit":', `"${key}":{"spoilt":true},"kit":`));
      const failure = failureOf(linkAroundData(evil));
      expect(failure.kind).toBe('unusable');
      expect(describeLinkFailure(failure)).toContain(`may not be called "${key}"`);
      expect(({} as { spoilt?: unknown }).spoilt).toBeUndefined();
    },
  );

  it('one around a newer document says so', () => {
    expect(describeLinkFailure(failureOf(linkAroundData({ ...demo, version: 7 })))).toMatch(
      /newer program: version 7/,
    );
  });
});

describe('a link made to stop the program', () => {
  const deep = (levels: number): unknown => {
    let data: unknown = 0;
    for (let i = 0; i < levels; i++) data = [data];
    return data;
  };

  it.each<[string, () => Layout, LinkFailure['kind']]>([
    [
      'a million values in few letters',
      () => ({ ...demo, later: new Array(1_000_000).fill(null) }) as never,
      'too-big',
    ],
    [
      'modules without end',
      () =>
        ({
          ...demo,
          takes: [{ ...demo.takes[0], modules: new Array(40_000).fill(demo.takes[0]?.modules[0]) }],
        }) as never,
      'too-big',
    ],
    ['nests', () => ({ ...demo, later: deep(66) }) as never, 'unusable'],
  ])('by %s is refused before it grows', (_, make, kind) => {
    const link = linkAroundData(make());
    expect(link.length).toBeLessThan(100_000);
    expect(failureOf(link).kind).toBe(kind);
  });

  it('is refused while reading too: few bytes that go on for ever', () => {
    for (const fill of [0, 255, 0x55]) {
      const body = new Uint8Array(3000).fill(fill);
      expect(['damaged', 'too-big', 'unusable']).toContain(failureOf(linkAround(body)).kind);
    }
  });

  it('is refused whatever its bytes are, and nothing is thrown', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (body) => {
        const opened = openLink(linkAround(body));
        if (!opened.ok) expect(describeLinkFailure(opened.error)).toMatch(/./);
      }),
      runs(100),
    );
  });

  it('is not written in the first place', () => {
    const notes = 'a'.repeat(100_000);
    const kinds = demo.kit.modules.map((kind) => ({ ...kind, notes: `${kind.id}${notes}` }));
    const huge = { ...demo, kit: { ...demo.kit, modules: kinds } };
    expect(linkOf(huge)).toEqual({ ok: false, error: { kind: 'too-big' } });
  });
});

describe('the budget', () => {
  it('the demo fits a QR code of version 25-M with an address of 60 characters', () => {
    expect(ADDRESS).toHaveLength(60);
    // ISO/IEC 18004, table 7: version 25, level M, holds 997 bytes.
    expect(ADDRESS.length + linkSizes(demoLayout()).ours).toBeLessThanOrEqual(997);
  });

  it('forty modules take at most 0.6 of what brotli makes of the plain file', () => {
    const layout = fortyModules();
    expect(layout.kit.modules).toHaveLength(12);
    expect(layout.takes.map(({ modules, ribbons }) => [modules.length, ribbons.length])).toEqual([
      [40, 12],
      [40, 12],
    ]);
    expect(linkSizes(layout).ratio).toBeLessThanOrEqual(0.6);
  });
});

describe('letters of an address', () => {
  it('hold any bytes, as the platform writes them', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        const text = toBase64Url(bytes);
        expect(text).toBe(Buffer.from(bytes).toString('base64url'));
        expect(fromBase64Url(text)).toEqual(bytes);
      }),
      runs(200),
    );
  });

  it('have the sum that the standard gives for the digits', () => {
    // The check value of CRC-32 in the catalogue of the CRC RevEng project: "123456789" gives CBF43926.
    expect(crc32(Buffer.from('123456789'))).toBe(0xcbf43926);
  });
});
