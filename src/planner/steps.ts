import type { PlacedHeader } from '../geometry/place.ts';
import { faceOf, typeOf } from '../layout/defaults.ts';
import type { RibbonFacts } from '../layout/kit-index.ts';
import { opensToPanel, type Spans } from '../wiring/fitting.ts';
import { fits, goesInReversed, isSocket } from '../wiring/landing.ts';

const sits = (facts: RibbonFacts, connector: number, header: PlacedHeader): boolean =>
  isSocket(facts, connector) &&
  fits(facts, connector, header) &&
  !goesInReversed(facts, connector, header) &&
  (!facts.flat || opensToPanel(facts, connector));

/** A number for each thing, the same for things that are the same. */
function numbered(things: readonly (string | number)[]): number[] {
  const known = new Map<string | number, number>();
  return things.map((thing) => {
    const number = known.get(thing) ?? known.size;
    known.set(thing, number);
    return number;
  });
}

/** Whether connectors may follow one another on two headers; of equal pieces of ribbon each is asked once. */
export class Steps {
  readonly #headers: readonly PlacedHeader[];
  readonly #spans: Spans;
  readonly #connectors: number;
  /** Of the ribbon between two connectors, mm, and a number for it. */
  readonly #lengths: readonly number[];
  readonly #lengthNumber: readonly number[];
  readonly #sits: readonly boolean[];
  /** By both headers, then by the number of the length: 0 is not asked yet, 1 no, 2 yes. */
  readonly #known: (Uint8Array | undefined)[];

  constructor(facts: RibbonFacts, headers: readonly PlacedHeader[], spans: Spans) {
    const { connectors, ways } = facts;
    this.#connectors = connectors.length;
    this.#headers = headers;
    this.#spans = spans;
    this.#lengths = connectors.flatMap(({ atMm: a }) => connectors.map(({ atMm: b }) => b - a));
    this.#lengthNumber = numbered(this.#lengths);
    // Most ribbons have connectors of one sort only.
    const sorts = numbered(
      connectors.map((each, c) => `${ways[c]} ${typeOf(each)} ${faceOf(each)} ${each.key}`),
    );
    this.#sits = headers.flatMap((header) => {
      const bySort: boolean[] = [];
      return sorts.map((sort, c) => {
        bySort[sort] ??= sits(facts, c, header);
        return bySort[sort];
      });
    });
    this.#known = new Array(headers.length ** 2).fill(undefined);
  }

  sits(connector: number, header: number): boolean {
    return this.#sits[header * this.#connectors + connector] as boolean;
  }

  may(a: number, i: number, b: number, j: number): boolean {
    const at = i * this.#headers.length + j;
    let known = this.#known[at];
    if (!known) {
      known = new Uint8Array(this.#lengths.length);
      this.#known[at] = known;
    }
    const piece = a * this.#connectors + b;
    const number = this.#lengthNumber[piece] as number;
    const told = known[number];
    if (told) return told === 2;
    const may = this.#spans(
      this.#lengths[piece] as number,
      this.#headers[i] as PlacedHeader,
      this.#headers[j] as PlacedHeader,
    );
    known[number] = may ? 2 : 1;
    return may;
  }
}
