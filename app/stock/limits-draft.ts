import { type Edit, type Kit, LIMIT_FACTS, type Limits, limitsOf } from '../../src/index.ts';
import { type Problems, startReading, typed } from '../kinds/typed.ts';

export type LimitName = keyof Limits;

export const LIMIT_NAMES = Object.keys(LIMIT_FACTS) as readonly LimitName[];

/** Every limit as typed; empty is the default. */
export type LimitsDraft = Readonly<Record<LimitName, string>>;

const SHARES: ReadonlySet<LimitName> = new Set(['headroom']);

/** A share of something is told and typed in percent. */
export const unitOf = (name: LimitName): string => (SHARES.has(name) ? '%' : LIMIT_FACTS[name].unit);

/** A limit as it is told. */
export const toldIn = (name: LimitName, value: number): number =>
  SHARES.has(name) ? Number((value * 100).toFixed(6)) : value;

const readIn = (name: LimitName, told: number): number =>
  SHARES.has(name) ? Number((told / 100).toFixed(8)) : told;

export function limitsDraftOf(kit: Kit): LimitsDraft {
  const now = limitsOf(kit);
  return Object.fromEntries(LIMIT_NAMES.map((name) => [name, typed(toldIn(name, now[name]))])) as Record<
    LimitName,
    string
  >;
}

/** What a limit may be, as a file is opened: nothing below nothing, a share up to all of it, a resistance above it. */
function bounds(name: LimitName): { readonly words: string; readonly holds: (value: number) => boolean } {
  if (name === 'headroom')
    return { words: 'A share from 0 to 100 %', holds: (value) => value >= 0 && value <= 100 };
  if (name === 'ambientC')
    return { words: 'A temperature from −200 to 1000 °C', holds: (value) => value >= -200 && value <= 1000 };
  if (name === 'contactMilliohm')
    return { words: 'A resistance above 0 mΩ', holds: (value) => value > 0 && value <= 1e9 };
  return { words: `A number of ${unitOf(name)} from 0`, holds: (value) => value >= 0 && value <= 1e9 };
}

/** Units that may be typed along and that the reader of figures does not know. */
const UNIT = /\s*(%|mv|mω|°c)\s*$/i;

/**
 * The step from the limits of the kit to those typed; one at its default is kept as none of its own. Nothing, and no
 * problem, where nothing was changed.
 */
export function readLimits(
  kit: Kit,
  draft: LimitsDraft,
): { readonly step: Edit | null; readonly problems: Problems<LimitName> } {
  const read = startReading<LimitName>();
  const own = kit.limits ?? {};
  const now = limitsOf(kit);
  const limits: Partial<Record<LimitName, number | null>> = {};
  for (const name of LIMIT_NAMES) {
    const { words, holds } = bounds(name);
    const told = read.maybe(name, draft[name].replace(UNIT, ''), words, holds);
    const { value: usual } = LIMIT_FACTS[name];
    const value = told === undefined ? usual : readIn(name, told);
    const isCleared = value === usual && own[name] !== undefined && own[name] !== usual;
    if (isCleared) limits[name] = null;
    else if (value !== now[name]) limits[name] = value;
  }
  const { problems } = read;
  const isAmiss = Object.keys(problems).length > 0;
  const isSame = Object.keys(limits).length === 0;
  return { step: isAmiss || isSame ? null : { type: 'set-limits', limits }, problems };
}
