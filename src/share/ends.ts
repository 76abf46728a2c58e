import type {
  Board,
  Bus,
  Kit,
  Module,
  ModuleKind,
  Ribbon,
  RibbonKind,
  Row,
  Seat,
  SeatedOn,
  Supply,
} from '../layout/layout.ts';
import { type Data, list, object } from './code-data.ts';
import { idIn } from './code-kit.ts';
import type { Coder } from './coder.ts';

interface End {
  readonly module: Module;
  readonly kind: ModuleKind;
  readonly row: number;
}

interface BoardEnd {
  readonly board: string;
  readonly header: string;
}

const SITS_ON = ['module', 'board', 'ribbon'] as const;

const keyOf = (...parts: readonly string[]): string => JSON.stringify(parts);

const wordOf = (on: SeatedOn): number => ('module' in on ? 0 : 'board' in on ? 1 : 2);

/**
 * What the ribbons of a take may sit on, and which of it is likely: flat ribbons go from module to module towards the
 * left as seen from the front, leads from one header of a board after the other to one module after the other.
 */
export class Ends {
  ribbons: readonly Pick<Ribbon, 'id' | 'kind'>[] = [];
  readonly #modules: readonly End[];
  readonly #moduleAt: ReadonlyMap<string, number>;
  readonly #boards: readonly Board[];
  readonly #boardEnds: readonly BoardEnd[];
  readonly #buses: ReadonlyMap<string, Bus>;
  readonly #kinds: ReadonlyMap<string, RibbonKind>;
  /** Headers that a seat is on already, by module. */
  readonly #taken = new Map<string, Set<string>>();
  readonly #suits = new Map<string, readonly string[]>();
  #boardNext = 0;
  readonly #moduleNext = new Map<string, number>();

  constructor(kit: Kit, rows: readonly Row[], supplies: readonly Supply[], modules: readonly Module[]) {
    const kinds = new Map(kit.modules.map((kind) => [kind.id, kind]));
    const rowAt = new Map(rows.map(({ id }, i) => [id, i]));
    this.#modules = modules.map((module) => ({
      module,
      kind: kinds.get(module.kind) as ModuleKind,
      row: rowAt.get(module.row) ?? 0,
    }));
    this.#moduleAt = new Map(modules.map(({ id }, i) => [id, i]));
    this.#boards = supplies.flatMap(({ boards }) => boards);
    this.#boardEnds = this.#boards.flatMap(({ id, headers }) =>
      headers.map((header) => ({ board: id, header: header.id })),
    );
    this.#buses = new Map(kit.buses.map((bus) => [bus.id, bus]));
    this.#kinds = new Map(kit.ribbons.map((kind) => [kind.id, kind]));
  }

  seatsOf(
    coder: Coder,
    seats: readonly Seat[] | undefined,
    ribbon: number,
    kind: RibbonKind,
    twin: readonly Seat[] | undefined,
  ): readonly Seat[] {
    return list(
      coder,
      seats,
      'seats',
      (one, soFar) => {
        const seat = this.#seat(coder, one, ribbon, kind, soFar, twin?.[soFar.length]);
        this.#take(seat.on);
        return seat;
      },
      `${kind.lay} ${kind.connectors.length}`,
      twin?.length,
    );
  }

  #take(on: SeatedOn): void {
    if (!('module' in on)) return;
    const taken = this.#taken.get(on.module);
    if (taken) taken.add(on.header);
    else this.#taken.set(on.module, new Set([on.header]));
  }

  #seat(
    coder: Coder,
    seat: Seat | undefined,
    ribbon: number,
    kind: RibbonKind,
    soFar: readonly Seat[],
    twin: Seat | undefined,
  ): Seat {
    const before = soFar.at(-1);
    const { lay } = kind;
    const same = twin && wordOf(twin.on);
    return object(coder, seat, 'seat', [
      {
        key: 'connector',
        code: (value: number | undefined) =>
          coder.scalar(value, 'number', `seat ${lay}`, {
            guesses: [(before?.connector ?? -1) + 1, twin?.connector],
            unique: true,
          }),
      },
      {
        key: 'on',
        code: (value: SeatedOn | undefined, { connector }: Data) => {
          const sort =
            SITS_ON[
              coder.place(
                value && wordOf(value),
                SITS_ON.length,
                'sits on',
                `${lay} ${soFar.length}`,
                before && wordOf(before.on),
                kind.bus,
                same,
              )
            ];
          if (sort === 'module')
            return this.#onModule(coder, value as never, kind, connector as number, before, twin);
          if (sort === 'board') return this.#onBoard(coder, value as never, twin);
          return this.#onRibbon(coder, value as never, ribbon, twin);
        },
      },
    ]);
  }

  /** Ids of headers of a kind of module that the connector would suit. */
  #suiting(module: ModuleKind, ribbon: RibbonKind, connector: number): readonly string[] {
    const ways = ribbon.connectors[connector]?.ways;
    const key = keyOf(module.id, ribbon.id, `${ways}`);
    const known = this.#suits.get(key);
    if (known) return known;
    const suits = module.headers.filter(({ bus }) =>
      ways === undefined ? bus === ribbon.bus : this.#buses.get(bus)?.pinout.length === ways,
    );
    const ids = suits.map(({ id }) => id);
    this.#suits.set(key, ids);
    return ids;
  }

  /** The first header of a module that the connector would suit; a free one where there is one. */
  #likely(
    { module, kind }: End,
    ribbon: RibbonKind,
    connector: number,
  ): { id: string | undefined; isFree: boolean } {
    const ids = this.#suiting(kind, ribbon, connector);
    const taken = this.#taken.get(module.id);
    const free = ids.find((id) => !taken?.has(id));
    return { id: free ?? ids[0], isFree: free !== undefined };
  }

  /** Places of modules, the likeliest first. */
  #order(coder: Coder, kind: RibbonKind, connector: number, before: Seat | undefined): number[] {
    coder.spend(Math.ceil(this.#modules.length / 4));
    const from =
      kind.lay === 'flat' && before && 'module' in before.on
        ? this.#modules[this.#moduleAt.get(before.on.module) ?? 0]
        : undefined;
    const start = this.#moduleNext.get(kind.lay) ?? 0;
    const all = this.#modules.length;
    const groups: { readonly i: number; readonly far: number }[][] = [[], [], [], []];
    this.#modules.forEach((end, i) => {
      const { isFree } = this.#likely(end, kind, connector);
      const left = from && from.row === end.row ? from.module.atHp - end.module.atHp : 0;
      const isAstray = from !== undefined && left <= 0;
      groups[(isFree ? 0 : 2) + (isAstray ? 1 : 0)]?.push({
        i,
        far: left > 0 ? left : (i - start + all) % all,
      });
    });
    return groups.flatMap((group) => group.sort((a, b) => a.far - b.far || a.i - b.i).map(({ i }) => i));
  }

  #onModule(
    coder: Coder,
    on: { readonly module: string; readonly header: string } | undefined,
    kind: RibbonKind,
    connector: number,
    before: Seat | undefined,
    twin: Seat | undefined,
  ): SeatedOn {
    const order = this.#order(coder, kind, connector, before);
    const same = twin && 'module' in twin.on ? twin.on.module : undefined;
    return object(coder, on, 'on module', [
      {
        key: 'module',
        code: (value: string | undefined) => {
          const at = value === undefined ? 0 : order.indexOf(this.#moduleAt.get(value) ?? -1);
          const isSame = same !== undefined && coder.flag(value === same, 'module as there');
          if (isSame) return same;
          const rank = coder.whole(at, 'which module', `${kind.lay} ${before ? 1 : 0}`);
          const id = this.#modules[order[rank] ?? -1]?.module.id;
          if (id === undefined) return coder.damaged();
          if (!before || kind.lay === 'loose') this.#moduleNext.set(kind.lay, (order[rank] as number) + 1);
          return id;
        },
      },
      {
        key: 'header',
        code: (value: string | undefined, { module }: Data) => {
          const end = this.#modules[this.#moduleAt.get(module as string) ?? -1];
          if (!end) return coder.damaged();
          const ids = end.kind.headers.map(({ id }) => id);
          const { id: likely } = this.#likely(end, kind, connector);
          return idIn(coder, value, ids, 'which header', [likely], kind.bus);
        },
      },
    ]);
  }

  #onBoard(coder: Coder, on: BoardEnd | undefined, twin: Seat | undefined): SeatedOn {
    const ends = this.#boardEnds;
    const same = twin && 'board' in twin.on ? twin.on : undefined;
    let found: BoardEnd | undefined;
    return object(coder, on, 'on board', [
      {
        key: 'board',
        code: (value: string | undefined) => {
          const isSame =
            same && coder.flag(value === same.board && on?.header === same.header, 'board as there');
          if (isSame) {
            found = same;
            return same.board;
          }
          const at = on
            ? ends.findIndex(({ board, header }) => board === on.board && header === on.header)
            : 0;
          coder.spend(Math.ceil(ends.length / 16));
          const ahead = coder.whole((at - this.#boardNext + ends.length) % ends.length, 'which board header');
          const place = (this.#boardNext + ahead) % ends.length;
          found = ends[place] ?? coder.damaged();
          this.#boardNext = (place + 1) % ends.length;
          return found.board;
        },
      },
      { key: 'header', code: () => found?.header },
    ]);
  }

  #onRibbon(
    coder: Coder,
    on: { readonly ribbon: string; readonly connector: number } | undefined,
    ribbon: number,
    twin: Seat | undefined,
  ): SeatedOn {
    const all = this.ribbons.length;
    const same = twin && 'ribbon' in twin.on ? twin.on : undefined;
    return object(coder, on, 'on ribbon', [
      {
        key: 'ribbon',
        code: (value: string | undefined) => {
          const at = value === undefined ? 0 : this.ribbons.findIndex(({ id }) => id === value);
          const back = coder.whole((ribbon - 1 - at + 2 * all) % all, 'which ribbon', same && 1);
          return this.ribbons[(ribbon - 1 - back + 2 * all) % all]?.id ?? coder.damaged();
        },
      },
      {
        key: 'connector',
        code: (value: number | undefined, { ribbon: id }: Data) =>
          coder.scalar(value, 'number', 'its connector', {
            guesses: [same?.connector],
            with: [
              this.#kinds.get(this.ribbons.find((other) => other.id === id)?.kind ?? '')?.connectors.length,
            ],
          }),
      },
    ]);
  }
}
