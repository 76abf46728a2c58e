import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeFailure, openDocument, openLayout, writeLayout } from '../../src/document.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { changed, FIXTURE, type Path } from '../support/fixture.ts';
import { runs } from '../support/runs.ts';

function line(data: unknown): string {
  const opened = openDocument(data);
  if (opened.ok) return 'opens';
  const words = describeFailure(opened.error);
  expect(words).not.toMatch(/[\n\r]/);
  return words;
}

const kit = (...path: Path): Path => ['kit', ...path];
const take = (...path: Path): Path => ['takes', 0, ...path];

describe('a file of version 1', () => {
  it('opens as it is, unknown keys and all', () => {
    const opened = openLayout(FIXTURE);
    expect(opened).toEqual({ ok: true, value: JSON.parse(FIXTURE) });
    expect(JSON.stringify(opened)).toContain('"from a later version"');
  });

  it('is written as it was', () => {
    const opened = openLayout(FIXTURE);
    expect(opened.ok && writeLayout(opened.value)).toBe(FIXTURE);
  });

  it('opens with a byte order mark', () => {
    expect(openLayout(`\uFEFF${FIXTURE}`).ok).toBe(true);
  });

  it('is not touched by opening', () => {
    expect(openDocument(deepFreeze(JSON.parse(FIXTURE))).ok).toBe(true);
  });
});

describe('the kinds of failure', () => {
  it.each([
    ['', 'not-json'],
    ['{"format": "ribbonwright", ', 'not-json'],
    ['null', 'not-ours'],
    ['[]', 'not-ours'],
    ['{"format": "something else", "version": 1}', 'not-ours'],
    ['{"format": "ribbonwright", "version": 2}', 'too-new'],
    ['{"format": "ribbonwright", "version": 0}', 'invalid'],
    ['{"format": "ribbonwright", "version": "1"}', 'invalid'],
    ['{"format": "ribbonwright"}', 'invalid'],
    ['{"format": "ribbonwright", "version": 1}', 'invalid'],
  ])('%s: %s', (text, kind) => {
    const opened = openLayout(text);
    expect(!opened.ok && opened.error.kind).toBe(kind);
    if (!opened.ok) expect(describeFailure(opened.error)).toMatch(/^[^\n]{10,}$/);
  });
});

describe('an unusable document says where', () => {
  it.each([
    [
      take('modules', 0, 'kind'),
      'cobbel',
      'takes[0].modules[0].kind: no module kind "cobbel"; did you mean "cobble"?',
    ],
    [take('modules', 0, 'kind'), 'xyz', 'takes[0].modules[0].kind: no module kind "xyz"'],
    [take('modules', 0, 'row'), 'uper', 'takes[0].modules[0].row: no row "uper"; did you mean "upper"?'],
    [take('modules', 0, 'atHp'), '3', 'takes[0].modules[0].atHp: must be a number, not "3"'],
    [take('modules', 0, 'atHp'), undefined, 'takes[0].modules[0].atHp: is missing'],
    [take('modules', 0, 'pinned'), 1, 'takes[0].modules[0].pinned: must be true or false, not 1'],
    [take('modules', 1, 'id'), 'jetty-a', 'takes[0].modules[1].id: a second module "jetty-a"'],
    [take('modules'), {}, 'takes[0].modules: must be a list, not an object'],
    [take('rows', 0, 'heightU'), 0, 'takes[0].rows[0].heightU: must be more than 0, not 0'],
    [take('rows', 0, 'widthHp'), undefined, 'takes[0].rows[0].widthHp: is missing'],
    [
      take('rows', 0),
      { id: 'upper', widthHP: 84, heightU: 3, depthMm: 60 },
      'takes[0].rows[0].widthHp: is missing; did you mean it by "widthHP"?',
    ],
    [
      take('ribbons', 0, 'kind'),
      'shore-3',
      'takes[0].ribbons[0].kind: no ribbon kind "shore-3"; did you mean "shore-2"?',
    ],
    [take('ribbons', 0, 'stripe'), 'left', 'takes[0].ribbons[0].stripe: must be "down" or "up", not "left"'],
    [
      take('ribbons', 0, 'twists'),
      [1, 1],
      'takes[0].ribbons[0].twists: 2 gaps between connectors; this ribbon has 1',
    ],
    [take('ribbons', 0, 'twists'), [-1], 'takes[0].ribbons[0].twists[0]: must be at least 0, not -1'],
    [take('ribbons', 0, 'twists'), [0.5], 'takes[0].ribbons[0].twists[0]: must be a whole number'],
    [take('ribbons', 1, 'stripe'), 'up', 'takes[0].ribbons[1].stripe: only a flat ribbon has one'],
    [take('ribbons', 1, 'twists'), [1], 'takes[0].ribbons[1].twists: only a flat ribbon has one'],
    [
      take('ribbons', 0, 'seats', 0, 'connector'),
      2,
      'takes[0].ribbons[0].seats[0].connector: no connector 2; this ribbon has 0 to 1',
    ],
    [
      take('ribbons', 0, 'seats', 0, 'connector'),
      -1,
      'takes[0].ribbons[0].seats[0].connector: must be at least 0, not -1',
    ],
    [
      take('ribbons', 0, 'seats', 0, 'on', 'module'),
      'nobody',
      'takes[0].ribbons[0].seats[0].on.module: no module "nobody"',
    ],
    [
      take('ribbons', 0, 'seats', 0, 'on', 'header'),
      'shor',
      'takes[0].ribbons[0].seats[0].on.header: no header of "cobble-1" "shor"; did you mean "shore"?',
    ],
    [
      take('ribbons', 0, 'seats', 0, 'on'),
      { module: 'cobble-1' },
      'takes[0].ribbons[0].seats[0].on: a seat is on a module and header',
    ],
    [
      take('ribbons', 0, 'seats', 0, 'on'),
      { module: 'cobble-1', header: 'shore', board: 'board' },
      'takes[0].ribbons[0].seats[0].on: a seat is on',
    ],
    [
      take('ribbons', 0, 'seats', 0, 'on'),
      { ribbon: 'l1', connector: 7 },
      'takes[0].ribbons[0].seats[0].on.connector: no connector 7',
    ],
    [
      take('ribbons', 0, 'seats', 0, 'on'),
      { ribbon: 'l9', connector: 0 },
      'takes[0].ribbons[0].seats[0].on.ribbon: no ribbon "l9"',
    ],
    [
      take('ribbons', 0, 'seats', 0, 'on'),
      { board: 'board', header: '9' },
      'takes[0].ribbons[0].seats[0].on.header: no header of "board" "9"',
    ],
    [
      take('supplies', 0, 'ratings', '+13'),
      4,
      'takes[0].supplies[0].ratings["+13"]: no voltage "+13"; did you mean "+12"?',
    ],
    [
      take('supplies', 0, 'ratings', '+12'),
      -4,
      'takes[0].supplies[0].ratings["+12"]: must be at least 0, not -4',
    ],
    [take('supplies', 0, 'boards', 0, 'row'), 'lower', 'takes[0].supplies[0].boards[0].row: no row "lower"'],
    [
      take('supplies', 0, 'boards', 0, 'headers', 0, 'pin1'),
      'left',
      'takes[0].supplies[0].boards[0].headers[0].pin1: "left" does not suit a vertical header',
    ],
    [
      take('supplies', 0, 'boards', 0, 'headers', 0, 'bus'),
      'x',
      'takes[0].supplies[0].boards[0].headers[0].bus: no bus "x"',
    ],
    [
      take('supplies', 0, 'boards', 0, 'limits'),
      { GND: 4 },
      'takes[0].supplies[0].boards[0].limits.GND: no voltage "GND"',
    ],
    [take('accepted'), [{}], 'takes[0].accepted[0].key: is missing'],
    [['takes'], [], 'takes: needs at least 1 entries'],
    [['title'], undefined, 'title: is missing'],
    [kit('voltages', 0, 'id'), 'GND', 'kit.voltages[0].id: GND is implied and no voltage'],
    [kit('voltages', 0, 'volts'), 0, 'kit.voltages[0].volts: must not be 0'],
    [kit('voltages', 0, 'id'), '+１２', 'kit.voltages[0].id: must be of printable ASCII'],
    [kit('voltages', 1, 'id'), '+12', 'kit.voltages[1].id: a second voltage "+12"'],
    [kit('buses', 0, 'pinout'), ['GND', '', 'mix'], 'kit.buses[0].pinout: pins come in pairs; there are 3'],
    [kit('buses', 0, 'pinout', 0), 7, 'kit.buses[0].pinout[0]: must be a text, not 7'],
    [kit('modules', 0, 'widthHp'), 5.25, 'kit.modules[0].widthHp: must be a multiple of 0.5, not 5.25'],
    [kit('modules', 0, 'widthHp'), 0, 'kit.modules[0].widthHp: must be more than 0, not 0'],
    [kit('modules', 0, 'draws', '+12'), -1, 'kit.modules[0].draws["+12"]: must be at least 0, not -1'],
    [kit('modules', 0, 'draws', '+7'), 1, 'kit.modules[0].draws["+7"]: no voltage "+7"'],
    [kit('modules', 0, 'draws'), undefined, 'kit.modules[0].draws: is missing'],
    [
      kit('modules', 0, 'depthIs'),
      'with-plug',
      'kit.modules[0].depthIs: must be "with-plugs" or "without-plugs", not "with-plug"; did you mean "with-plugs"?',
    ],
    [
      kit('modules', 0, 'headers', 0, 'role'),
      'hosts',
      'kit.modules[0].headers[0].role: must be "host" or "member", not "hosts"; did you mean "host"?',
    ],
    [
      kit('modules', 0, 'headers', 0, 'bus'),
      'shor',
      'kit.modules[0].headers[0].bus: no bus "shor"; did you mean "shore"?',
    ],
    [
      kit('modules', 0, 'headers', 0, 'pin1'),
      'right',
      'kit.modules[0].headers[0].pin1: "right" does not suit a vertical header; it is down or up',
    ],
    [
      kit('modules', 0, 'headers', 0, 'axis'),
      'horizontal',
      'kit.modules[0].headers[0].pin1: "down" does not suit a horizontal header',
    ],
    [
      kit('modules', 0, 'headers', 0, 'xMm'),
      null,
      'kit.modules[0].headers[0].xMm: must be a number, not nothing (null)',
    ],
    [kit('modules', 1, 'id'), 'cobble', 'kit.modules[1].id: a second module kind "cobble"'],
    [kit('ribbons', 0, 'lay'), 'stiff', 'kit.ribbons[0].lay: must be "flat" or "loose", not "stiff"'],
    [
      kit('ribbons', 0, 'connectors', 0, 'atMm'),
      1,
      'kit.ribbons[0].connectors[0].atMm: the first connector is at 0',
    ],
    [kit('ribbons', 0, 'connectors', 1, 'atMm'), 0, 'kit.ribbons[0].connectors[1].atMm: places must rise'],
    [
      kit('ribbons', 0, 'connectors', 1, 'ways'),
      99,
      'kit.ribbons[0].connectors[1].ways: 99 ways on a ribbon of 10 conductors',
    ],
    [
      kit('ribbons', 0, 'connectors', 1, 'ways'),
      1.5,
      'kit.ribbons[0].connectors[1].ways: must be a whole number',
    ],
    [kit('ribbons', 0, 'connectors'), [{ atMm: 0 }], 'kit.ribbons[0].connectors: needs at least 2 entries'],
    [kit('ribbons', 1, 'bends'), true, 'kit.ribbons[1].bends: a loose ribbon hangs freely'],
    [kit('limits', 'contactMilliohm'), 0, 'kit.limits.contactMilliohm: must be more than 0, not 0'],
    [kit('limits', 'skewMm'), -1, 'kit.limits.skewMm: must be at least 0, not -1'],
    [kit('limits', 'headroom'), 1.5, 'kit.limits.headroom: must be at most 1, not 1.5'],
    [take('modules', 0, 'atHp'), 1e12, 'takes[0].modules[0].atHp: must be at most 1000000000'],
    [
      take('modules', 0, 'label'),
      'a\nb\u2028'.repeat(900),
      'takes[0].modules[0].label: holds more than 1000 characters',
    ],
    [take('modules', 0, 'kind'), 'a\nb\u0000', 'takes[0].modules[0].kind: no module kind "a\\nb\\u0000"'],
  ])('%j = %j', (path, value, expected) => {
    expect(line(changed(path, value))).toContain(expected);
  });

  it('counts what else is wrong', () => {
    const copy = JSON.parse(FIXTURE);
    for (const module of copy.takes[0].modules) module.kind = 'nothing';
    expect(line(copy)).toMatch(/\(and \d+ more\)$/);
  });
});

describe('a document made to do harm', () => {
  it.each(['__proto__', 'constructor', 'prototype'])(
    'a key called %s is refused, wherever it stands',
    (key) => {
      const text = FIXTURE.replace('"draws": {', `"draws": { "${key}": { "x": 1 },`);
      const opened = openLayout(text);
      expect(!opened.ok && describeFailure(opened.error)).toContain(`a key may not be called "${key}"`);
      expect(({} as { x?: number }).x).toBeUndefined();
    },
  );

  it.each([
    ['lists in lists', '['.repeat(1_000_000)],
    ['objects in objects', '{"a":'.repeat(1_000_000)],
    [
      'nested inside what is ours',
      `{"format":"ribbonwright","version":1,"x":${'['.repeat(100)}${']'.repeat(100)}}`,
    ],
  ])('%s: nested too deeply', (_, text) => {
    const opened = openLayout(text);
    expect(!opened.ok && opened.error.kind).toBe('too-big');
  });

  it('brackets inside strings are no nesting', () => {
    const text = JSON.stringify({ ...JSON.parse(FIXTURE), notes: `${'[{'.repeat(500)}\\"` });
    expect(openLayout(text).ok).toBe(true);
  });

  it('too long, too many values, too many modules', () => {
    expect(openLayout(' '.repeat(32_000_001))).toMatchObject({ error: { kind: 'too-big' } });
    expect(
      openLayout(`{"format":"ribbonwright","version":1,"x":[${'0,'.repeat(4_000_000)}0]}`),
    ).toMatchObject({
      error: { kind: 'too-big' },
    });
    const [first] = JSON.parse(FIXTURE).takes[0].modules;
    const modules = Array.from({ length: 20_001 }, (__, i) => ({ ...first, id: `m${i}` }));
    expect(line(changed(take('modules'), modules))).toContain(
      'takes[0].modules: holds more than 20000 entries',
    );
  });

  it('a number too large for arithmetic is refused', () => {
    const text = FIXTURE.replace('"atHp": 10', '"atHp": 1e999');
    expect(text).not.toBe(FIXTURE);
    const opened = openLayout(text);
    expect(!opened.ok && describeFailure(opened.error)).toBe(
      'takes[0].modules[0].atHp: must be a finite number, not Infinity',
    );
  });
});

describe('for any document', () => {
  it('writing and opening is the identity, unknown keys included', () => {
    fc.assert(
      fc.property(arbitraryLayout, (layout) => {
        const text = writeLayout(layout);
        expect(openLayout(text)).toEqual({ ok: true, value: layout });
      }),
    );
  });

  it('the order of keys in a file does not matter to what is written', () => {
    const reversed = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(reversed);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, child]) => [key, reversed(child)]),
      );
    };
    fc.assert(
      fc.property(arbitraryLayout, (layout) => {
        expect(writeLayout(reversed(layout) as typeof layout)).toBe(writeLayout(layout));
      }),
    );
  });

  it('broken in any place it opens or says one line, and never throws', () => {
    const junk = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom(-1, 0.3, 1e300, '', 'GND', null, [], {}, 'cobble', '\n'),
    );
    const places: Path[] = [];
    const walk = (value: unknown, path: Path): void => {
      if (path.length > 0) places.push(path);
      if (typeof value === 'object' && value !== null) {
        for (const [key, child] of Object.entries(value))
          walk(child, [...path, Array.isArray(value) ? Number(key) : key]);
      }
    };
    walk(JSON.parse(FIXTURE), []);
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.option(junk, { nil: undefined }), (path, value) => {
        const data = changed(path, value);
        const opened = openDocument(data);
        if (opened.ok)
          expect(openLayout(writeLayout(opened.value))).toEqual({
            ok: true,
            value: data,
          });
        else expect(describeFailure(opened.error)).toMatch(/^[^\n\r]+$/);
      }),
      runs(1500),
    );
  });

  it('any text opens or says one line', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const opened = openLayout(text);
        if (!opened.ok) expect(describeFailure(opened.error)).toMatch(/^[^\n\r]+$/);
      }),
    );
  });
});

it('the demo opens', () => {
  expect(openDocument(demoLayout())).toEqual({ ok: true, value: demoLayout() });
});
