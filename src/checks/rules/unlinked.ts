import type { PlacedHeader, PlacedModule } from '../../geometry/place.ts';
import type { BusFacts } from '../../layout/kit-index.ts';
import type { DerivedTake } from '../../wiring/derive.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { count, moduleSpot, moduleSubject, namesOf } from '../words.ts';

/** Buses that a placed module hosts. */
function hostedHere({ places }: DerivedTake): Set<BusFacts> {
  const hosted = new Set<BusFacts>();
  for (const { headers } of places.modules) {
    for (const { role, bus } of headers) if (role === 'host') hosted.add(bus);
  }
  return hosted;
}

/** Of several headers on one bus, one that is seated is enough. */
function isUnlinked(
  { headers }: PlacedModule,
  hosted: ReadonlySet<BusFacts>,
  { wiring }: DerivedTake,
): boolean {
  const isMember = ({ role, bus }: PlacedHeader): boolean => role === 'member' && hosted.has(bus);
  const isSeated = (header: PlacedHeader): boolean =>
    wiring.seatedOn.get(header)?.some((joint) => joint.conducts) === true;
  return headers.some(
    (header) =>
      isMember(header) &&
      !isSeated(header) &&
      !headers.some((other) => other.bus === header.bus && isMember(other) && isSeated(other)),
  );
}

export const about: About = {
  title: 'Modules that could be linked',
  why: 'Their host stands in the same case; perhaps a ribbon was forgotten.',
  source: 'common practice, no source',
};

export const unlinked: Check = {
  id: 'unlinked',
  level: 'reminder',
  *find(take: DerivedTake) {
    const hosted = hostedHere(take);
    const modules = take.places.modules.filter((module) => isUnlinked(module, hosted, take));
    if (modules.length === 0) return;
    yield {
      subjects: modules.map(moduleSubject),
      headline: `${count(modules.length, 'module')} not linked to a host`,
      detail: `${namesOf(modules)} could join one that stands here.`,
      remedy: 'Link them, or leave them on their own.',
      measure: { modules: modules.length },
      spots: modules.map(moduleSpot),
    };
  },
};

const linked = (...modules: string[]) =>
  example({
    modules: [
      ['a', 'collector', 10],
      ['b', 'voice', 5],
      ['c', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'stiff3', along(...modules))],
  });

export const examples: Examples = { good: () => linked('a', 'b', 'c'), bad: () => linked('a', 'b') };
