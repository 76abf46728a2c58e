import {
  connectorAt,
  type DerivedTake,
  type LaidRibbon,
  type Note,
  type PlacedBoard,
  type PlacedHeader,
  type PlacedModule,
  type PlacedRow,
  type SubjectType,
  type Supply,
} from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';

/** Anything that stands in the list. */
export type Item =
  | { readonly type: 'row'; readonly row: PlacedRow }
  | { readonly type: 'module'; readonly module: PlacedModule }
  | { readonly type: 'header'; readonly header: PlacedHeader }
  | { readonly type: 'ribbons' }
  | { readonly type: 'ribbon'; readonly ribbon: LaidRibbon }
  | { readonly type: 'connector'; readonly ribbon: LaidRibbon; readonly connector: number }
  | { readonly type: 'supply'; readonly supply: Supply }
  | { readonly type: 'board'; readonly board: PlacedBoard }
  | { readonly type: 'note'; readonly note: Note }
  /** Notes that belong to no single thing, the reminders of one thing, and what was put away. */
  | { readonly type: 'take' | 'reminders' | 'put-away' };

/** An item in its place in the list. */
export interface Branch {
  /** The same as long as the thing is there, whatever else changes; what can be selected goes by its selection key. */
  readonly id: string;
  readonly item: Item;
  readonly parent: Branch | null;
  /** From 1. */
  readonly level: number;
  /** Among its siblings, from 0. */
  readonly place: number;
  readonly children: readonly Branch[];
}

/** A take as a list: rows with modules with headers, ribbons with connectors, supplies with boards with headers, each with its notes. */
export interface Tree {
  readonly derived: DerivedTake;
  readonly roots: readonly Branch[];
  readonly byId: ReadonlyMap<string, Branch>;
  /** Open damage and faults that name a thing, by its selection key. */
  readonly notesOf: ReadonlyMap<string, readonly Note[]>;
}

export const headerId = ({ id, owner }: PlacedHeader): string =>
  `header:${JSON.stringify([owner.type, owner.id, id])}`;

export const connectorId = (ribbon: string, connector: number): string =>
  `connector:${JSON.stringify([ribbon, connector])}`;

export const noteId = ({ key }: Pick<Note, 'key'>): string => `note:${key}`;

/** What is to stand in the list, before each has its place. */
interface Draft {
  readonly id: string;
  readonly item: Item;
  readonly children: Draft[];
}

const draft = (id: string, item: Item, children: Draft[] = []): Draft => ({ id, item, children });

const headerDrafts = ({ headers }: PlacedModule | PlacedBoard): Draft[] =>
  headers.map((header) => draft(headerId(header), { type: 'header', header }));

function rowDrafts({ places }: DerivedTake): Draft[] {
  const byRow = new Map<PlacedRow, PlacedModule[]>(places.rows.map((row) => [row, []]));
  for (const module of places.modules) byRow.get(module.row)?.push(module);
  return places.rows.map((row) => {
    const modules = (byRow.get(row) ?? []).sort((a, b) => a.leftMm - b.leftMm);
    return draft(
      selectionKey('row', row.row.id),
      { type: 'row', row },
      modules.map((module) =>
        draft(selectionKey('module', module.id), { type: 'module', module }, headerDrafts(module)),
      ),
    );
  });
}

function ribbonDrafts({ wiring }: DerivedTake): Draft[] {
  if (wiring.ribbons.length === 0) return [];
  const ribbons = wiring.ribbons.map((ribbon) => {
    const connectors = ribbon.uses.map((_, order) => {
      const connector = connectorAt(ribbon, order);
      return draft(connectorId(ribbon.id, connector), { type: 'connector', ribbon, connector });
    });
    return draft(selectionKey('ribbon', ribbon.id), { type: 'ribbon', ribbon }, connectors);
  });
  return [draft('ribbons', { type: 'ribbons' }, ribbons)];
}

function supplyDrafts({ take, places }: DerivedTake): Draft[] {
  return take.supplies.map((supply) => {
    const boards = places.boards.filter((board) => board.supply === supply);
    return draft(
      selectionKey('supply', supply.id),
      { type: 'supply', supply },
      boards.map((board) =>
        draft(selectionKey('board', board.id), { type: 'board', board }, headerDrafts(board)),
      ),
    );
  });
}

const noteDraft = (note: Note): Draft => draft(noteId(note), { type: 'note', note });

/** Puts each note, once, with the first of its subjects: damage and faults before all else, reminders in one group after it. */
function addNotes(drafts: Draft[], notes: readonly Note[]): void {
  const byId = new Map<string, Draft>();
  const collect = (all: readonly Draft[]): void => {
    for (const one of all) {
      byId.set(one.id, one);
      collect(one.children);
    }
  };
  collect(drafts);
  const pressing = new Map<Draft, Draft[]>();
  const reminders = new Map<Draft, Draft[]>();
  const take = draft('take', { type: 'take' });
  const putAway = draft('put-away', { type: 'put-away' });
  for (const note of notes) {
    if (note.accepted) {
      putAway.children.push(noteDraft(note));
      continue;
    }
    const home = note.subjects.flatMap(({ type, id }) => byId.get(selectionKey(type, id)) ?? [])[0] ?? take;
    const group = note.level === 'reminder' ? reminders : pressing;
    const there = group.get(home);
    if (there) there.push(noteDraft(note));
    else group.set(home, [noteDraft(note)]);
  }
  for (const [home, list] of pressing) home.children.unshift(...list);
  for (const [home, list] of reminders)
    home.children.push(draft(`reminders:${home.id}`, { type: 'reminders' }, list));
  for (const group of [take, putAway]) if (group.children.length > 0) drafts.push(group);
}

function place(
  drafts: readonly Draft[],
  parent: Branch | null,
  level: number,
  byId: Map<string, Branch>,
): Branch[] {
  return drafts.map(({ id, item, children }, at) => {
    const kept: Branch[] = [];
    const branch: Branch = { id, item, parent, level, place: at, children: kept };
    byId.set(id, branch);
    if (children.length > 0) kept.push(...place(children, branch, level + 1, byId));
    return branch;
  });
}

function notesByThing(notes: readonly Note[]): ReadonlyMap<string, readonly Note[]> {
  const byThing = new Map<string, Note[]>();
  for (const note of notes) {
    if (note.accepted || note.level === 'reminder') continue;
    for (const { type, id } of note.subjects) {
      const key = selectionKey(type, id);
      const there = byThing.get(key);
      if (there) there.push(note);
      else byThing.set(key, [note]);
    }
  }
  return byThing;
}

export function treeOf(derived: DerivedTake, notes: readonly Note[]): Tree {
  const drafts = [...rowDrafts(derived), ...ribbonDrafts(derived), ...supplyDrafts(derived)];
  addNotes(drafts, notes);
  const byId = new Map<string, Branch>();
  return { derived, roots: place(drafts, null, 1, byId), byId, notesOf: notesByThing(notes) };
}

/** What of an item can be selected: itself; of a header its module or board, of a connector its ribbon. */
export function selectableOf({ item }: Branch): { readonly type: SubjectType; readonly id: string } | null {
  switch (item.type) {
    case 'row':
      return { type: 'row', id: item.row.row.id };
    case 'module':
      return { type: 'module', id: item.module.id };
    case 'board':
      return { type: 'board', id: item.board.id };
    case 'ribbon':
    case 'connector':
      return { type: 'ribbon', id: item.ribbon.id };
    case 'header':
      return { type: item.header.owner.type, id: item.header.owner.id };
    default:
      return null;
  }
}
