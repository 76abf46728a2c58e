import { lineName, list, targetName } from '../../checks/words.ts';
import type { Harness } from '../../wiring/harness.ts';
import { type AlikeHarnesses, continuitiesOf, isPlug, type Net, type ProbePoint } from '../continuity.ts';
import type { PageMaker } from '../sheet-page.ts';
import { caution, pagesWith, sentences, type WideTable } from './table.ts';

/** Pieces that have boxes beside one table; more have the table again. */
const PIECES_BESIDE = 6;

const namesOf = ({ ribbons }: Harness): string => ribbons.map(({ name }) => name).join(' + ');

/** Consecutive numbers as one: 1, 2, 3, 5 → "1–3, 5". */
export function ranges(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs[runs.length - 1];
    if (last && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(', ');
}

const pointName = ({ ribbon, connector }: ProbePoint, isOne: boolean): string =>
  isOne ? `${connector + 1}` : `${ribbon.name}·${connector + 1}`;

function beepsAt(net: Net, points: readonly ProbePoint[], isOne: boolean): string {
  if (net.points.length === 1) return `nothing: only at ${pointName(net.points[0] as ProbePoint, isOne)}`;
  if (net.points.length === points.length) return 'at every connector';
  return `at ${
    isOne
      ? ranges(net.points.map(({ connector }) => connector + 1))
      : list(
          net.points.map((point) => pointName(point, isOne)),
          20,
        )
  }`;
}

function besidesOf(net: Net, nets: readonly Net[], isOne: boolean): string {
  const others = net.besides.map((i) => nets[i] as Net);
  const plain = ranges(
    others
      .filter(({ pin }) => pin !== net.pin)
      .map(({ pin }) => pin)
      .filter((pin, i, all) => all.indexOf(pin) === i),
  );
  const same = others
    .filter(({ pin }) => pin === net.pin)
    .map(({ points }) => `${net.pin} at ${pointName(points[0] as ProbePoint, isOne)}`);
  return [plain, ...same].filter((text) => text !== '').join(', ');
}

const uses = ({ ribbons }: Harness): string =>
  ribbons
    .flatMap((ribbon) =>
      ribbon.uses.flatMap((joints, connector) =>
        joints
          .filter((joint) => joint.ribbon === ribbon && joint.conducts)
          .map(
            ({ on }) => `${ribbons.length > 1 ? `${ribbon.name}·` : ''}${connector + 1} → ${targetName(on)}`,
          ),
      ),
    )
    .join(' · ');

function lotsOf({ continuity, harnesses }: AlikeHarnesses): WideTable[] {
  const { nets, points, supplies, harness } = continuity;
  const isOne = harness.ribbons.length === 1;
  const kindsOf = (each: Harness): string => each.ribbons.map(({ facts }) => facts.kind.name).join(' + ');
  const plugs = points.filter(isPlug).map((point) => pointName(point, isOne));
  const beside = Array.from({ length: Math.ceil(harnesses.length / PIECES_BESIDE) }, (_, i) =>
    harnesses.slice(i * PIECES_BESIDE, (i + 1) * PIECES_BESIDE),
  );
  const lines = supplies.map(({ line, pins }) => `${lineName(line)} ${ranges(pins)}`);
  return beside.flatMap((own) => {
    const boxes = own.map((each) => ({
      head: isOne ? namesOf(each) : 'ok',
      share: Math.min(16, 60 / own.length),
      box: true as const,
    }));
    const words = [
      `${list(own.map(namesOf))}: ${[...new Set(own.map(kindsOf))].join('; ')}.`,
      isOne
        ? `Connectors 1 to ${points.length}.`
        : `Open connectors: ${list(
            points.map((point) => pointName(point, isOne)),
            30,
          )}.`,
      plugs.length > 0 && `Plugs: ${list(plugs)}.`,
      lines.length > 1 && `No beep between any two of: ${lines.join('; ')}.`,
    ].filter((part) => part !== false);
    return [
      {
        heading: 'Pin by pin',
        says: words.join(' '),
        columns: [
          { head: 'Pin', share: 11, align: 'right' },
          { head: 'Line', share: 27 },
          { head: 'Beeps to the same pin', share: 50 },
          { head: 'No beep to pins', share: 34 },
          ...boxes,
        ],
        rows: nets.map((net): string[] => [
          String(net.pin),
          lineName(net.line),
          beepsAt(net, points, isOne),
          besidesOf(net, nets, isOne),
          ...boxes.map(() => ''),
        ]),
      },
      {
        heading: 'Their pieces',
        columns: [
          { head: 'Piece', share: 28 },
          { head: 'Connector → where it goes', share: 98 },
          { head: 'No beep between lines', share: 22, box: true },
          { head: 'Initials, date', share: 34, box: true },
        ],
        rows: own.map((each): string[] => [namesOf(each), uses(each) || 'not seated', '', '']),
      },
    ];
  });
}

const HOW = [
  'Unplug the ribbon from everything first: what it sits on would join its lines. Ribbons named with + stay plugged together.',
  'Pin by pin: a beep from that pin of one connector to the same pin of each other one named. Then the same pin against its neighbours: no beep. The commonest defect of a home-made ribbon is a blade that touches two conductors.',
  'Bend the ribbon gently at each connector while it beeps: it must not crackle.',
  'This test does not show a connector that was pressed on end for end: look at its mark, it is at the stripe.',
];

/** What beeps and what does not, harness by harness; one table for all that are alike. */
export const continuityPage: PageMaker = ({ take, options }) => {
  const alike = continuitiesOf(take);
  if (alike.length === 0) return [];
  return pagesWith(
    { id: 'continuity', title: 'Continuity tables' },
    [
      caution('Unplug the mains and any adapter, and wait 30 s, before a meter that beeps touches anything.'),
      sentences('How to test', HOW),
      ...alike.flatMap(lotsOf),
    ],
    options,
  );
};
