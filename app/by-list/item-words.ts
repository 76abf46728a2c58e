import {
  connectorAt,
  connectorOf,
  type LaidRibbon,
  type Note,
  type PlacedHeader,
  stripeAt,
} from '../../src/index.ts';
import { figure } from '../panels/figures.ts';
import { connectorWords } from '../store/seat-words.ts';
import type { Branch, Item, Tree } from './tree.ts';

/** What an item is called, and what the drawing shows of it, each fact in a few words. */
export interface ItemWords {
  readonly name: string;
  readonly facts: readonly string[];
  /** As much of it as has room in a line beside the name, and what is wrong. */
  readonly brief: string;
  readonly wrong: string;
}

type PlainWords = Pick<ItemWords, 'name' | 'facts'> & { readonly brief?: string };

const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

/** "1 damage, 2 faults"; nothing where nothing is wrong. */
function levelWords(notes: Iterable<Note>): string[] {
  let [damage, faults] = [0, 0];
  for (const { level } of notes) {
    if (level === 'damage') damage++;
    if (level === 'fault') faults++;
  }
  return [...(damage > 0 ? [`${damage} damage`] : []), ...(faults > 0 ? [count(faults, 'fault')] : [])];
}

/** "shore header"; "Header 3" of those on boards, which have numbers. */
const headerName = ({ name }: PlacedHeader): string =>
  /^\d/.test(name) ? `Header ${name}` : `${name} header`;

/** "S1, connector 2": what sits on a header. */
function takenBy(tree: Tree, header: PlacedHeader): string {
  const joints = tree.derived.wiring.seatedOn.get(header) ?? [];
  if (joints.length === 0) return 'free';
  return `taken by ${joints.map(({ ribbon, connector }) => `${ribbon.name} connector ${connector + 1}`).join(' and ')}`;
}

function headerFacts(tree: Tree, header: PlacedHeader): string[] {
  const { owner, bus, role, xMm, yMm, axis, pin1 } = header;
  const from = owner.type === 'module' ? owner.leftMm : owner.board.xMm;
  const edge = owner.type === 'module' ? 'from the left' : 'from the left end of the board';
  return [
    ...(role ? [role] : []),
    ...(bus.bus.name.toLowerCase() === header.name.toLowerCase() ? [] : [bus.bus.name]),
    takenBy(tree, header),
    `centre ${figure(xMm - from, 1)} mm ${edge} and ${figure(yMm, 1)} mm up, seen from the front`,
    ...(axis === 'horizontal' ? ['lies on its side'] : []),
    pin1 ? `pin 1 ${pin1}` : 'pin 1 unknown',
    ...(header.keyed ? ['keyed'] : []),
  ];
}

function ribbonFacts(ribbon: LaidRibbon): string[] {
  const { facts } = ribbon;
  const seated = ribbon.uses.filter((joints) => joints.length > 0).length;
  return [
    facts.kind.name,
    ...(facts.flat ? [`stripe ${stripeAt(ribbon, connectorAt(ribbon, 0))}`] : []),
    `${seated} of ${count(ribbon.uses.length, 'connector')} seated`,
    ...(ribbon.ribbon.locked ? ['locked'] : []),
  ];
}

const isUsed =
  ({ derived }: Tree) =>
  (header: PlacedHeader): boolean =>
    derived.wiring.seatedOn.has(header);

/** Damage and faults of an item and of all that lies in it. */
function notesWithin({ notesOf }: Tree, { id, children, item }: Branch): Set<Note> {
  const within = new Set(notesOf.get(id) ?? []);
  if (item.type === 'row' || item.type === 'supply' || item.type === 'ribbons')
    for (const child of children) for (const note of notesOf.get(child.id) ?? []) within.add(note);
  return within;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function plainWords(tree: Tree, item: Item, children: readonly Branch[]): PlainWords {
  const { derived } = tree;
  switch (item.type) {
    case 'row': {
      const { row, index } = item.row;
      const modules = children.filter((child) => child.item.type === 'module').length;
      return {
        name: row.name ?? `Row ${index + 1}`,
        facts: [`${figure(row.widthHp)} HP`, count(modules, 'module')],
      };
    }
    case 'module': {
      const { name, facts, module } = item.module;
      const at = `${figure(facts.kind.widthHp)} HP at ${figure(module.atHp)} HP from the left end seen from the front`;
      const pinned = module.pinned ? ['pinned'] : [];
      const brief = [`${figure(facts.kind.widthHp)} HP at ${figure(module.atHp)}`, ...pinned].join(', ');
      return { name, facts: [at, ...pinned], brief };
    }
    case 'header':
      return {
        name: headerName(item.header),
        facts: headerFacts(tree, item.header),
        brief: takenBy(tree, item.header).replace('taken by ', ''),
      };
    case 'ribbons':
      return { name: 'Ribbons and leads', facts: [String(derived.wiring.ribbons.length)], brief: '' };
    case 'ribbon':
      return { name: item.ribbon.name, facts: ribbonFacts(item.ribbon) };
    case 'connector': {
      const { ribbon, connector } = item;
      const words = connectorWords(derived, ribbon, connector).split(', ');
      const isPlug = connectorOf(ribbon, connector).type === 'plug';
      return { name: sentence(words[0] ?? ''), facts: [...(isPlug ? ['plug'] : []), ...words.slice(1)] };
    }
    case 'supply':
      return { name: item.supply.name, facts: ['supply', count(item.supply.boards.length, 'board')] };
    case 'board': {
      const { board, supply, headers, name, row } = item.board;
      const used = headers.filter(isUsed(tree)).length;
      const rowName = row.row.name ?? `Row ${row.index + 1}`;
      return {
        name,
        facts: [
          supply.name,
          `${used} of ${count(headers.length, 'header')} used`,
          `${rowName}, ${figure(board.xMm, 1)} mm from the left end seen from the front`,
        ],
        brief: `${used} of ${headers.length} used`,
      };
    }
    case 'note':
      return { name: item.note.headline, facts: [item.note.level], brief: '' };
    case 'take':
      return { name: 'The whole take', facts: [count(children.length, 'note')] };
    case 'reminders':
      return { name: 'Worth knowing', facts: [count(children.length, 'reminder')] };
    case 'put-away':
      return { name: 'Put away', facts: [count(children.length, 'note')] };
  }
}

/** An item in words: what the drawing shows of it. */
export function wordsOf(tree: Tree, branch: Branch): ItemWords {
  const { name, facts, brief } = plainWords(tree, branch.item, branch.children);
  const levels = levelWords(notesWithin(tree, branch));
  return {
    name,
    facts: [...facts, ...levels],
    brief: brief ?? facts.join(', '),
    wrong: levels.join(', '),
  };
}

/** All of it in one breath. */
export function sayItem(tree: Tree, branch: Branch): string {
  const { name, facts } = wordsOf(tree, branch);
  return [name, ...facts].join(', ');
}

/** An item with what it lies in, where its name alone does not tell: "shore header of Cobble 3". */
export function fullName(tree: Tree, branch: Branch): string {
  const { name } = wordsOf(tree, branch);
  const { item } = branch;
  if (item.type === 'header') return `${item.header.owner.name}, ${name}`;
  if (item.type === 'connector') return `${item.ribbon.name}, ${name.toLowerCase()}`;
  return name;
}
