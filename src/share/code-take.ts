import type {
  Acceptance,
  Board,
  BoardHeader,
  Kit,
  Layout,
  Module,
  Ribbon,
  RibbonKind,
  Row,
  Supply,
  Take,
} from '../layout/layout.ts';
import { type Data, type Field, list, object, twins } from './code-data.ts';
import { AXES, byVoltage, ENDS, idIn, measure, oneOf } from './code-kit.ts';
import type { Coder } from './coder.ts';
import { Ends } from './ends.ts';
import { idOf, nameOf, next } from './series.ts';

/* A take, noun by noun; as with the kit, all of it is part of the form of links. The take before is its model. */

const STRIPES = ['up', 'down'] as const;

const byId = <T extends { readonly id: string }>(things: readonly T[]): ReadonlyMap<string, T> =>
  new Map(things.map((thing) => [thing.id, thing]));

const idsOf = (things: readonly { readonly id: string }[]): string[] => things.map(({ id }) => id);

const text = (
  coder: Coder,
  key: string,
  noun: string,
  guesses: readonly (string | undefined)[],
  unique?: true,
): Field => ({
  key,
  code: (value: string | undefined) =>
    coder.scalar(value, 'text', `${noun}.${key}`, { guesses, like: guesses, ...(unique && { unique }) }),
});

const maybe = (field: Field): Field => ({ ...field, optional: true });

const needed = ({ key, code }: Field): Field => ({ key, code });

/** An id that is mostly made of the name told before it. */
const ownId = (coder: Coder, noun: string, before: string | undefined, twin: string | undefined): Field => ({
  key: 'id',
  code: (id: string | undefined, { name }: Data) => {
    const made = idOf(name as string | undefined);
    return coder.scalar(id, 'text', `${noun}.id`, {
      unique: true,
      guesses: [made, next(before), twin, noun],
      like: [made, before],
    });
  },
});

function codeTake(coder: Coder, take: Take | undefined, kit: Kit, soFar: readonly Take[]): Take {
  const model = soFar.at(-1);
  let rows: readonly Row[] = [];
  let supplies: readonly Supply[] = [];
  let modules: readonly Module[] = [];
  return object(coder, take, 'take', [
    text(coder, 'name', 'take', [next(model?.name)], true),
    ownId(coder, 'take', model?.id, undefined),
    {
      key: 'rows',
      code(value: Take['rows'] | undefined) {
        rows = twins(coder, value, 'rows', model?.rows, (one, twin, others) =>
          codeRow(coder, one, twin, others),
        );
        return rows;
      },
    },
    {
      key: 'supplies',
      code(value: Take['supplies'] | undefined) {
        supplies = twins(coder, value, 'supplies', model?.supplies, (one, twin, others) =>
          codeSupply(coder, one, twin, others, kit, idsOf(rows)),
        );
        return supplies;
      },
    },
    {
      key: 'modules',
      code(value: Take['modules'] | undefined) {
        modules = codeModules(coder, value, model?.modules, kit, rows);
        return modules;
      },
    },
    {
      key: 'ribbons',
      code: (value: Take['ribbons'] | undefined) =>
        codeRibbons(coder, value, model?.ribbons, kit, new Ends(kit, rows, supplies, modules)),
    },
    {
      key: 'accepted',
      optional: true,
      code: (value: Take['accepted'] | undefined) => codeAccepted(coder, value, model?.accepted),
    },
    { key: 'built', optional: true, code: (value: Take['built']) => object(coder, value, 'built', []) },
  ]);
}

const codeRow = (coder: Coder, row: Row | undefined, twin: Row | undefined, soFar: readonly Row[]): Row => {
  const before = soFar.at(-1);
  const same = twin ?? before;
  return object(coder, row, 'row', [
    maybe(text(coder, 'name', 'row', [next(before?.name), twin?.name])),
    ownId(coder, 'row', before?.id, twin?.id),
    maybe(text(coder, 'case', 'row', [same?.case])),
    needed(measure(coder, 'widthHp', 'row', [same?.widthHp, 84, 104])),
    needed(measure(coder, 'heightU', 'row', [same?.heightU ?? 3])),
    needed(measure(coder, 'depthMm', 'row', [same?.depthMm])),
    measure(coder, 'gapMm', 'row', [same?.gapMm]),
  ]);
};

const codeSupply = (
  coder: Coder,
  supply: Supply | undefined,
  twin: Supply | undefined,
  soFar: readonly Supply[],
  kit: Kit,
  rows: readonly string[],
): Supply => {
  const before = soFar.at(-1);
  return object(coder, supply, 'supply', [
    text(coder, 'name', 'supply', [next(before?.name), twin?.name, 'Supply']),
    ownId(coder, 'supply', before?.id, twin?.id),
    {
      key: 'ratings',
      code: (value: Supply['ratings'] | undefined) => byVoltage(coder, value, kit.voltages, 'ratings'),
    },
    {
      key: 'boards',
      code: (value: Supply['boards'] | undefined) =>
        twins(coder, value, 'boards', twin?.boards, (one, other, boards) =>
          codeBoard(coder, one, other, boards.at(-1) ?? before?.boards.at(-1), kit, rows),
        ),
    },
  ]);
};

const codeBoard = (
  coder: Coder,
  board: Board | undefined,
  twin: Board | undefined,
  before: Board | undefined,
  kit: Kit,
  rows: readonly string[],
): Board => {
  const same = twin ?? before;
  return object(coder, board, 'board', [
    text(coder, 'name', 'board', [next(before?.name), twin?.name, 'Board', 'Board 1']),
    ownId(coder, 'board', before?.id, twin?.id),
    {
      key: 'row',
      code: (value: string | undefined) =>
        idIn(coder, value, rows, 'board.row', [
          twin?.row ?? rows[rows.indexOf(before?.row ?? '') + 1],
          before?.row,
        ]),
    },
    needed(measure(coder, 'xMm', 'board', [same?.xMm])),
    measure(coder, 'yMm', 'board', [same?.yMm]),
    measure(coder, 'widthMm', 'board', [same?.widthMm]),
    measure(coder, 'riseMm', 'board', [same?.riseMm]),
    {
      key: 'lead',
      optional: true,
      code: (value: Board['lead']) =>
        object(coder, value, 'board.lead', [
          needed(measure(coder, 'lengthMm', 'board.lead', [same?.lead?.lengthMm])),
          needed(measure(coder, 'awg', 'board.lead', [same?.lead?.awg, 18])),
        ]),
    },
    {
      key: 'headers',
      code: (value: Board['headers'] | undefined) =>
        twins(coder, value, 'board.headers', same?.headers, (one, other, headers) =>
          codeBoardHeader(coder, one, other, headers, idsOf(kit.buses)),
        ),
    },
    {
      key: 'limits',
      optional: true,
      code: (value: Board['limits']) => byVoltage(coder, value, kit.voltages, 'board.limits'),
    },
  ]);
};

const codeBoardHeader = (
  coder: Coder,
  header: BoardHeader | undefined,
  twin: BoardHeader | undefined,
  soFar: readonly BoardHeader[],
  buses: readonly string[],
): BoardHeader => {
  const i = soFar.length;
  const before = soFar.at(-1);
  const [first, second] = soFar;
  const pitch = (second?.dxMm ?? 0) - (first?.dxMm ?? 0);
  const onward = (before?.dxMm ?? 0) + (before?.dxMm ?? 0) - (soFar.at(-2)?.dxMm ?? 0);
  return object(coder, header, 'boardHeader', [
    {
      key: 'bus',
      code: (value: string | undefined) =>
        idIn(coder, value, buses, 'boardHeader.bus', [before?.bus, twin?.bus]),
    },
    text(coder, 'id', 'boardHeader', [before ? next(before.id) : '1', twin?.id]),
    measure(
      coder,
      'dxMm',
      'boardHeader',
      [Math.round(onward * 1000) / 1000, (first?.dxMm ?? 0) + i * pitch, twin?.dxMm],
      i,
    ),
    measure(coder, 'dyMm', 'boardHeader', [before?.dyMm, twin?.dyMm]),
    maybe({
      key: 'axis',
      code: (value: BoardHeader['axis']) => oneOf(coder, value, AXES, 'boardHeader.axis'),
    }),
    maybe({
      key: 'pin1',
      code: (value: BoardHeader['pin1'], { axis }: Data) =>
        oneOf(coder, value, ENDS, 'boardHeader.pin1', axis),
    }),
    maybe({ key: 'keyed', code: (value: boolean | undefined) => coder.flag(value, 'boardHeader.keyed') }),
  ]);
};

/** Modules stand side by side, most of them: the next one where the one before ends. */
function codeModules(
  coder: Coder,
  modules: readonly Module[] | undefined,
  others: readonly Module[] | undefined,
  kit: Kit,
  rows: readonly Row[],
): readonly Module[] {
  const kinds = byId(kit.modules);
  const kindIds = idsOf(kit.modules);
  const rowIds = idsOf(rows);
  const lastOfKind = new Map<string, Module>();
  const lastInRow = new Map<string, Module>();
  const endOf = (module: Module | undefined): number =>
    module ? module.atHp + (kinds.get(module.kind)?.widthHp ?? 0) : 0;

  return twins(coder, modules, 'modules', others, (one, twin, soFar) => {
    const before = soFar.at(-1);
    const kindField: Field = {
      key: 'kind',
      code: (value: string | undefined) =>
        idIn(
          coder,
          value,
          kindIds,
          'module.kind',
          twin ? [twin.kind] : [before?.kind],
          before?.kind,
          twin ? 1 : 0,
        ),
    };
    const module = object<Module>(coder, one, 'module', [
      kindField,
      {
        key: 'row',
        code: (value: string | undefined) =>
          idIn(
            coder,
            value,
            rowIds,
            'module.row',
            [before?.row ?? rowIds[0], rowIds[rowIds.indexOf(before?.row ?? '') + 1], twin?.row],
            twin ? 1 : 0,
          ),
      },
      {
        key: 'atHp',
        code: (value: number | undefined, { row }: Data) => {
          const left = endOf(lastInRow.get(row as string));
          return coder.scalar(value, 'number', 'atHp', {
            guesses: [left, twin?.atHp],
            near: left,
            unique: true,
          });
        },
      },
      {
        key: 'id',
        code: (value: string | undefined, { kind }: Data) => {
          const last = lastOfKind.get(kind as string)?.id;
          return coder.scalar(value, 'text', 'module.id', {
            unique: true,
            guesses: twin
              ? [twin.id]
              : [last ? next(last) : `${kind}-1`, next(before?.id), kind as string, `${kind}-a`],
            like: [last ?? (kind as string), before?.id],
          });
        },
      },
      {
        key: 'label',
        optional: true,
        code: (value: string | undefined, { kind, id }: Data) => {
          const last = lastOfKind.get(kind as string)?.label;
          const name = kinds.get(kind as string)?.name;
          return coder.scalar(value, 'text', 'module.label', {
            unique: true,
            guesses:
              twin?.label === undefined
                ? [nameOf(id as string), next(last), name, `${name} 1`]
                : [twin.label],
            like: [last ?? name, before?.label],
          });
        },
      },
      {
        key: 'pinned',
        optional: true,
        code: (value: boolean | undefined) => coder.flag(value, 'module.pinned'),
      },
    ]);
    return placed(module);
  });

  function placed(module: Module): Module {
    lastOfKind.set(module.kind, module);
    lastInRow.set(module.row, module);
    return module;
  }
}

type Head = Omit<Ribbon, 'seats'>;

/** All ribbons without their seats, then the seats: one may sit on a ribbon that comes after it. */
function codeRibbons(
  coder: Coder,
  ribbons: readonly Ribbon[] | undefined,
  others: readonly Ribbon[] | undefined,
  kit: Kit,
  ends: Ends,
): readonly Ribbon[] {
  const kinds = byId(kit.ribbons);
  const kindIds = idsOf(kit.ribbons);
  const lastOfLay = new Map<string, Head>();
  const heads = twins<Head>(
    coder,
    ribbons?.map(({ seats: _, ...head }) => head),
    'ribbons',
    others?.map(({ seats: _, ...head }) => head),
    (one, twin, soFar) => {
      const before = soFar.at(-1);
      const head = codeHead(coder, one, twin, before, kindIds, (kind) => {
        const lay = sortOf(kinds.get(kind));
        return lastOfLay.get(lay);
      });
      lastOfLay.set(sortOf(kinds.get(head.kind)), head);
      return head;
    },
  );
  ends.ribbons = heads.map(({ id, kind }) => ({ id, kind }));
  const twinSeats = new Map(others?.map(({ id, seats }) => [id, seats]));
  return heads.map((head, i) => {
    const kind = kinds.get(head.kind) as RibbonKind;
    const seats = ends.seatsOf(coder, ribbons?.[i]?.seats, i, kind, twinSeats.get(head.id));
    return { ...head, seats };
  });
}

const sortOf = (kind: RibbonKind | undefined): string =>
  kind?.lay === 'loose' ? 'loose' : `flat ${kind?.bus}`;

const codeHead = (
  coder: Coder,
  ribbon: Head | undefined,
  twin: Head | undefined,
  before: Head | undefined,
  kindIds: readonly string[],
  lastLike: (kind: string) => Head | undefined,
): Head =>
  object(coder, ribbon, 'ribbon', [
    {
      key: 'kind',
      code: (value: string | undefined) =>
        idIn(
          coder,
          value,
          kindIds,
          'ribbon.kind',
          twin ? [twin.kind] : [before?.kind],
          before?.kind,
          twin ? 1 : 0,
        ),
    },
    {
      key: 'label',
      optional: true,
      code: (value: string | undefined, { kind }: Data) => {
        const last = lastLike(kind as string)?.label;
        return coder.scalar(value, 'text', 'ribbon.label', {
          unique: true,
          guesses: twin?.label === undefined ? [next(last ?? before?.label)] : [twin.label],
          like: [last, before?.label],
        });
      },
    },
    {
      key: 'id',
      code: (value: string | undefined, { kind, label }: Data) => {
        const last = lastLike(kind as string)?.id;
        return coder.scalar(value, 'text', 'ribbon.id', {
          unique: true,
          guesses: twin
            ? [twin.id]
            : [idOf(label as string | undefined), next(last), next(before?.id), `${kind}-1`],
          like: [idOf(label as string | undefined) ?? last, before?.id],
        });
      },
    },
    {
      key: 'locked',
      optional: true,
      code: (value: boolean | undefined) => coder.flag(value, 'ribbon.locked'),
    },
    {
      key: 'stripe',
      optional: true,
      code: (value: Ribbon['stripe']) => oneOf(coder, value, STRIPES, 'ribbon.stripe'),
    },
    {
      key: 'twists',
      optional: true,
      code: (value: Ribbon['twists']) =>
        list(coder, value, 'twists', (one, soFar) =>
          coder.scalar(one, 'number', 'twist', { guesses: [0, soFar.at(-1)] }),
        ),
    },
  ]);

function codeAccepted(
  coder: Coder,
  accepted: readonly Acceptance[] | undefined,
  model: readonly Acceptance[] | undefined,
): readonly Acceptance[] {
  return list(coder, accepted, 'accepted', (one, soFar) => {
    const before = soFar.at(-1);
    return object(coder, one, 'acceptance', [
      {
        key: 'key',
        code: (value: string | undefined) =>
          coder.scalar(value, 'text', 'acceptance.key', {
            guesses: [model?.[soFar.length]?.key],
            like: [before?.key ?? model?.[soFar.length]?.key],
          }),
      },
      maybe(text(coder, 'why', 'acceptance', [model?.[soFar.length]?.why])),
      maybe(text(coder, 'facts', 'acceptance', [model?.[soFar.length]?.facts])),
    ]);
  });
}

/** Anything but takes and kit that a layout says of itself. */
export const codeLayout = (
  coder: Coder,
  layout: Layout | undefined,
  codeKit: (coder: Coder, kit: Kit | undefined) => Kit,
): Layout => {
  let kit: Kit;
  return object(coder, layout, 'layout', [
    { key: 'format', code: (): Layout['format'] => 'ribbonwright' },
    {
      key: 'version',
      code: (value: number | undefined) =>
        coder.whole(value === undefined ? undefined : value - 1, 'version') + 1,
    },
    maybe(text(coder, 'id', 'layout', [])),
    maybe(text(coder, 'parent', 'layout', [])),
    text(coder, 'title', 'layout', []),
    maybe(text(coder, 'notes', 'layout', [])),
    {
      key: 'kit',
      code(value: Kit | undefined) {
        kit = codeKit(coder, value);
        return kit;
      },
    },
    {
      key: 'takes',
      code: (value: Layout['takes'] | undefined) =>
        list(coder, value, 'takes', (one, soFar) => codeTake(coder, one, kit, soFar)),
    },
  ]);
};
