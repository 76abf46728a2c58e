import { estimate } from '../checks/load-words.ts';
import { pressingNotes } from '../checks/run.ts';
import { count, list, namesOf } from '../checks/words.ts';
import { powerOf } from '../electrical/power.ts';
import type { PlacedModule } from '../geometry/place.ts';
import type { Kit, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { compareTakes } from './compare.ts';

/** One thing that a proposal changes in a take, and why. */
export interface ProposalChange {
  readonly what: string;
  readonly why: string;
}

/** Both takes, worked out. */
interface Sides {
  readonly mine: WholeTake;
  readonly theirs: WholeTake;
}

const modulesOn = ({ uses }: LaidRibbon): PlacedModule[] => [
  ...new Set(
    uses.flatMap((joints) =>
      joints.flatMap(({ on, conducts }) =>
        conducts && on.type === 'header' && on.header.owner.type === 'module' ? [on.header.owner] : [],
      ),
    ),
  ),
];

/** Modules that a ribbon joins, or that a lead feeds. */
function reachedBy({ harnesses, supplyNet }: WholeTake, ribbon: LaidRibbon): PlacedModule[] {
  const modules = modulesOn(ribbon);
  const harness = harnesses.find(({ ribbons }) => ribbons.includes(ribbon));
  if (!harness || harness.boardSeats.length === 0) return modules;
  return [...new Set(modules.flatMap((module) => supplyNet.islandOf(module).modules))];
}

const isLinked = ({ places, wiring }: WholeTake, module: string, bus: string): boolean =>
  places.moduleById
    .get(module)
    ?.headers.some(
      (header) =>
        header.role === 'member' &&
        header.bus.bus.id === bus &&
        wiring.seatedOn.get(header)?.some(({ conducts }) => conducts) === true,
    ) === true;

const isFed = ({ places, supplyNet }: WholeTake, module: string): boolean => {
  const placed = places.moduleById.get(module);
  return placed !== undefined && supplyNet.islandOf(placed).feeds.length > 0;
};

/** The most that any module of an island loses of a voltage, mV. */
function worstOf(take: WholeTake, modules: readonly PlacedModule[]): number {
  let worst = 0;
  for (const power of powerOf(take).parts)
    for (const module of power.part.places.modules) {
      if (!modules.some(({ id }) => id === module.id)) continue;
      for (const [line] of module.facts.draws) {
        const voltage = take.kit.voltages.get(line);
        worst = Math.max(worst, (voltage && power.lossMv(module, voltage)) ?? 0);
      }
    }
  return worst;
}

/** Why a ribbon of mine is not in the proposal. */
function whyGone({ mine, theirs }: Sides, ribbon: LaidRibbon): string {
  const note = pressingNotes(mine).find(({ subjects }) =>
    subjects.some(({ type, id }) => type === 'ribbon' && id === ribbon.id),
  );
  if (note) return `because ${note.headline}`;
  const { kind } = ribbon.facts;
  const used = mine.take.ribbons.filter((each) => each.kind === kind.id).length;
  if (kind.owned !== undefined && used > kind.owned)
    return `${count(used - kind.owned, 'more')} of ${kind.name} would have to be bought`;
  const joined = reachedBy(mine, ribbon);
  const instead = theirs.wiring.ribbons.filter(
    (other) =>
      other.facts.bus === ribbon.facts.bus &&
      !mine.wiring.ribbons.some(({ id }) => id === other.id) &&
      reachedBy(theirs, other).some(({ id }) => joined.some((module) => module.id === id)),
  );
  if (instead.length === 0) return 'all is done without it';
  return `${namesOf(instead)} ${instead.length === 1 ? 'takes' : 'take'} its place`;
}

/** What a ribbon of the proposal is for, and what of it was not so in mine. */
function whyLaid({ mine, theirs }: Sides, ribbon: LaidRibbon): string {
  const harness = theirs.harnesses.find(({ ribbons }) => ribbons.includes(ribbon));
  const modules = modulesOn(ribbon);
  if (harness && harness.boardSeats.length > 0) {
    const all = reachedBy(theirs, ribbon);
    const dark = all.filter(({ id }) => !isFed(mine, id));
    const lossMv = worstOf(theirs, all);
    const before = worstOf(mine, all);
    const losing =
      dark.length === 0 && Math.abs(before - lossMv) > 0.05
        ? `${estimate(lossMv)} mV lost at most, ${estimate(before)} mV before`
        : `${estimate(lossMv)} mV lost at most`;
    const none = dark.length > 0 ? `; ${namesOf(dark)} had no power` : '';
    return `feeds ${namesOf(all)}, ${losing}${none}`;
  }
  const link = theirs.linkGroups.find(({ ribbons }) => ribbons.includes(ribbon))?.links[0];
  const hosts = link?.hosts.map(({ module }) => module) ?? [];
  const members = modules.filter((module) => !hosts.includes(module));
  const others = harness?.ribbons.filter((each) => each !== ribbon) ?? [];
  if (members.length === 0)
    return `joins ${namesOf(modules.length > 0 ? modules : hosts)} to ${namesOf(others)}`;
  const bus = ribbon.facts.bus.bus.id;
  const open = members.filter(({ id }) => !isLinked(mine, id, bus));
  const fresh = open.length > 0 ? `; ${namesOf(open)} ${open.length === 1 ? 'was' : 'were'} not linked` : '';
  return `links ${namesOf(members)} to ${namesOf(hosts)}${fresh}`;
}

/** Why a module stands elsewhere: for the host that it is linked to, or to make room. */
function whyMoved({ theirs }: Sides, module: PlacedModule): string {
  const links = theirs.linkGroups.flatMap((group) => group.links);
  const asMember = links.find(({ members }) => members.some(({ module: own }) => own === module));
  const host = asMember?.hosts[0]?.module;
  if (host)
    return host.row === module.row
      ? `stands where a ribbon joins it to ${host.name}`
      : `is joined to ${host.name}`;
  const asHost = links.find(({ hosts }) => hosts.some(({ module: own }) => own === module));
  if (asHost) return `stands beside ${list(asHost.members.map(({ module: own }) => own.name))}`;
  return 'makes room';
}

/**
 * What a proposal changes in the take that it is made of, and why: ribbons that go with the fault in which they take
 * part or what is in their place, ribbons that come with what they link or feed, modules with whom they stand by.
 */
export function proposalChanges(kit: Kit, take: Take, proposed: Take): readonly ProposalChange[] {
  const sides: Sides = { mine: deriveTake(kit, take), theirs: deriveTake(kit, proposed) };
  const whyOf = (sort: string, change: string, id: string): string | undefined => {
    if (sort === 'module') {
      const module = sides.theirs.places.moduleById.get(id);
      return module && whyMoved(sides, module);
    }
    const { wiring } = change === 'removed' ? sides.mine : sides.theirs;
    const ribbon = wiring.ribbons.find((each) => each.id === id);
    return ribbon && (change === 'removed' ? whyGone(sides, ribbon) : whyLaid(sides, ribbon));
  };
  return compareTakes({ kit, take }, { kit, take: proposed }).flatMap(({ sort, change, id, words }) => {
    const why = whyOf(sort, change, id);
    return why ? [{ what: words.replace(/\.$/, ''), why }] : [];
  });
}
