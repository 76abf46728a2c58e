import type { Layout, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { DerivedTake } from '../wiring/derived-take.ts';
import { applyEdit } from './apply.ts';
import { boardsOf } from './case-parts.ts';
import { ribbonName } from './change.ts';
import type { Edit } from './edit.ts';

/** What an edit would take along, or leave hanging, besides what it names: names as they stand on the sheet. */
export interface Loss {
  readonly modules: readonly string[];
  readonly boards: readonly string[];
  /** Ribbons that go, since nothing would hold them. */
  readonly pulledOut: readonly string[];
  /** Ribbons that stay and lose an end. */
  readonly unseated: readonly string[];
  /** Modules that stay, draw current, and would have no way to a supply any more. */
  readonly unfed: readonly string[];
}

interface Identified {
  readonly id: string;
}

const gone = <T extends Identified>(before: readonly T[], after: readonly T[]): readonly T[] => {
  const left = new Set(after.map(({ id }) => id));
  return before.filter(({ id }) => !left.has(id));
};

/** Ids of what the edit itself names to be removed: nobody needs to be told of that. */
function namedBy(edit: Edit): ReadonlySet<string> {
  if (edit.type === 'remove-modules') return new Set(edit.modules);
  if (edit.type === 'remove-ribbons') return new Set(edit.ribbons);
  if (edit.type === 'several') return new Set(edit.edits.flatMap((each) => [...namedBy(each)]));
  return new Set(edit.type === 'remove-board' ? [edit.board] : []);
}

const fedIn = ({ supplyNet }: DerivedTake): ReadonlySet<string> =>
  new Set(
    supplyNet.islands
      .filter(({ feeds }) => feeds.length > 0)
      .flatMap(({ modules }) => modules.map(({ id }) => id)),
  );

function unfedBetween(before: DerivedTake, after: DerivedTake): string[] {
  const was = fedIn(before);
  const is = fedIn(after);
  return after.places.modules
    .filter(({ id, facts }) => facts.draws.length > 0 && was.has(id) && !is.has(id))
    .map(({ name }) => name);
}

const seatsIn = (take: Take): ReadonlyMap<string, number> =>
  new Map(take.ribbons.map(({ id, seats }) => [id, seats.length]));

/** What an edit of a take would lose; nothing at all where it is refused. Islands are compared before and after. */
export function lossOf(layout: Layout, takeId: string, edit: Edit): Loss {
  const before = layout.takes.find(({ id }) => id === takeId);
  const done = applyEdit(layout, edit);
  const after = done.ok ? done.value.takes.find(({ id }) => id === takeId) : undefined;
  if (!before || !after || before === after)
    return { modules: [], boards: [], pulledOut: [], unseated: [], unfed: [] };
  const named = namedBy(edit);
  const isNews = ({ id }: Identified): boolean => !named.has(id);
  const derived = deriveTake(layout.kit, before);
  const seats = seatsIn(before);
  return {
    modules: gone(before.modules, after.modules)
      .filter(isNews)
      .map(({ id }) => derived.places.moduleById.get(id)?.name ?? id),
    boards: gone(boardsOf(before), boardsOf(after))
      .filter(isNews)
      .map(({ name }) => name),
    pulledOut: gone(before.ribbons, after.ribbons).filter(isNews).map(ribbonName),
    unseated: after.ribbons.filter(({ id, seats: now }) => now.length < (seats.get(id) ?? 0)).map(ribbonName),
    unfed: unfedBetween(derived, deriveTake(layout.kit, after)),
  };
}

/** More names than this are counted. */
const MOST_NAMED = 6;

function listed(names: readonly string[]): string {
  const rest = names.length - MOST_NAMED;
  return names.slice(0, MOST_NAMED).join(', ') + (rest > 0 ? ` and ${rest} more` : '');
}

const line = (names: readonly string[], one: string, many: string): string[] =>
  names.length === 0 ? [] : [`${names.length === 1 ? one : `${names.length} ${many}`}: ${listed(names)}`];

/** What would be lost, one line each; none where nothing would. */
export const lossWords = ({ modules, boards, pulledOut, unseated, unfed }: Loss): string[] => [
  ...line(modules, '1 module goes with it', 'modules go with it'),
  ...line(boards, '1 board goes with it', 'boards go with it'),
  ...line(pulledOut, '1 ribbon or lead is pulled out', 'ribbons and leads are pulled out'),
  ...line(unseated, '1 ribbon or lead loses an end', 'ribbons and leads lose an end'),
  ...line(unfed, '1 module would be left without power', 'modules would be left without power'),
];
