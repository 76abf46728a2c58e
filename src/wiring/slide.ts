import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import { resolve } from '../layout/kit-index.ts';
import type { DerivedTake } from './derived-take.ts';
import { atMmOf, type LaidRibbon } from './laid-ribbon.ts';
import { directionOf, type Lie } from './lie.ts';

/** Which header each connector comes to sit on, by connector. */
export type Landings = ReadonlyMap<number, PlacedHeader>;

/** A connector of the ribbon and the module's header that it was put on first. */
interface Seated {
  readonly connector: number;
  readonly header: PlacedHeader;
}

function seatedOnModules({ uses }: LaidRibbon): Seated[] {
  return uses.flatMap((joints, connector): Seated[] => {
    const joint = joints.find(({ on }) => on.type === 'header' && on.header.owner.type === 'module');
    return joint?.on.type === 'header' ? [{ connector, header: joint.on.header }] : [];
  });
}

/**
 * The line of headers that a ribbon could lie over together with one of them, from left to right: in that row and
 * height, of its bus and held by no other ribbon. Those that were asked for are in it whatever they are.
 */
function lineThrough(
  take: DerivedTake,
  ribbon: LaidRibbon,
  at: PlacedHeader,
  askedFor: readonly PlacedHeader[],
): PlacedHeader[] {
  const { seatToleranceMm, skewMm } = take.limits;
  const tolMm = ribbon.facts.bends ? skewMm : seatToleranceMm;
  return take.places.modules
    .flatMap(({ headers }) => headers)
    .filter(
      (header) =>
        header.row === at.row &&
        !exceeds(Math.abs(header.yMm - at.yMm), tolMm) &&
        (askedFor.includes(header) ||
          (header.bus === ribbon.facts.bus &&
            header.axis === 'vertical' &&
            (take.wiring.seatedOn.get(header) ?? []).every((joint) => joint.ribbon === ribbon))),
    )
    .sort((a, b) => a.xMm - b.xMm);
}

/** A ribbon that does not bend comes along as it lies: each connector takes the header that it then lies over. */
function landStiff(
  take: DerivedTake,
  { ribbon, originMm }: Lie,
  seated: readonly Seated[],
  alongMm: number,
  line: readonly PlacedHeader[],
): Landings {
  const landings = new Map<number, PlacedHeader>();
  const taken = new Set<PlacedHeader>();
  for (const { connector } of seated) {
    const xMm = originMm + alongMm + directionOf(ribbon) * atMmOf(ribbon, connector);
    const off = (header: PlacedHeader): number => Math.abs(header.xMm - xMm);
    const [header] = line
      .filter((one) => !taken.has(one) && !exceeds(off(one), take.limits.seatToleranceMm))
      .sort((a, b) => off(a) - off(b));
    if (!header) continue;
    taken.add(header);
    landings.set(connector, header);
  }
  return landings;
}

/** On a ribbon that bends each connector goes on as many headers as the others, however far that is. */
function landBending(
  seated: readonly Seated[],
  from: readonly PlacedHeader[],
  to: readonly PlacedHeader[],
  headers: number,
): Landings {
  const landings = new Map<number, PlacedHeader>();
  for (const { connector, header } of seated) {
    const at = from.indexOf(header);
    const landed = at < 0 ? undefined : to[at + headers];
    if (landed) landings.set(connector, landed);
  }
  return landings;
}

function landAll(take: DerivedTake, ribbon: LaidRibbon, lead: Seated, target: PlacedHeader): Landings {
  const seated = seatedOnModules(ribbon);
  const askedFor = [lead.header, target];
  const from = lineThrough(take, ribbon, lead.header, askedFor);
  const line = lineThrough(take, ribbon, target, askedFor);
  const others = seated.filter(({ connector }) => connector !== lead.connector);
  const free = line.filter((header) => header !== target);
  const lie = take.lies.get(ribbon);
  const landings =
    lie !== undefined
      ? landStiff(take, lie, others, target.xMm - leadMm(lie, lead), free)
      : landBending(others, from, line, line.indexOf(target) - from.indexOf(lead.header));
  return new Map([...landings, [lead.connector, target]]);
}

/** Where the lead lies: on its header, or where a connector that misses its header is. */
function leadMm({ ribbon, originMm, strays }: Lie, { connector, header }: Seated): number {
  const misses = strays.some(({ seat }) => seat.connector === connector);
  return misses ? originMm + directionOf(ribbon) * atMmOf(ribbon, connector) : header.xMm;
}

/** Where a flat ribbon lands when a seated connector is put on a header and all of it comes along. */
export function slideOnto(
  take: DerivedTake,
  ribbonId: string,
  connector: number,
  moduleId: string,
  headerId: string,
): Landings | undefined {
  const ribbon = resolve(take.wiring.ribbonById, ribbonId);
  const lead = seatedOnModules(ribbon).find((seated) => seated.connector === connector);
  const target = resolve(take.places.moduleById, moduleId).headers.find(({ id }) => id === headerId);
  if (!lead || !target || target === lead.header) return undefined;
  return landAll(take, ribbon, lead, target);
}

/**
 * Where a flat ribbon lands so many headers further on, rightward seen from the front; nothing where it does not
 * get so far. Headers are counted from the first connector that lands on one, so that a slide back ends where the
 * slide began.
 */
export function slideBy(take: DerivedTake, ribbonId: string, headers: number): Landings | undefined {
  const ribbon = resolve(take.wiring.ribbonById, ribbonId);
  const strays = take.lies.get(ribbon)?.strays ?? [];
  for (const lead of seatedOnModules(ribbon)) {
    if (strays.some(({ seat }) => seat.connector === lead.connector)) continue;
    const line = lineThrough(take, ribbon, lead.header, []);
    const at = line.indexOf(lead.header);
    if (at < 0) continue;
    const target = line[at + headers];
    return !target || headers === 0 ? undefined : landAll(take, ribbon, lead, target);
  }
  return undefined;
}
