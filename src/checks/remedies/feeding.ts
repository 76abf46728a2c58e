import type { PlacedBoard, PlacedModule } from '../../geometry/place.ts';
import { type FeedPlan, type PlannedFeed, planFeeds, type Unfed } from '../../wiring/feed-plan.ts';
import { isHeaderJoint, suppliesOf } from '../../wiring/harness.ts';
import type { Joint, LaidRibbon } from '../../wiring/laid-ribbon.ts';
import { lengthOf, type NoLead } from '../../wiring/lead.ts';
import type { Feed, Island } from '../../wiring/supply-net.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend, Note } from '../check.ts';
import { count, lineName, list, mm, namesOf, targetName } from '../words.ts';
import { modulesOf, pairOf, ribbonsOf } from './cause.ts';
import { headersUnder, otherKinds } from './lay-anew.ts';
import { lift } from './lift.ts';
import { nearness, withHeader } from './linking.ts';
import { boardHeaderName, leadEdit, leadName, otherLead } from './new-lead.ts';
import { freshNotes, notesOf, takeAfter } from './outcome.ts';
import { mend, type Remedy } from './remedy.ts';

/** "Lead 16-way, 150 mm, from Gull 1 to header 3 of Board 1". */
const leadWords = ({ module, lead }: PlannedFeed): string =>
  `${leadName(lead)}, from ${module.name} to ${boardHeaderName(lead.to)}`;

/** Why this module of an island, and this lead. */
function reasonOf({ island, module, lead, choices }: PlannedFeed): string {
  const way = `${mm(lead.neededMm)} are needed`;
  const { length } = island.modules;
  if (length === 1) return `${way.charAt(0).toUpperCase()}${way.slice(1)}.`;
  const only = choices === 1 ? 'its power header is the only free one' : 'the shortest lead among them';
  return `${module.name} takes it for all ${length}: ${only}; ${way}.`;
}

/** Why an island gets no lead, in words. */
function unfedWords({ island: { modules }, reason }: Unfed): string {
  const names = namesOf(modules);
  const has = modules.length === 1 ? 'has' : 'have';
  if (reason.why === 'no power header') return `${names} ${has} no power header`;
  if (reason.why === 'power headers in use') return `${names}: every power header is in use`;
  return `${names}: ${noLeadWords(reason)}`;
}

function noLeadWords({ why, wanted, lines = [] }: NoLead): string {
  if (why === 'no kind fits') return 'no lead of the kit fits the power header';
  if (why === 'no free header') return 'no free header on any board takes a lead that fits';
  if (why === 'a line is missing') return `no lead brings ${list(lines.map(lineName))}`;
  const { neededMm = 0, waysFrom = 0, waysTo = 0 } = wanted ?? {};
  return `no lead of the kit reaches: ${mm(neededMm)} needed, ${waysFrom}-way at the module, ${waysTo}-way at the board`;
}

const islandOf = (note: Note, take: WholeTake): Island | undefined => {
  const [module] = modulesOf(note, take);
  return module && take.supplyNet.islandOf(module);
};

/** One lead for the island. */
export const unpowered: Remedy = function* (note, take) {
  const island = islandOf(note, take);
  if (!island) return;
  yield* linkToFed(island, take, isHalfLead);
  for (const feed of planFeeds(take, [island]).feeds)
    yield mend(`Feed it by ${leadWords(feed)}`, [leadEdit(take, feed.lead)], reasonOf(feed));
  yield* linkToFed(island, take, (laid) => !isHalfLead(laid));
};

/** A lead that sits on a board and has an end left. */
const isHalfLead = (laid: LaidRibbon): boolean => {
  const [only, ...others] = headersUnder(laid);
  return !laid.facts.flat && only?.owner.type === 'board' && others.length === 0;
};

/** Ribbons to try for one header: the nearest. */
const MOST_JOINS = 2;

/** An island may take the end of a lead that hangs there, or join one that is fed by its link. */
function* linkToFed(
  { modules }: Island,
  take: WholeTake,
  isWanted: (laid: LaidRibbon) => boolean,
): Generator<Mend> {
  const free = modules
    .flatMap(({ headers }) => headers)
    .filter(({ bus }) => bus.carriesVoltage)
    .filter((header) => !take.wiring.seatedOn.has(header));
  for (const header of free) {
    const joins = take.wiring.ribbons
      .filter((laid) => laid.facts.bus === header.bus && isWanted(laid))
      .map((laid) => ({ laid, headers: headersUnder(laid) }))
      .map((join) => ({ ...join, awayMm: nearness(header, join.headers) }))
      .filter(({ laid, awayMm }) => awayMm <= lengthOf(laid.facts))
      .sort((a, b) => a.awayMm - b.awayMm);
    for (const { laid, headers } of joins.slice(0, MOST_JOINS))
      yield* withHeader(laid, headers, header, take);
  }
}

/** What feeding everything would do. */
export interface FeedAll {
  /** Absent where nothing can be fed. */
  readonly mend?: Mend;
  /** One sentence for each island that gets a lead. */
  readonly chosen: readonly string[];
  /** One for each that gets none. */
  readonly unfed: readonly string[];
}

const isSevere = ({ level }: Note): boolean => level !== 'reminder';

/** Feeds of a plan after which something would be wrong that was not before; by subjects that are of their islands. */
function troubled(take: WholeTake, { feeds }: FeedPlan): PlannedFeed[] {
  const after = takeAfter(
    take,
    feeds.map(({ lead }) => leadEdit(take, lead)),
  );
  const fresh = after ? freshNotes(notesOf(take), notesOf(after)).filter(isSevere) : [];
  if (fresh.length === 0) return [];
  const named = new Set(fresh.flatMap(({ subjects }) => subjects.map(({ type, id }) => `${type} ${id}`)));
  const concerns = ({ island, lead }: PlannedFeed): boolean =>
    island.modules.some(({ id }) => named.has(`module ${id}`)) || named.has(`board ${lead.to.owner.id}`);
  const concerned = feeds.filter(concerns);
  return concerned.length > 0 ? concerned : [...feeds];
}

/** Gives every island that draws something and has no lead exactly one, as far as that does no harm. */
export function feedAll(take: WholeTake): FeedAll {
  let plan = planFeeds(take);
  const left: PlannedFeed[] = [];
  for (let bad = troubled(take, plan); bad.length > 0 && plan.feeds.length > 0; bad = troubled(take, plan)) {
    left.push(...bad);
    const dropped = new Set(left.map(({ island }) => island));
    const islands = plan.feeds.map(({ island }) => island).filter((island) => !dropped.has(island));
    plan = { feeds: planFeeds(take, islands).feeds, unfed: plan.unfed };
  }
  const { feeds, unfed } = plan;
  const chosen = feeds.map((feed) => `${leadWords(feed)}. ${reasonOf(feed)}`);
  const words = [
    ...unfed.map((each) => `${unfedWords(each)}.`),
    ...left.map(
      ({ island }) => `${namesOf(island.modules)}: a lead alone would not bring all that is drawn.`,
    ),
  ];
  if (feeds.length === 0) return { chosen, unfed: words };
  const edits = feeds.map(({ lead }) => leadEdit(take, lead));
  const label = `Feed ${count(edits.length, 'group')} by ${count(edits.length, 'lead')}`;
  return { mend: mend(label, edits), chosen, unfed: words };
}

/** What a module draws in all, W: the largest is worth the shortest way. */
const drawOf = ({ facts }: PlacedModule, { kit }: WholeTake): number =>
  facts.draws.reduce(
    (sum, [voltage, ma]) => sum + (Math.abs(kit.voltages.get(voltage)?.volts ?? 0) * (ma ?? 0)) / 1000,
    0,
  );

/** Ribbon between a feed's seats, mm. */
const feedLengthMm = ({ harness }: Feed): number =>
  harness.ribbons.reduce(
    (sum, { facts }) => sum + (facts.connectors[facts.connectors.length - 1]?.atMm ?? 0),
    0,
  );

const fedModule = ({ seat }: Feed): PlacedModule => seat.on.header.owner as PlacedModule;

/** Feeds, the one to keep first: at the largest draw, then by the shortest lead. */
function bestFirst(feeds: readonly Feed[], take: WholeTake): Feed[] {
  return [...feeds].sort(
    (a, b) =>
      drawOf(fedModule(b), take) - drawOf(fedModule(a), take) ||
      feedLengthMm(a) - feedLengthMm(b) ||
      a.seat.order - b.seat.order,
  );
}

function keepReason(stays: Feed, feeds: readonly Feed[], take: WholeTake): string {
  const { name } = stays.seat.ribbon;
  const module = fedModule(stays);
  const others = feeds.filter((feed) => feed !== stays);
  const beyond = (measure: (feed: Feed) => number): boolean =>
    others.every((feed) => measure(stays) > measure(feed));
  if (beyond((feed) => drawOf(fedModule(feed), take)))
    return `${name} stays: ${module.name} draws most of those that are fed.`;
  if (beyond((feed) => -feedLengthMm(feed))) return `${name} stays, at ${module.name}: it is the shortest.`;
  return `${name} stays, at ${module.name}.`;
}

/** Leaves one feed; of leads on one module the shortest. */
export const doubleFeed: Remedy = function* (note, take) {
  const island = islandOf(note, take);
  if (!island) return;
  const [best, ...others] = bestFirst(island.feeds, take);
  if (!best) return;
  for (const stays of [best, ...others]) {
    const lifted = island.feeds.filter((feed) => feed !== stays).map(({ seat }) => seat);
    yield lift(take, lifted, keepReason(stays, island.feeds, take));
  }
};

/** Lifts what brings a second supply: its feeds into an island, or its boards' seats on a harness. */
export const joinedSupplies: Remedy = function* (note, take) {
  const supplies = note.subjects.flatMap(({ type, id }) =>
    type === 'supply' ? [take.take.supplies.findIndex((supply) => supply.id === id)] : [],
  );
  const islands = new Set(modulesOf(note, take).map((module) => take.supplyNet.islandOf(module)));
  const feeds = [...islands].flatMap((island) => island.feeds);
  const uses = (supply: number): number =>
    feeds.filter(({ harness }) => suppliesOf(harness).has(supply)).length;
  for (const stays of [...supplies].sort((a, b) => uses(b) - uses(a) || a - b)) {
    const why = `${take.take.supplies[stays]?.name} stays.`;
    const others = feeds.filter(({ harness }) => !suppliesOf(harness).has(stays));
    if (others.length > 0) {
      yield lift(
        take,
        others.map(({ seat }) => seat),
        why,
      );
    }
    const boards = take.harnesses
      .filter((harness) => supplies.every((supply) => suppliesOf(harness).has(supply)))
      .flatMap(({ boardSeats }) => boardSeats)
      .filter(({ on }) => (on.header.owner as PlacedBoard).supplyIndex !== stays);
    if (boards.length > 0) yield lift(take, boards, why);
  }
  yield* partLinks(islands, take);
};

/** Parts an island between its feeds: by the link's own seats. */
function* partLinks(islands: ReadonlySet<Island>, take: WholeTake): Generator<Mend> {
  for (const island of islands) {
    for (const { seat } of island.feeds) {
      const { owner } = seat.on.header;
      const links = take.wiring.joints.filter(
        (joint): joint is Joint =>
          joint.conducts &&
          isHeaderJoint(joint) &&
          joint.on.header.owner === owner &&
          joint.ribbon !== seat.ribbon,
      );
      for (const joint of links) yield lift(take, [joint], `${targetName(joint.on)} keeps its own lead.`);
    }
  }
}

/** A lead that brings everything in the place of one that does not. */
export const missingVoltage: Remedy = function* (note, take) {
  const island = islandOf(note, take);
  if (!island) return;
  const lines = [...new Set(island.modules.flatMap(({ facts }) => facts.needs))];
  for (const { seat } of island.feeds) yield* otherLead(take, seat.ribbon, lines);
  const leads = island.feeds.map(({ seat }) => seat);
  const bare = takeAfter(take, [
    { type: 'remove-ribbons', take: take.take.id, ribbons: leads.map(({ ribbon }) => ribbon.id) },
  ]);
  const [module] = island.modules;
  const now = bare && module && bare.supplyNet.islandOf(module);
  if (!now || leads.some(({ ribbon }) => ribbon.ribbon.locked)) return;
  const fed = island.feeds.map((feed) => fedModule(feed).id);
  for (const feed of planFeeds(bare, [now]).feeds) {
    if (fed.length === 1 && fed.includes(feed.module.id)) continue;
    const ids = leads.map(({ ribbon }) => ribbon.id);
    const label = `Take ${namesOf(leads.map(({ ribbon }) => ribbon))} out and feed it by ${leadWords(feed)}`;
    const out = { type: 'remove-ribbons', take: take.take.id, ribbons: ids } as const;
    yield mend(label, [out, leadEdit(bare, feed.lead)], reasonOf(feed));
  }
};

/** A longer lead, a nearer header; else out with it. */
export const leadShort: Remedy = function* (note, take) {
  const [laid] = ribbonsOf(note, take);
  const pair = pairOf(note, take);
  if (!laid || !pair) return;
  yield* otherKinds(take, laid, headersUnder(laid));
  yield* otherLead(take, laid);
  for (const seat of [pair.b, pair.a]) yield lift(take, [seat]);
};
