import type { Edit } from '../../edit/edit.ts';
import type { PlacedHeader } from '../../geometry/place.ts';
import { resolve } from '../../layout/kit-index.ts';
import { connectorsFor, type FittingRibbon, fittingRibbons, stripeOver } from '../../wiring/fitting.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import { onHeader } from '../../wiring/landing.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { mend } from './remedy.ts';

/** Kinds to try beyond the one that lies there. */
const MOST_KINDS = 3;

/** Whether it sits on headers and nothing else, and may be touched. */
export const isFree = ({ ribbon, uses }: LaidRibbon): boolean =>
  !ribbon.locked && uses.every((joints) => joints.every(({ on }) => on.type === 'header'));

/** The headers that the conducting seats of a ribbon are on, by connector. */
export const headersUnder = ({ uses }: LaidRibbon): PlacedHeader[] =>
  uses.flatMap((joints) =>
    joints.flatMap(({ conducts, on }) => (conducts && on.type === 'header' ? [on.header] : [])),
  );

/** Lifts a ribbon off everything and lays it over headers, as a ribbon of that kind. */
export function layAnewEdits(
  take: WholeTake,
  laid: LaidRibbon,
  headers: readonly PlacedHeader[],
  { kind, connectors }: Pick<FittingRibbon, 'kind' | 'connectors'>,
): Edit[] {
  const named = { take: take.take.id, ribbon: laid.id };
  const facts = resolve(take.kit.ribbons, kind);
  const seated = [...new Set(laid.ribbon.seats.map(({ connector }) => connector))];
  const untwist = (laid.ribbon.twists ?? []).flatMap((halfTwists, after): Edit[] =>
    halfTwists > 0 ? [{ type: 'twist-ribbon', ...named, after, halfTwists: 0 }] : [],
  );
  const isUp = laid.ribbon.stripe === 'up';
  const turns = facts.flat && laid.facts.flat && isUp !== (stripeOver(headers) === 'up');
  const needsTurn = turns || (facts.flat && !laid.facts.flat && stripeOver(headers) === 'up');
  return [
    ...untwist,
    ...seated.map((connector): Edit => ({ type: 'unseat', ...named, connector })),
    ...(kind === laid.facts.kind.id ? [] : [{ type: 'exchange-ribbon', ...named, kind } as const]),
    ...(needsTurn ? [{ type: 'turn-ribbon', ...named, seats: 'keep' } as const] : []),
    ...headers.map(
      (header, i): Edit => ({
        type: 'seat-connector',
        ...named,
        connector: connectors[i] as number,
        on: onHeader(header),
      }),
    ),
  ];
}

/** The same ribbon over headers by other connectors. */
export function* seatAnew(
  take: WholeTake,
  laid: LaidRibbon,
  headers: readonly PlacedHeader[],
  label: string,
): Generator<Mend> {
  const connectors = isFree(laid) ? connectorsFor(take, laid.facts, headers) : undefined;
  if (!connectors) return;
  const fitting = { kind: laid.facts.kind.id, connectors };
  yield mend(label, layAnewEdits(take, laid, headers, fitting));
}

export const toBuyWords = (ownedLeft: number | undefined): string =>
  ownedLeft !== undefined && ownedLeft <= 0 ? ' (to buy)' : '';

/** Other kinds of ribbon over headers, those at hand first. */
export function* otherKinds(
  take: WholeTake,
  laid: LaidRibbon,
  headers: readonly PlacedHeader[],
  ending = '',
): Generator<Mend> {
  if (!isFree(laid)) return;
  const others = fittingRibbons(take, headers).filter(({ kind }) => kind !== laid.facts.kind.id);
  for (const fitting of others.slice(0, MOST_KINDS)) {
    const { name } = resolve(take.kit.ribbons, fitting.kind).kind;
    const label = `Use ${name}${toBuyWords(fitting.ownedLeft)} for ${laid.name}${ending}`;
    yield mend(label, layAnewEdits(take, laid, headers, fitting));
  }
}
