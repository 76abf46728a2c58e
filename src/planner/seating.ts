import { exceeds } from '../geometry/exceeds.ts';
import type { PlacedHeader } from '../geometry/place.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import type { StripeEdge } from '../layout/layout.ts';
import type { Landing } from '../wiring/landing.ts';
import { atMm, type Found, neatFromMm, neatMm, type Placing, type Room } from './placing.ts';

/** A placing, and how much ribbon lies between each seat and the next. */
interface Measured {
  readonly placing: Placing;
  readonly lengths: readonly number[];
}

const measured = (placing: Placing): Measured => {
  const { facts, seats } = placing;
  const lengths: number[] = [];
  for (let i = 1; i < seats.length; i++)
    lengths.push(
      atMm(facts, (seats[i] as Landing).connector) - atMm(facts, (seats[i - 1] as Landing).connector),
    );
  return { placing, lengths };
};

/** Whether no piece of ribbon of one is longer than of the other; of equal ones the neater beats the other. */
function beats(a: Measured, b: Measured): boolean {
  let isEqual = true;
  for (let i = 0; i < a.lengths.length; i++) {
    const difference = (a.lengths[i] as number) - (b.lengths[i] as number);
    if (difference > 1e-9) return false;
    if (difference < -1e-9) isEqual = false;
  }
  return !isEqual || neatMm(a.placing) <= neatMm(b.placing);
}

/** Of placings on the same headers those stay that no other beats. */
function addUnlessBeaten(list: Measured[], placing: Placing): void {
  const added = measured(placing);
  if (list.some((other) => beats(other, added))) return;
  let kept = 0;
  for (const other of list) if (!beats(added, other)) list[kept++] = other;
  list.length = kept;
  list.push(added);
}

/** What makes two placings of a kind alike, so that only those stay that no other beats. */
type Alike = 'headers' | 'headers in order' | 'seats';

/** A running choice of seats for one kind: headers and connectors are put on and taken off again. */
export class Seating {
  readonly #facts: RibbonFacts;
  readonly #lengthMm: number;
  readonly #alike: Alike;
  readonly #isShifted: boolean;
  readonly #room: Room;
  readonly #numberOf: ReadonlyMap<PlacedHeader, number>;
  readonly #found = new Map<number | string, Measured[]>();
  readonly #seats: Landing[] = [];
  #hosts = 0;
  #members = 0;
  #looked = 0;

  /** @param isShifted - seats begin at the first connector, and whoever keeps them moves the ribbon along */
  constructor(
    facts: RibbonFacts,
    headers: readonly PlacedHeader[],
    alike: Alike,
    room: Room,
    isShifted = false,
  ) {
    this.#facts = facts;
    this.#lengthMm = atMm(facts, facts.connectors.length - 1);
    this.#isShifted = isShifted;
    this.#alike = alike;
    this.#room = room;
    this.#numberOf = new Map(headers.map((header, i) => [header, i]));
  }

  get isFull(): boolean {
    return this.#looked >= this.#room.most;
  }

  get hasHost(): boolean {
    return this.#hosts > 0;
  }

  get seats(): readonly Landing[] {
    return this.#seats;
  }

  /** Whether a host and members may be on one ribbon. */
  admits({ owner, role, counts }: PlacedHeader): boolean {
    if (role === 'host' ? this.#hosts > 0 : exceeds(this.#members + counts, this.#room.members)) return false;
    for (const { header } of this.#seats) if (header.owner === owner) return false;
    return true;
  }

  put(connector: number, header: PlacedHeader): void {
    this.#seats.push({ connector, header });
    if (header.role === 'host') this.#hosts++;
    else this.#members += header.counts;
  }

  take(): void {
    const seat = this.#seats.pop();
    if (seat?.header.role === 'host') this.#hosts--;
    else this.#members -= seat?.header.counts ?? 0;
  }

  keep(stripe: StripeEdge | undefined): void {
    this.#looked++;
    if (!this.#room.hostless && !this.hasHost) return;
    const facts = this.#facts;
    const seats = this.#isShifted ? this.#shifted(stripe) : [...this.#seats];
    const placing: Placing = stripe ? { facts, stripe, seats } : { facts, seats };
    const key = this.#keyOf(stripe);
    const list = this.#found.get(key);
    if (list) addUnlessBeaten(list, placing);
    else this.#found.set(key, [measured(placing)]);
  }

  /** Seats on the connectors that let the least ribbon hang out of the row. */
  #shifted(stripe: StripeEdge | undefined): Landing[] {
    const facts = this.#facts;
    const [first] = this.#seats as [Landing];
    const spare = facts.connectors.length - 1 - (this.#seats[this.#seats.length - 1] as Landing).connector;
    const neat = (by: number): number => neatFromMm(facts, stripe, { connector: by, header: first.header });
    let best = 0;
    let least = neat(0);
    for (let by = 1; by <= spare && least > this.#lengthMm; by++)
      if (neat(by) < least - 1e-9) {
        best = by;
        least = neat(by);
      }
    return this.#seats.map(({ connector, header }) => ({ connector: connector + best, header }));
  }

  #keyOf(stripe: StripeEdge | undefined): number | string {
    if (this.#alike === 'headers' && this.#numberOf.size <= MOST_BITS) {
      let mask = 0;
      for (const { header } of this.#seats) mask += 2 ** (this.#numberOf.get(header) as number);
      return mask;
    }
    const on = this.#seats.map(({ header }) => this.#numberOf.get(header));
    if (this.#alike === 'headers') on.sort();
    const how = this.#alike === 'seats' ? this.#seats.map(({ connector }) => connector) : [];
    return `${on} ${how} ${this.#alike === 'seats' ? stripe : ''}`;
  }

  result(): Found {
    const placings: Placing[] = [];
    for (const list of this.#found.values()) for (const { placing } of list) placings.push(placing);
    return { placings, complete: !this.isFull };
  }
}

/** Headers that one number can tell apart. */
const MOST_BITS = 52;
