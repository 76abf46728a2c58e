import type { PlacedHeader, PlacedModule } from '../../geometry/place.ts';
import type { BusFacts } from '../../layout/kit-index.ts';
import { remember } from '../../layout/remember.ts';
import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples, Found } from '../check.ts';
import { eachPart } from '../each-part.ts';
import { along, example, ribbon } from '../example.ts';
import { count, inDocumentOrder, moduleSubject, namesOf } from '../words.ts';

/** Buses that placed modules host. */
const hostedOf = eachPart(({ places }) => [
  ...new Set(
    places.modules.flatMap(({ headers }) =>
      headers.filter(({ role }) => role === 'host').map(({ bus }) => bus),
    ),
  ),
]);

/** Buses that a module could be a member of and on which none of its headers is seated: one is enough. */
export function freeBuses({ headers }: PlacedModule, { wiring }: DerivedTake): BusFacts[] {
  const members = headers.filter(({ role }) => role === 'member');
  const isSeated = (header: PlacedHeader): boolean =>
    wiring.seatedOn.get(header)?.some((joint) => joint.conducts) === true;
  const linked = new Set(members.filter(isSeated).map(({ bus }) => bus));
  return members.map(({ bus }) => bus).filter((bus) => !linked.has(bus));
}

const freeMembersOf = eachPart((part) =>
  part.places.modules.flatMap((module) =>
    freeBuses(module, part).map((bus) => ({ id: module.id, index: module.index, name: module.name, bus })),
  ),
);

type FreeMembers = ReturnType<typeof freeMembersOf>;

function tell(free: FreeMembers, hosted: ReadonlySet<BusFacts>): Found[] {
  const unlinked = new Map(free.filter(({ bus }) => hosted.has(bus)).map((member) => [member.id, member]));
  const modules = inDocumentOrder([...unlinked.values()]);
  if (modules.length === 0) return [];
  return [
    {
      subjects: modules.map(moduleSubject),
      headline: `${count(modules.length, 'module')} not linked to a host`,
      detail: `${namesOf(modules)} could join one that stands here.`,
      remedy: 'Link them, or leave them on their own.',
      measure: { modules: modules.length },
    },
  ];
}

const toldOf = remember((hosted: readonly BusFacts[]) =>
  remember((free: FreeMembers) => tell(free, new Set(hosted))),
);

export const about: About = {
  title: 'Modules that could be linked',
  why: 'Their host stands in the same case; perhaps a ribbon was forgotten.',
  source: 'common practice, no source',
};

export const unlinked: Check = {
  id: 'unlinked',
  level: 'reminder',
  whole: true,
  find: (take) => toldOf(hostedOf(take))(freeMembersOf(take)),
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
