import {
  type DerivedTake,
  type Gap,
  type Kit,
  type Laying,
  landed,
  type Note,
  type Pulled,
  type RibbonKind,
  type Side,
  tautest,
  type WhyNot,
} from '../../src/index.ts';
import { figure } from '../panels/figures.ts';
import type { HintWords } from '../store/hints.ts';

type Line = HintWords['lines'][number];

const mm = (value: number): string => `${figure(value, 1)} mm`;

export const plain = (text: string): Line => ({ text, isTrouble: false });
export const trouble = (text: string): Line => ({ text, isTrouble: true });

const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

const ORDINALS = ['th', 'st', 'nd', 'rd'];

function ordinal(n: number): string {
  const isTeen = n % 100 > 10 && n % 100 < 14;
  return `${n}${(isTeen ? undefined : ORDINALS[n % 10]) ?? 'th'}`;
}

/** "2.54 mm (1 row)": how far off, and in what pins count. */
function offWords({ dxMm, dyMm, displaced }: NonNullable<Laying['landings'][number]['miss']>): string {
  const far = [dxMm, dyMm].map(Math.abs).filter((off) => off > 0.05);
  const pins = displaced && [
    ...(displaced.rows ? [count(Math.abs(displaced.rows), 'row')] : []),
    ...(displaced.pairs ? [count(Math.abs(displaced.pairs), 'pair')] : []),
  ];
  const off = far.map((value) => `${figure(value, 2)} mm`).join(' and ');
  return pins?.length ? `${off} (${pins.join(', ')})` : off;
}

function missLines({ landings }: Laying): Line[] {
  return landings.flatMap(({ connector, miss }) => {
    if (!miss) return [];
    const { name } = miss.header.owner;
    if (miss.missingMm) return [trouble(`${mm(miss.missingMm)} too short for ${name}`)];
    return [trouble(`connector ${connector + 1} is ${offWords(miss)} off ${name}`)];
  });
}

const ends = ({ pair }: Gap): string => `${pair.a.on.header.owner.name} and ${pair.b.on.header.owner.name}`;

function flawLine(gap: Gap): Line[] {
  const { flaws, missingMm } = gap;
  return flaws.flatMap((flaw): Line[] => {
    if (flaw === 'short-ribbon' || flaw === 'lead-short')
      return [trouble(`${mm(missingMm ?? 0)} too short between ${ends(gap)}`)];
    if (flaw === 'crowded') return [trouble(`no room between ${ends(gap)}`)];
    if (flaw === 'no-clearance') return [trouble(`the case is too shallow between ${ends(gap)}`)];
    if (flaw === 'out-of-line') return [trouble(`${ends(gap)} are not in one line`)];
    return [];
  });
}

/** The arch that bends most sharply. */
function archLine({ gaps }: Laying, { limits }: DerivedTake): Line[] {
  const arches = gaps.flatMap(({ arch }) => arch ?? []);
  const touching = arches.find(({ kind }) => kind === 'legs-touch');
  if (touching) return [trouble('the ribbon folds onto itself')];
  const [first, ...others] = arches.filter((arch) => arch.kind === 'arch');
  if (!first) return [];
  const tightest = others.reduce((worst, arch) => (arch.radiusMm < worst.radiusMm ? arch : worst), first);
  const text = `arch ${mm(Math.max(first.heightMm, ...others.map(({ heightMm }) => heightMm)))} high, radius ${mm(tightest.radiusMm)} (least ${figure(limits.bendRadiusMm)})`;
  return [gaps.some(({ flaws }) => flaws.includes('tight-bend')) ? trouble(text) : plain(text)];
}

/** What the notes say of it that its landing does not: too many members, a stripe at the wrong end. */
function noteLines(notes: readonly Note[], ribbon: string): Line[] {
  const own = notes.filter(({ subjects }) =>
    subjects.some(({ type, id }) => type === 'ribbon' && id === ribbon),
  );
  const over = own.find(({ check }) => check === 'over-members');
  const reversed = own.filter(({ check }) => check === 'stripe-reversed');
  return [
    ...(over?.measure
      ? [
          trouble(
            `${ordinal(over.measure.members ?? 0)} member of ${over.measure.allowed ?? 0}: more than the host takes`,
          ),
        ]
      : []),
    ...(reversed.length > 0
      ? [trouble(`stripe against pin 1 on ${count(reversed.length, 'connector')}`)]
      : []),
  ];
}

/** Where its connectors are, from left to right on the screen. */
export function connectorsOf({ landings, stripe }: Laying, side: Side): HintWords['connectors'] {
  const all = landings.map(({ connector, on, lands }, i) => ({
    number: connector + 1,
    shown: lands ? 'lands' : on || landings[i]?.miss ? 'misses' : 'free',
  })) as HintWords['connectors'];
  const leftToRight = (stripe !== 'up') === (side === 'rear');
  return leftToRight ? all : [...all].reverse();
}

/** All that is worth saying of a ribbon while it is laid, the worst first. */
export function layingLines(
  laying: Laying,
  shown: { readonly derived: DerivedTake; readonly notes: readonly Note[] } | null,
  before: DerivedTake,
  other: Pulled | undefined,
): Line[] {
  const { landings } = laying;
  const n = landed(laying);
  const id = shown?.derived.wiring.ribbons.at(-1)?.id ?? '';
  const better = other
    ? plain(`${other.laying.facts.kind.name} would land ${landed(other.laying)}`)
    : undefined;
  return [
    plain(`${n} of ${landings.length} land`),
    ...missLines(laying),
    ...laying.gaps.flatMap(flawLine),
    ...archLine(laying, before),
    ...(shown ? noteLines(shown.notes, id) : []),
    ...(better ? [better] : []),
  ];
}

/** How long a loose ribbon is and must be. */
export function leadLines({ facts, gaps }: Laying, inStock: boolean): Line[] {
  const taut = tautest(gaps);
  const long = facts.connectors.at(-1)?.atMm ?? 0;
  const needs = taut
    ? [plain(`${figure(taut.neededMm, 0)} mm needed, ${figure(taut.pair.lengthMm, 0)} mm there`)]
    : [plain(`${figure(long, 0)} mm long`)];
  return [
    ...needs,
    ...(taut?.missingMm ? [trouble(`${mm(taut.missingMm)} too short`)] : []),
    ...(inStock ? [] : [trouble('none left in the stock')]),
  ];
}

/** Why a ribbon cannot start at a place. */
export function whyWords(why: WhyNot, kind: RibbonKind, kit: Kit): string {
  const bus = kit.buses.find(({ id }) => id === kind.bus)?.name ?? kind.bus;
  const words: Record<WhyNot, string> = {
    taken: 'something sits there already',
    'other-bus': `no ${bus} header`,
    lying: 'the header lies on its side',
    board: 'a flat ribbon joins modules',
    'no-mate': 'none of its connectors fits there',
  };
  return words[why];
}

/** What happened, for those who do not see it. */
export function spokenOf(laying: Laying, label: string): string {
  const n = landed(laying);
  const said = [...missLines(laying), ...laying.gaps.flatMap(flawLine)].map(({ text }) => text);
  const all = laying.landings.length;
  return `${label} laid: ${n} of ${count(all, 'connector')} ${n === 1 ? 'lands' : 'land'}${said.length ? `; ${said.join('; ')}` : ''}.`;
}
