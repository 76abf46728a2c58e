import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { BusFacts } from '../layout/kit-index.ts';
import type { Kit, Ribbon, Take } from '../layout/layout.ts';
import { remember } from '../layout/remember.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { LaidRibbon } from '../wiring/laid-ribbon.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import type { Group } from './groups.ts';
import type { Placing } from './placing.ts';

/** A member header's module on a bus that has a host in the take; of several headers one is enough. */
export interface Wish {
  readonly module: PlacedModule;
  readonly bus: BusFacts;
}

/** What is to be wired. */
export interface Task {
  /** As it is now. */
  readonly take: Take;
  /** The take with nothing in it but what stays. */
  readonly base: WholeTake;
  readonly kept: readonly Ribbon[];
  /** Harnesses that stay; members may be joined to them. */
  readonly standing: readonly Group[];
  /** Not linked yet. */
  readonly wishes: readonly Wish[];
  /** Free headers of buses that have a host in the take, by bus. */
  readonly free: ReadonlyMap<BusFacts, readonly PlacedHeader[]>;
  /** Modules that draw and have no feed yet. */
  readonly unfed: readonly PlacedModule[];
  /** Modules through which what stays is fed. */
  readonly fed: ReadonlySet<PlacedModule>;
}

/** Locked ribbons, and those that they are plugged into. */
function keptOf({ ribbons }: Take): Ribbon[] {
  const kept = new Set(ribbons.filter(({ locked }) => locked).map(({ id }) => id));
  for (let before = -1; before !== kept.size; ) {
    before = kept.size;
    for (const { id, seats } of ribbons)
      for (const { on } of seats) if ('ribbon' in on && kept.has(id)) kept.add(on.ribbon);
  }
  return ribbons.filter(({ id }) => kept.has(id));
}

/** What follows from a take with the places of a task, worked out once. */
const derivedIn = remember(({ base }: Task) => remember((take: Take) => deriveTake(base.kit.kit, take)));

export const derivedOf = (task: Task, take: Take): WholeTake => derivedIn(task)(take);

/** Wishes that a take leaves unlinked. */
export const openWishes = ({ wishes }: Task, { places, wiring }: WholeTake): Wish[] =>
  wishes.filter(
    ({ module, bus }) =>
      places.moduleById
        .get(module.id)
        ?.headers.some(
          (header) =>
            header.role === 'member' &&
            header.bus === bus &&
            wiring.seatedOn.get(header)?.some(({ conducts }) => conducts) === true,
        ) !== true,
  );

function standingGroup(ribbons: readonly LaidRibbon[]): Group {
  const placings = ribbons.map(({ id, facts, ribbon, uses }): Placing => {
    const seats = uses.flatMap((joints) =>
      joints.flatMap(({ conducts, connector, on }) =>
        conducts && on.type === 'header' ? [{ connector, header: on.header }] : [],
      ),
    );
    return { facts, seats, kept: id, ...(facts.flat && { stripe: ribbon.stripe ?? 'down' }) };
  });
  const joints = ribbons.flatMap((own, plug) =>
    own.uses.flatMap((uses) =>
      uses.flatMap(({ ribbon, connector, conducts, on }) =>
        conducts && on.type === 'connector' && ribbon === own
          ? [
              {
                plug,
                plugConnector: connector,
                socket: ribbons.indexOf(on.ribbon),
                socketConnector: on.connector,
              },
            ]
          : [],
      ),
    ),
  );
  return { placings, joints };
}

export function taskOf(kit: Kit, take: Take): Task {
  const kept = keptOf(take);
  const { accepted: _, built: __, ...rest } = take;
  const base = deriveTake(kit, { ...rest, ribbons: kept });
  const { modules } = base.places;
  const headers = modules.flatMap((module) => module.headers);
  const hosted = new Set(headers.filter(({ role }) => role === 'host').map(({ bus }) => bus));
  const isTaken = (header: PlacedHeader): boolean => base.wiring.seatedOn.has(header);
  const linked = new Set(
    headers
      .filter((header) => base.wiring.seatedOn.get(header)?.some(({ conducts }) => conducts) === true)
      .filter(({ role }) => role === 'member')
      .map(({ owner, bus }) => `${owner.id} ${bus.bus.id}`),
  );
  const wishes = modules.flatMap((module) =>
    [...new Set(module.headers.filter(({ role }) => role === 'member').map(({ bus }) => bus))]
      .filter((bus) => hosted.has(bus) && !linked.has(`${module.id} ${bus.bus.id}`))
      .map((bus): Wish => ({ module, bus })),
  );
  const islands = base.supplyNet.islands;
  return {
    take,
    base,
    kept,
    standing: base.harnesses
      .filter(({ boardSeats, moduleSeats }) => boardSeats.length === 0 && moduleSeats.length > 0)
      .map(({ ribbons }) => standingGroup(ribbons)),
    wishes,
    free: new Map(
      [...hosted].map((bus) => [
        bus,
        headers.filter(
          (header) =>
            header.bus === bus &&
            !isTaken(header) &&
            (header.role === 'host' || !linked.has(`${header.owner.id} ${bus.bus.id}`)),
        ),
      ]),
    ),
    unfed: islands
      .filter(({ feeds }) => feeds.length === 0)
      .flatMap(({ modules: own }) => own)
      .filter(({ facts }) => facts.draws.length > 0),
    fed: new Set(islands.filter(({ feeds }) => feeds.length > 0).flatMap(({ modules: own }) => own)),
  };
}
