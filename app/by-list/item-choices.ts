import {
  applyEdit,
  canRehearse,
  connectorAt,
  connectorOf,
  type Edit,
  fail,
  freshModuleId,
  isTaken,
  type Joint,
  type JointTarget,
  type LaidRibbon,
  type Mend,
  type Note,
  ok,
  orderOf,
  type PlacedHeader,
  type PlacedModule,
  type PlacedRow,
  type Result,
  seatRehearsed,
} from '../../src/index.ts';
import type { Action } from '../actions/action.ts';
import { duplicate } from '../actions/duplicate.ts';
import { feedAllThatNeed } from '../actions/feed-all.ts';
import { labelRibbon } from '../actions/label-ribbon.ts';
import { lockRibbons } from '../actions/lock-ribbons.ts';
import { bringToFront, sendToBack } from '../actions/order-ribbons.ts';
import { pin } from '../actions/pin.ts';
import { rehearseSeat } from '../actions/rehearse.ts';
import { remove } from '../actions/remove.ts';
import { removeParts } from '../actions/remove-part.ts';
import { selectJoined } from '../actions/select-joined.ts';
import { showCase } from '../actions/show-case.ts';
import { turnRibbon } from '../actions/turn-ribbon.ts';
import { selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { figure, parseHp } from '../panels/figures.ts';
import { ownSeat, placesFor, plugIn } from '../store/aim.ts';
import { focusNote } from '../store/focus-note.ts';
import { findMends } from '../store/mend-search.ts';
import { placeWords } from '../store/seat-words.ts';
import { selectionOf } from '../store/selection.ts';
import { listKeysOf } from '../tools/list-keys.ts';
import type { Choice, Page } from './choice.ts';
import { fullName, wordsOf } from './item-words.ts';
import {
  berthFor,
  feedChoice,
  flatWays,
  freeEndsFor,
  freeEndsPage,
  layPage,
  leadPage,
  seatChoice,
} from './lay-choices.ts';
import { goTo, treeNow } from './list-state.ts';
import { type Branch, connectorId, headerId, noteId, selectableOf, type Tree } from './tree.ts';

/** So many places that a connector could go to are offered, the nearest. */
const MOST_PLACES = 24;

/** So many notes are offered by name. */
const MOST_NOTES = 12;

const act = (editor: Editor, action: Action): Choice[] =>
  action.enabled(editor) ? [{ label: action.label(editor), deed: { type: 'action', action } }] : [];

const go = (editor: Editor, label: string, id: string, under = 'Go to'): Choice => ({
  label,
  under,
  deed: { type: 'do', run: () => goTo(editor, id) },
});

/** Damage and faults in which a thing has a part, wherever they stand in the list. */
function noteChoices(editor: Editor, tree: Tree, key: string): Choice[] {
  return (tree.notesOf.get(key) ?? [])
    .slice(0, MOST_NOTES)
    .map((note) => go(editor, note.headline, noteId(note), 'Notes'));
}

const rename = (label: string, value: string, edit: (text: string) => Edit): Choice => ({
  label: 'Label…',
  keysOf: labelRibbon,
  deed: {
    type: 'fields',
    fields: [{ name: 'label', label, value }],
    edit: ({ label: text = '' }) => ok(edit(text)),
    said: () => 'Labelled.',
  },
});

function moveFields(editor: Editor, { id, module, name }: PlacedModule): Choice {
  const take = shownTake(editor);
  const said = (): string => {
    const placed = shownAnalysis(editor).derived.places.moduleById.get(id);
    if (!placed) return '';
    const { row } = placed;
    return `${name} at ${figure(placed.module.atHp)} HP, ${row.row.name ?? `row ${row.index + 1}`}.`;
  };
  return {
    label: 'Move to…',
    deed: {
      type: 'fields',
      fields: [
        {
          name: 'hp',
          label: 'Place, HP from the left end seen from the front',
          value: figure(module.atHp),
          decimal: true,
        },
        {
          name: 'row',
          label: 'Row',
          value: module.row,
          options: take.rows.map((row, i) => ({ value: row.id, label: row.name ?? `Row ${i + 1}` })),
        },
      ],
      edit({ hp = '', row = module.row }): Result<Edit, string> {
        const atHp = parseHp(hp);
        if (atHp === null) return fail('A place on the rails must be a number.');
        return ok({ type: 'move-modules', take: take.id, moves: [{ module: id, row, atHp }] });
      },
      said,
    },
  };
}

const isFree = (editor: Editor, header: PlacedHeader): boolean =>
  !isTaken(shownAnalysis(editor).derived, { type: 'header', header });

function moduleChoices(editor: Editor, tree: Tree, module: PlacedModule): Choice[] {
  const take = shownTake(editor).id;
  const free = module.headers.filter((header) => isFree(editor, header));
  return [
    {
      label: 'Pick up and carry',
      byKeys: true,
      words: 'Arrow keys move it, Enter puts it down, Escape puts it back',
      ...(module.module.pinned && { off: `${module.name} is pinned` }),
      deed: { type: 'do', run: () => listKeysOf(editor).pickUp({ module: module.id }) },
    },
    { ...moveFields(editor, module), ...(module.module.pinned && { off: `${module.name} is pinned` }) },
    ...free.flatMap((header): Choice[] => [
      {
        label: `Wire its ${header.name} header…`,
        deed: {
          type: 'more',
          page: () => ({
            title: placeWords({ type: 'header', header }),
            choices: headerChoices(editor, header),
          }),
        },
      },
    ]),
    rename('Name', module.name, (label) => ({ type: 'rename-module', take, module: module.id, label })),
    ...[pin, selectJoined, duplicate, remove].flatMap((action) => act(editor, action)),
    ...act(editor, feedAllThatNeed),
    ...noteChoices(editor, tree, selectionKey('module', module.id)),
  ];
}

function headerChoices(editor: Editor, header: PlacedHeader): Choice[] {
  const { derived } = shownAnalysis(editor);
  const on: JointTarget = { type: 'header', header };
  const joints = derived.wiring.seatedOn.get(header) ?? [];
  if (joints.length > 0) {
    return joints.flatMap((joint): Choice[] => {
      const { ribbon, connector } = joint;
      return [
        liftChoice(editor, ribbon, connector, `Lift connector ${connector + 1} of ${ribbon.name}`),
        ...rehearseChoices(editor, [joint]),
        go(editor, `${ribbon.name}, connector ${connector + 1}`, connectorId(ribbon.id, connector)),
      ];
    });
  }
  const berth = berthFor(editor, on);
  if (!berth) return [];
  const feed = feedChoice(editor, header);
  const { owner, axis, id } = header;
  const toMeasure: Choice[] =
    owner.type === 'module' && axis === 'vertical'
      ? [
          {
            label: 'Make a ribbon to measure…',
            deed: {
              type: 'do',
              run: () =>
                editor.session.setState({
                  stockDesk: 'ribbons',
                  ribbonsWith: { headers: [{ module: owner.id, header: id }] },
                }),
            },
          },
        ]
      : [];
  const more = (label: string, page: () => Page): Choice => ({ label, deed: { type: 'more', page } });
  return [
    ...(feed ? [feed] : []),
    ...(flatWays(derived, berth).length > 0
      ? [more('Lay a ribbon from here…', () => layPage(editor, berth))]
      : []),
    more('Lead or link to…', () => leadPage(editor, berth)),
    ...(freeEndsFor(editor, on).length > 0
      ? [more('Seat a free connector on it…', () => freeEndsPage(editor, on))]
      : []),
    ...toMeasure,
  ];
}

/** A wrong plug tried at each seat that can have one. */
const rehearseChoices = (editor: Editor, joints: readonly Joint[]): Choice[] =>
  joints.filter(canRehearse).map(
    (joint): Choice => ({
      label: 'Rehearse a wrong plug…',
      words: 'What meets what, turned or displaced; nothing is changed',
      deed: { type: 'do', run: () => rehearseSeat(editor, joint) },
    }),
  );

function liftChoice(editor: Editor, ribbon: LaidRibbon, connector: number, label: string): Choice {
  return {
    label,
    ...(ribbon.ribbon.locked && { off: `${ribbon.name} is locked` }),
    deed: {
      type: 'edit',
      edit: { type: 'unseat', take: shownTake(editor).id, ribbon: ribbon.id, connector },
      said: () => `Connector ${connector + 1} of ${ribbon.name} is free.`,
    },
  };
}

function twistChoice(editor: Editor, ribbon: LaidRibbon, connector: number): Choice[] {
  const after = orderOf(ribbon, connector);
  if (!ribbon.facts.flat || after >= ribbon.uses.length - 1) return [];
  const next = connectorAt(ribbon, after + 1) + 1;
  const isTwisted = (ribbon.ribbon.twists?.[after] ?? 0) > 0;
  return [
    {
      label: isTwisted ? 'Take the twist out' : 'Half-twist after it',
      ...(ribbon.ribbon.locked && { off: `${ribbon.name} is locked` }),
      deed: {
        type: 'edit',
        edit: {
          type: 'twist-ribbon',
          take: shownTake(editor).id,
          ribbon: ribbon.id,
          after,
          halfTwists: isTwisted ? 0 : 1,
        },
        said: () =>
          `${ribbon.name} ${isTwisted ? 'lies straight' : 'is half-twisted'} between connectors ${connector + 1} and ${next}.`,
      },
    },
  ];
}

function connectorChoices(editor: Editor, ribbon: LaidRibbon, connector: number): Choice[] {
  const { derived } = shownAnalysis(editor);
  const plug = plugIn({ ribbon, connector });
  const own = ownSeat({ ribbon, connector });
  const off = ribbon.ribbon.locked ? { off: `${ribbon.name} is locked` } : {};
  const on: JointTarget = { type: 'connector', ribbon, connector };
  const places = placesFor(derived, { ribbon, connector }).filter((place) => place !== own);
  const choices: Choice[] = [];
  if (plug) {
    choices.push(
      liftChoice(editor, plug.ribbon, plug.connector, `Pull the plug of ${plug.ribbon.name} out`),
      go(
        editor,
        `${plug.ribbon.name}, connector ${plug.connector + 1}`,
        connectorId(plug.ribbon.id, plug.connector),
      ),
    );
  } else {
    choices.push({
      label: own ? 'Seat it elsewhere…' : 'Seat it…',
      ...(places.length === 0 && { off: 'nothing free fits it' }),
      ...off,
      deed: {
        type: 'more',
        page: () => ({
          title: `Seat connector ${connector + 1} of ${ribbon.name}`,
          choices: places
            .slice(0, MOST_PLACES)
            .map((place) => seatChoice(editor, placeWords(place), { ribbon: ribbon.id, connector }, place)),
          none: 'Nothing free fits it.',
        }),
      },
    });
    choices.push({
      label: 'Pick up and carry',
      byKeys: true,
      words: 'Arrow keys go from place to place, Enter puts it down, Escape puts it back',
      ...off,
      deed: { type: 'do', run: () => listKeysOf(editor).pickUp({ ribbon: ribbon.id, connector }) },
    });
  }
  if (own) {
    choices.push(liftChoice(editor, ribbon, connector, 'Lift it'));
    const id = own.type === 'header' ? headerId(own.header) : connectorId(own.ribbon.id, own.connector);
    choices.push(go(editor, placeWords(own), id));
  }
  choices.push(...rehearseChoices(editor, ribbon.uses[connector]?.slice(0, 1) ?? []));
  choices.push(...twistChoice(editor, ribbon, connector));
  const berth = own || plug ? undefined : berthFor(editor, on);
  if (berth) {
    const isSocket = connectorOf(ribbon, connector).type !== 'plug';
    if (isSocket && flatWays(derived, berth).length > 0)
      choices.push({
        label: 'Plug a ribbon into it…',
        deed: { type: 'more', page: () => layPage(editor, berth) },
      });
    if (isSocket && freeEndsFor(editor, on).length > 0)
      choices.push({
        label: 'Plug a free plug into it…',
        deed: { type: 'more', page: () => freeEndsPage(editor, on) },
      });
    if (isSocket)
      choices.push({
        label: 'Lead or link to…',
        deed: { type: 'more', page: () => leadPage(editor, berth) },
      });
  }
  choices.push(go(editor, ribbon.name, selectionKey('ribbon', ribbon.id)));
  return choices;
}

function exchangePage(editor: Editor, ribbon: LaidRibbon): Page {
  const { kit } = editor.layouts.layout();
  const { kind } = ribbon.facts;
  const others = kit.ribbons.filter(
    ({ id, bus, lay }) => id !== kind.id && bus === kind.bus && lay === kind.lay,
  );
  return {
    title: `Another kind for ${ribbon.name}`,
    choices: others.map(({ id, name }): Choice => {
      const edit = {
        type: 'exchange-ribbon',
        take: shownTake(editor).id,
        ribbon: ribbon.id,
        kind: id,
      } as const;
      const done = applyEdit(editor.layouts.layout(), edit);
      return {
        label: name,
        ...(!done.ok && { off: done.error.message }),
        deed: { type: 'edit', edit, said: () => `${ribbon.name} is now ${name}.` },
      };
    }),
    none: 'There is no other kind of its bus.',
  };
}

function ribbonChoices(editor: Editor, tree: Tree, ribbon: LaidRibbon): Choice[] {
  const off = ribbon.ribbon.locked ? { off: `${ribbon.name} is locked` } : {};
  const take = shownTake(editor).id;
  const { id, facts, name } = ribbon;
  return [
    ...(facts.flat
      ? [
          {
            label: 'Pick up and slide',
            byKeys: true,
            words: 'Left and right slide it, Enter puts it down, Escape puts it back',
            ...off,
            deed: { type: 'do', run: () => listKeysOf(editor).pickUp({ ribbon: id }) },
          } as const,
        ]
      : []),
    ...act(editor, turnRibbon),
    { label: 'Exchange its kind…', ...off, deed: { type: 'more', page: () => exchangePage(editor, ribbon) } },
    ...act(editor, lockRibbons),
    rename('Label of the ribbon', name, (label) => ({ type: 'label-ribbon', take, ribbon: id, label })),
    ...act(editor, selectJoined),
    ...act(editor, bringToFront),
    ...act(editor, sendToBack),
    ...act(editor, remove),
    ...noteChoices(editor, tree, selectionKey('ribbon', id)),
  ];
}

/** The first gap of a row that is wide enough, seen from the front; past the last module where there is none. */
export function firstGap(modules: readonly PlacedModule[], row: PlacedRow, widthHp: number): number {
  const there = modules
    .filter((module) => module.row === row)
    .map(({ module, facts }) => ({ from: module.atHp, to: module.atHp + facts.kind.widthHp }))
    .sort((a, b) => a.from - b.from);
  let end = 0;
  for (const { from, to } of there) {
    if (from - end >= widthHp) return end;
    end = Math.max(end, Math.ceil(to));
  }
  return end;
}

function placePage(editor: Editor, row: PlacedRow): Page {
  const take = shownTake(editor);
  const { places } = shownAnalysis(editor).derived;
  const rowName = row.row.name ?? `Row ${row.index + 1}`;
  return {
    title: `Place a module in ${rowName}`,
    choices: editor.layouts.layout().kit.modules.map(({ id, name, widthHp, owned }): Choice => {
      const atHp = firstGap(places.modules, row, widthHp);
      const placed = take.modules.filter(({ kind }) => kind === id).length;
      const fresh = freshModuleId(take, id);
      const said = (): string => {
        const module = shownAnalysis(editor).derived.places.moduleById.get(fresh);
        return module ? `${module.name} placed at ${figure(module.module.atHp)} HP.` : '';
      };
      return {
        label: name,
        words: `${figure(widthHp)} HP, would stand at ${figure(atHp)} HP; ${owned === undefined ? `${placed} placed` : `${placed} of ${owned} placed`}`,
        deed: {
          type: 'edit',
          edit: { type: 'place-module', take: take.id, kind: id, row: row.row.id, atHp },
          said,
          goTo: selectionKey('module', fresh),
        },
      };
    }),
    none: 'There is no kind of module in the stock.',
  };
}

const mendChoice = ({ label, edit, why }: Mend): Choice => ({
  label,
  under: 'Remedies',
  ...(why && { words: why }),
  deed: { type: 'edit', edit, said: () => `${label}: done.` },
});

function notePage(editor: Editor, tree: Tree, note: Note): Page {
  const { take, key, facts, headline, detail, remedy, level, accepted, subjects } = note;
  const seat = seatRehearsed(note, shownAnalysis(editor).derived);
  const subjectChoices = subjects.flatMap(({ type, id }) => {
    const branch = tree.byId.get(selectionKey(type, id));
    return branch ? [go(editor, wordsOf(tree, branch).name, branch.id)] : [];
  });
  const putAway: Choice[] =
    level === 'damage' || accepted
      ? []
      : [
          {
            label: 'Put the note away',
            deed: {
              type: 'edit',
              edit: { type: 'accept-finding', take, key, facts },
              said: () => `Put away: ${headline}.`,
            },
          },
        ];
  const bringBack: Choice[] = accepted
    ? [
        {
          label: 'Bring the note back',
          deed: {
            type: 'edit',
            edit: { type: 'bring-back', take, key },
            said: () => `Brought back: ${headline}.`,
          },
        },
      ]
    : [];
  return {
    title: headline,
    says: `${detail} ${remedy}`,
    choices: [
      {
        label: 'Show it on the drawing',
        deed: {
          type: 'do',
          run: () => {
            focusNote(editor, note);
            editor.session.setState({ spoken: detail });
          },
        },
      },
      ...putAway,
      ...bringBack,
      ...rehearseChoices(editor, seat ? [seat] : []),
      ...(note.check === 'unpowered' ? act(editor, feedAllThatNeed) : []),
      ...subjectChoices,
    ],
    later: (show) =>
      findMends(editor, shownAnalysis(editor).derived, note, (mends) => show(mends.map(mendChoice))),
    waiting: 'Looking for remedies …',
  };
}

/** Choices of a part of the case: its fields stand in the margin while it is selected. */
function caseChoices(editor: Editor, { item }: Branch): Choice[] {
  const removal =
    item.type === 'row'
      ? ({ type: 'row', part: item.row.row } as const)
      : item.type === 'board'
        ? ({ type: 'board', part: item.board.board } as const)
        : item.type === 'supply'
          ? ({ type: 'supply', part: item.supply } as const)
          : null;
  return [
    ...act(editor, feedAllThatNeed),
    ...act(editor, showCase),
    ...(removal
      ? [
          {
            label: 'Remove…',
            keysOf: remove,
            deed: { type: 'do', run: () => removeParts(editor, [removal]) },
          } as const,
        ]
      : []),
  ];
}

/** All that can be done with an item. */
export function choicesOf(editor: Editor, branch: Branch, others: ReadonlySet<string>): Page {
  const tree = treeNow(editor);
  const { item } = branch;
  const title = fullName(tree, branch);
  const page = (choices: readonly Choice[]): Page => ({
    title,
    choices: [...choices, ...selectToo(editor, branch, others)],
    none: 'There is nothing to do with it.',
  });
  switch (item.type) {
    case 'module':
      return page(moduleChoices(editor, tree, item.module));
    case 'header':
      return page([
        ...headerChoices(editor, item.header),
        go(editor, item.header.owner.name, selectionKey(item.header.owner.type, item.header.owner.id)),
      ]);
    case 'ribbon':
      return page(ribbonChoices(editor, tree, item.ribbon));
    case 'connector':
      return page(connectorChoices(editor, item.ribbon, item.connector));
    case 'row':
      return page([
        {
          label: 'Place a module here…',
          deed: { type: 'more', page: () => placePage(editor, item.row) },
        },
        ...caseChoices(editor, branch),
      ]);
    case 'note':
      return notePage(editor, tree, item.note);
    default:
      return page(caseChoices(editor, branch));
  }
}

/** For hands without a Ctrl key: takes the item to what was selected before. */
function selectToo(editor: Editor, branch: Branch, others: ReadonlySet<string>): Choice[] {
  const thing = selectableOf(branch);
  if (!thing || others.size === 0) return [];
  const key = selectionKey(thing.type, thing.id);
  const before = [...others].filter((other) => other !== key) as (typeof key)[];
  if (before.length === 0) return [];
  return [
    {
      label: `Select it with the ${before.length === 1 ? 'one' : before.length} before`,
      deed: {
        type: 'do',
        run: () =>
          editor.session.setState({
            selection: new Set([...before, ...selectionOf(thing.type, [thing.id])]),
          }),
      },
    },
  ];
}
