import { describe, expect, it } from 'vitest';
import type { Note } from '../../src/checks/check.ts';
import { checkLayout } from '../../src/checks/check-layout.ts';
import {
  along,
  BOARD,
  example,
  kind,
  onBoard,
  onModule,
  onRibbon,
  powerHeader,
  ROW,
  ribbon,
  ribbonKind,
  SUPPLY,
  shoreHeader,
} from '../../src/checks/example.ts';
import type { Layout } from '../../src/layout/layout.ts';

const notesOf = (layout: Layout): Note[] => checkLayout(layout).flatMap(({ notes }) => notes);
const severe = (layout: Layout): string[] =>
  notesOf(layout)
    .filter(({ level }) => level !== 'reminder')
    .map(({ check }) => check);
const only = (layout: Layout, check: string): Note[] =>
  notesOf(layout).filter((note) => note.check === check);
const subjects = (note: Note | undefined): string[] =>
  (note?.subjects ?? []).map(({ type, id }) => `${type} ${id}`);

/** A voice that draws nothing, so that wiring can be looked at without feeds. */
const quiet = kind('quiet', { headers: [shoreHeader()] });
const host = ['h', 'collector', 0] as const;

describe('a ribbon that reads the same from both ends', () => {
  const seated = (kindId: string, ...modules: string[]) =>
    example({
      kinds: [quiet],
      ribbonKinds: [ribbonKind('uneven', [0, 25.4, 76.2])],
      modules: [host, ['a', 'quiet', 5], ['b', 'quiet', 10]],
      ribbons: [ribbon('r', kindId, along(...modules))],
    });

  it('may be numbered from either end', () => {
    expect(severe(seated('stiff3', 'b', 'a', 'h'))).toEqual([]);
    expect(severe(seated('stiff3', 'h', 'a', 'b'))).toEqual([]);
  });

  it('is crossed when it runs in order from neither', () => {
    expect(severe(seated('stiff3', 'a', 'h', 'b'))).toEqual(['crossed']);
  });

  it('else must be seated as it is numbered', () => {
    expect(severe(seated('uneven', 'h', 'a', 'b'))).toEqual(['crossed']);
  });
});

describe('plug and socket', () => {
  const main = ribbonKind('main', [0, 25.4, 50.8]);
  const more = { ...ribbonKind('more', []), connectors: [{ atMm: 0 }, { atMm: 60, type: 'plug' as const }] };
  const chain = (
    t: Parameters<typeof ribbon>[2],
    more2: Partial<Parameters<typeof ribbon>[3]> = {},
    main2 = {},
  ) =>
    example({
      kinds: [quiet],
      ribbonKinds: [main, more],
      modules: [host, ['a', 'quiet', 5], ['b', 'quiet', 15]],
      ribbons: [
        ribbon('r', 'main', [onModule(1, 'a'), onModule(2, 'h')], main2),
        ribbon('s', 'more', t, more2),
      ],
    });

  it('joins two ribbons into one harness and group', () => {
    expect(severe(chain([onModule(0, 'b'), onRibbon(1, 'r', 0)]))).toEqual([]);
  });

  it('is one joint, from whichever ribbon it is drawn, and drawn twice', () => {
    const fromSocket = example({
      kinds: [quiet],
      ribbonKinds: [main, more],
      modules: [host, ['a', 'quiet', 5], ['b', 'quiet', 15]],
      ribbons: [
        ribbon('r', 'main', [onModule(1, 'a'), onModule(2, 'h'), onRibbon(0, 's', 1)]),
        ribbon('s', 'more', [onModule(0, 'b')]),
      ],
    });
    expect(severe(fromSocket)).toEqual([]);
    const [take] = fromSocket.takes;
    const twice = {
      ...fromSocket,
      takes: [
        {
          ...take,
          ribbons: take?.ribbons.map((r) =>
            r.id === 's' ? { ...r, seats: [...r.seats, onRibbon(1, 'r', 0)] } : r,
          ),
        },
      ],
    } as Layout;
    expect(severe(twice)).toEqual([]);
  });

  it('is too short by its whole length: both ribbons and both modules are named', () => {
    const layout = chain([onModule(0, 'b'), onRibbon(1, 'r', 0)]);
    const [take] = layout.takes;
    const far = {
      ...layout,
      takes: [{ ...take, modules: take?.modules.map((m) => (m.id === 'b' ? { ...m, atHp: 23 } : m)) }],
    } as Layout;
    const [note] = only(far, 'short-ribbon');
    expect(subjects(note)).toEqual(['ribbon r', 'ribbon s', 'module a', 'module b']);
    // 25.4 mm on the one and 60 mm on the other, over 18 HP = 91.44 mm.
    expect(note?.measure).toMatchObject({ lengthMm: 85.4 });
    expect(note?.measure?.distanceMm).toBeCloseTo(91.44, 9);
  });

  it('must face one another', () => {
    expect(severe(chain([onModule(0, 'b'), onRibbon(1, 'r', 0)], { twists: [1] }))).toContain('looks-away');
  });

  it('must lie stripe on stripe', () => {
    const layout = chain([onModule(0, 'b'), onRibbon(1, 'r', 0)], { stripe: 'up' });
    const joint = only(layout, 'stripe-reversed').find(({ key }) => key.endsWith('s%201'));
    expect(subjects(joint)).toEqual(['ribbon r', 'ribbon s']);
    expect(joint?.level).toBe('damage');
  });

  it('a socket on a header takes no plug too; the first drawn conducts', () => {
    const layout = chain([onModule(0, 'b'), onRibbon(1, 'r', 1)]);
    const [note] = only(layout, 'double-seat');
    expect(subjects(note)).toEqual(['ribbon r', 'ribbon s']);
    expect(severe(layout)).toContain('loose-end');
  });

  it('halves that cannot mate: socket on socket, plug on header', () => {
    expect(
      only(chain([onModule(1, 'b'), onRibbon(0, 'r', 0)]), 'wrong-connector').map(({ level }) => level),
    ).toEqual(['fault', 'fault']);
  });

  it('a ribbon plugged into itself ends the search and harms nothing else', () => {
    const layout = example({
      ribbonKinds: [{ ...ribbonKind('loop', []), connectors: [{ atMm: 0 }, { atMm: 60, type: 'plug' }] }],
      ribbons: [ribbon('r', 'loop', [onRibbon(1, 'r', 0)])],
    });
    expect(() => severe(layout)).not.toThrow();
  });

  it('two ribbons plugged into one another end the search too', () => {
    const both = {
      ...ribbonKind('both', []),
      connectors: [{ atMm: 0 }, { atMm: 30 }, { atMm: 60, type: 'plug' as const }],
    };
    const layout = example({
      kinds: [quiet],
      ribbonKinds: [both],
      modules: [host, ['a', 'quiet', 10]],
      ribbons: [
        ribbon('r', 'both', [onRibbon(2, 's', 0), onModule(1, 'h')]),
        ribbon('s', 'both', [onRibbon(2, 'r', 0), onModule(1, 'a')]),
      ],
    });
    expect(() => severe(layout)).not.toThrow();
  });
});

describe('a stiff ribbon', () => {
  it('lies where most of its seats agree; the odd one is the one at fault', () => {
    const layout = example({
      kinds: [quiet],
      modules: [
        ['h', 'collector', 0.5],
        ['a', 'quiet', 5.5],
        ['b', 'quiet', 10],
      ],
      ribbons: [ribbon('r', 'stiff3', along('b', 'a', 'h'))],
    });
    const [note, ...others] = only(layout, 'displaced');
    expect(others).toEqual([]);
    expect(subjects(note)).toEqual(['ribbon r', 'module b']);
    expect(note?.measure).toMatchObject({ rows: -1, pairs: 0 });
    expect(note?.remedy).toBe('Move quiet (b) to 10.5 HP.');
  });

  it('can sit pairs too high, fewer than it has, but not on a boxed header', () => {
    const raised = (yMm: number, keyed = false) =>
      severe(
        example({
          kinds: [quiet, kind('raised', { headers: [shoreHeader({ yMm, keyed })] })],
          modules: [host, ['a', 'quiet', 5], ['b', 'raised', 10]],
          ribbons: [ribbon('r', 'stiff3', along('b', 'a', 'h'))],
        }),
      );
    expect(raised(38 + 2.54)).toEqual(['displaced']);
    expect(raised(38 + 4 * 2.54)).toEqual(['displaced']);
    expect(raised(38 + 5 * 2.54)).toEqual(['out-of-line']);
    expect(raised(38 + 2.54, true)).toEqual(['out-of-line']);
  });

  it('does not reach into another row', () => {
    const layout = example({
      kinds: [quiet],
      rows: [ROW, { ...ROW, id: 'below' }],
      modules: [host, ['a', 'quiet', 5], ['b', 'quiet', 10, 'below']],
      ribbons: [ribbon('r', 'stiff3', along('b', 'a', 'h'))],
    });
    expect(severe(layout)).toEqual(['out-of-line']);
  });
});

describe('leads', () => {
  it('count the way across rows: the lower row’s height and the gap', () => {
    const across = (gapMm: number) =>
      example({
        rows: [
          { ...ROW, gapMm },
          { ...ROW, id: 'below' },
        ],
        modules: [['a', 'plain', 52, 'below']],
        ribbons: [ribbon('r', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')])],
      });
    // 52 HP + 20 mm lie 15.84 mm off the board; 60 mm up there, 90 mm here: 133.35 − 30 + gap, and 40 to spare.
    const [note] = only(across(141), 'lead-short');
    expect(note?.measure?.neededMm).toBeCloseTo(15.84 + 133.35 - 30 + 141 + 40, 6);
    expect(severe(across(140))).toEqual([]);
  });

  it('have no stripe, face, order or pitch to be wrong', () => {
    const layout = example({
      ribbonKinds: [
        {
          ...ribbonKind('own', [], { bus: 'power', lay: 'loose' }),
          connectors: [{ atMm: 0, face: 'rear' }, { atMm: 500 }],
        },
      ],
      modules: [['a', 'plain', 40]],
      ribbons: [ribbon('r', 'own', [onModule(0, 'a', 'power'), onBoard(1, 'p1')])],
    });
    expect(severe(layout)).toEqual([]);
  });
});

describe('islands and feeds', () => {
  const through = (isolated: boolean) => kind('through', { headers: [shoreHeader({ isolated })], draws: {} });

  it('GND and signals alone make no island: each draw needs a feed of its own', () => {
    const layout = example({
      buses: [{ id: 'dry', name: 'Dry', pinout: ['GND', 'mix'] }],
      kinds: [
        kind('dry', {
          draws: { '+12': 5 },
          headers: [shoreHeader({ bus: 'dry' }), powerHeader({ xMm: 12.7 })],
        }),
      ],
      ribbonKinds: [ribbonKind('dry2', [0, 25.4], { bus: 'dry' })],
      modules: [
        ['a', 'dry', 45],
        ['b', 'dry', 40],
      ],
      ribbons: [
        ribbon('r', 'dry2', along('a', 'b')),
        ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
      ],
    });
    expect(only(layout, 'unpowered').map(subjects)).toEqual([['module b']]);
  });

  it('an isolated header joins no island', () => {
    const layout = (isolated: boolean) =>
      example({
        kinds: [
          through(isolated),
          kind('fed', {
            draws: { '+12': 5 },
            headers: [shoreHeader({ isolated }), powerHeader({ xMm: 12.7 })],
          }),
        ],
        modules: [
          ['a', 'voice', 45],
          ['b', 'fed', 40],
        ],
        ribbons: [
          ribbon('r', 'stiff', along('a', 'b')),
          ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'b', 'power')]),
        ],
      });
    expect(only(layout(false), 'unpowered')).toEqual([]);
    expect(only(layout(true), 'unpowered').map(subjects)).toEqual([['module a']]);
  });

  it('a lead with several connectors joins no island, but counts as a feed each time', () => {
    const flying = (second: 'a' | 'b') =>
      example({
        kinds: [
          kind('two', {
            widthHp: 10,
            draws: { '+12': 5 },
            headers: [powerHeader(), powerHeader({ id: 'other', xMm: 40 })],
          }),
        ],
        ribbonKinds: [ribbonKind('flying', [0, 300, 500], { bus: 'power', lay: 'loose' })],
        modules: [
          ['a', 'two', 45],
          ['b', 'two', 30],
        ],
        ribbons: [
          ribbon('f', 'flying', [onBoard(0, 'p1'), onModule(1, 'a', 'power'), onModule(2, second, 'other')]),
        ],
      });
    expect(only(flying('b'), 'double-feed')).toEqual([]);
    expect(only(flying('b'), 'unpowered')).toEqual([]);
    expect(only(flying('a'), 'double-feed').map(subjects)).toEqual([['module a', 'ribbon f']]);
  });

  it('two supplies on one lead are joined, with or without a module', () => {
    const layout = example({
      ribbonKinds: [ribbonKind('bridge', [0, 300], { bus: 'power', lay: 'loose' })],
      supplies: [SUPPLY, { ...SUPPLY, id: 'second', name: 'Second', boards: [{ ...BOARD, id: 'board2' }] }],
      ribbons: [ribbon('f', 'bridge', [onBoard(0, 'p1'), onBoard(1, 'p1', 'board2')])],
    });
    expect(only(layout, 'joined-supplies').map(subjects)).toEqual([['supply second', 'supply supply']]);
  });

  it('a way past a module’s own supply carries the feed on', () => {
    const passing = kind('passing', {
      headers: [
        shoreHeader({ id: 'in', isolated: true, passes: true }),
        shoreHeader({ id: 'out', isolated: true, passes: true, yMm: 80 }),
      ],
    });
    const layout = example({
      kinds: [
        passing,
        kind('fed', { headers: [shoreHeader(), powerHeader({ xMm: 12.7 })] }),
        kind('end', { draws: { '+12': 9 }, headers: [shoreHeader({ yMm: 80 })] }),
      ],
      modules: [
        ['a', 'fed', 45],
        ['p', 'passing', 40],
        ['e', 'end', 35],
      ],
      ribbons: [
        ribbon('r', 'stiff', [onModule(0, 'a'), onModule(1, 'p', 'in')]),
        ribbon('s', 'stiff', [onModule(0, 'p', 'out'), onModule(1, 'e')]),
        ribbon('l', 'lead', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
      ],
    });
    expect(only(layout, 'unpowered')).toEqual([]);
    expect(only(layout, 'missing-voltage')).toEqual([]);
  });

  it('a ribbon that leaves out a voltage is told per module', () => {
    const layout = example({
      kinds: [kind('needs', { draws: { '+12': 5 }, headers: [shoreHeader(), powerHeader({ xMm: 12.7 })] })],
      ribbonKinds: [
        {
          ...ribbonKind('few', [], { bus: 'power', lay: 'loose' }),
          connectors: [{ atMm: 0 }, { atMm: 400, ways: 8 }],
        },
      ],
      modules: [
        ['a', 'needs', 45],
        ['b', 'needs', 40],
      ],
      ribbons: [
        ribbon('r', 'stiff', along('a', 'b')),
        ribbon('l', 'few', [onBoard(0, 'p1'), onModule(1, 'a', 'power')]),
      ],
    });
    expect(only(layout, 'missing-voltage').map(subjects)).toEqual([['module a'], ['module b']]);
  });
});

describe('link groups', () => {
  it('count joined headers of a module once, with the larger count', () => {
    const wide = (counts: number) =>
      kind('wide', {
        headers: [
          shoreHeader({ id: 'in', passes: true, counts }),
          shoreHeader({ id: 'out', passes: true, yMm: 80 }),
        ],
      });
    const layout = (counts: number) =>
      example({
        kinds: [quiet, wide(counts), kind('high', { headers: [shoreHeader({ yMm: 80 })] })],
        modules: [host, ['w', 'wide', 5], ['b', 'high', 10]],
        ribbons: [
          ribbon('r', 'stiff', [onModule(0, 'w', 'in'), onModule(1, 'h')]),
          ribbon('s', 'stiff', [onModule(0, 'b'), onModule(1, 'w', 'out')]),
        ],
      });
    expect(severe(layout(5))).toEqual([]);
    const [note] = only(layout(6), 'over-members');
    expect(note?.measure).toEqual({ members: 7, allowed: 6 });
    expect(subjects(note)).toEqual(['module h', 'ribbon r', 'ribbon s']);
  });
});

describe('the list', () => {
  const crowd = example({
    kinds: [kind('unknown', { draws: { '+12': null } })],
    modules: [
      ['z', 'voice', 0],
      ['y', 'voice', 1],
      ['x', 'unknown', 2],
      ['w', 'voice', 83],
    ],
  });

  it('is damage, fault, reminder; then the order of the checks; then key', () => {
    expect(notesOf(crowd).map(({ key }) => key)).toEqual([
      'overlap/module:x+module:y',
      'overlap/module:x+module:z',
      'overlap/module:y+module:z',
      'off-row/module:w',
      'foreign-voltage/module:x',
      'unpowered/module:w',
      'unpowered/module:x',
      'unpowered/module:y',
      'unpowered/module:z',
      'unknown-facts/module:x',
    ]);
  });

  it('is the same for the same take', () => {
    expect(notesOf(crowd)).toEqual(notesOf(crowd));
  });

  it('marks what was put away, until its facts change; damage is never put away', () => {
    const [take] = crowd.takes;
    const [first] = notesOf(crowd);
    const accept = (facts?: string) =>
      ({
        ...crowd,
        takes: [{ ...take, accepted: [{ key: first?.key, ...(facts !== undefined && { facts }) }] }],
      }) as Layout;
    expect(notesOf(accept())[0]?.accepted).toBe(true);
    expect(notesOf(accept(first?.facts))[0]?.accepted).toBe(true);
    expect(notesOf(accept('sharedHp=1'))[0]?.accepted).toBeUndefined();
    const worst = example({
      modules: [host, ['i', 'collector', 5]],
      ribbons: [ribbon('r', 'stiff', along('i', 'h'))],
    });
    const [damage] = notesOf(worst);
    const put = { ...worst, takes: [{ ...worst.takes[0], accepted: [{ key: damage?.key }] }] } as Layout;
    expect(notesOf(put)[0]).toMatchObject({ level: 'damage' });
    expect(notesOf(put)[0]?.accepted).toBeUndefined();
  });
});
