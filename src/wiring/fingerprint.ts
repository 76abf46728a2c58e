import type { PlacedHeader } from '../geometry/place.ts';
import { remember } from '../layout/remember.ts';
import type { Harness } from './harness.ts';
import { type Joint, type LaidRibbon, linesOf } from './laid-ribbon.ts';

/* Letters and digits that are not taken for one another when they are read from paper. */
const SIGNS = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';

/** FNV-1a (Fowler, Noll, Vo; from memory) over UTF-16 units, from a start of one's own. */
function fnv(text: string, start: number): number {
  let sum = start;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  // What came last has gone through few multiplications: mix it into all bits.
  sum = Math.imul(sum ^ (sum >>> 16), 0x85ebca6b);
  return (sum ^ (sum >>> 13)) >>> 0;
}

/** Eight signs of 5 bits that stand for a text. */
export function shortHash(text: string): string {
  const halves = [fnv(text, 0x811c9dc5), fnv(text, 0x7ee3623a)];
  return halves
    .flatMap((half) => [0, 5, 10, 15].map((shift) => SIGNS[(half >>> shift) & 31] as string))
    .join('');
}

/** Micrometres: float arithmetic leaves crumbs that nobody tests. */
const tidy = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;

const pointOf = (header: PlacedHeader, topMm: number) => [
  header.row.row.id,
  tidy(header.row.bottomMm - topMm),
  tidy(header.xMm),
  tidy(header.yMm),
  header.zMm === undefined ? null : tidy(header.zMm),
  header.axis,
  header.pin1 ?? null,
  header.keyed,
  header.passes,
  header.isolated,
  header.bus.bus.pinout,
];

function seatOf({ connector, on }: Joint, topMm: number): string {
  const what =
    on.type === 'connector'
      ? ['ribbon', on.ribbon.id, on.connector]
      : [on.header.owner.type, on.header.owner.id, ...pointOf(on.header, topMm)];
  return JSON.stringify([connector, ...what]);
}

/** Seats as drawn, those that do not conduct among them. */
const ownSeats = (ribbon: LaidRibbon): Joint[] =>
  ribbon.uses.flat().filter((joint) => joint.ribbon === ribbon);

function ribbonFacts(ribbon: LaidRibbon, topMm: number) {
  const { kind } = ribbon.facts;
  const { stripe = 'down', twists = [] } = ribbon.ribbon;
  return [
    ribbon.id,
    linesOf(ribbon),
    ribbon.facts.flat,
    ribbon.facts.bends,
    kind.awg ?? 28,
    kind.connectors.map(({ atMm, type, ways, face, key }) => [
      atMm,
      type ?? null,
      ways ?? null,
      face ?? null,
      key ?? null,
    ]),
    stripe,
    // A gap that is not twisted may be written as 0 or not at all.
    twists.flatMap((halfTwists, i) => (halfTwists > 0 ? [[i, halfTwists]] : [])),
    ownSeats(ribbon)
      .map((joint) => seatOf(joint, topMm))
      .sort(),
  ];
}

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Ids of its ribbons, sorted: what a harness is known by while its ribbons stay joined. */
export const ribbonIdsOf = ({ ribbons }: Harness): readonly string[] =>
  ribbons.map(({ id }) => id).sort(byCodeUnit);

/**
 * Stands for the geometry and the nets of a harness: which ribbons, how they are made and lie, what each connector
 * sits on, where that is and what lies on its pins. Names, notes, prices, colours and currents do not count. Rows
 * count by how far they are apart.
 */
export const fingerprintOf = remember((harness: Harness): string => {
  const ribbons = harness.ribbons.toSorted((a, b) => byCodeUnit(a.id, b.id));
  const bottoms = ribbons.flatMap((ribbon) =>
    ownSeats(ribbon).flatMap(({ on }) => (on.type === 'header' ? [on.header.row.bottomMm] : [])),
  );
  const topMm = bottoms.length > 0 ? Math.max(...bottoms) : 0;
  return shortHash(JSON.stringify(ribbons.map((ribbon) => ribbonFacts(ribbon, topMm))));
});
