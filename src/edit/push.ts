import type { Kit, Module, Take } from '../layout/layout.ts';
import { kindOf, mapKept, NOISE_HP, withField } from './change.ts';

/** +1 is to the right, seen from the front. */
type Side = 1 | -1;

/** What stands in a row. Places are left edges, HP. */
interface Piece {
  leftHp: number;
  readonly widthHp: number;
  /** Where its middle lay before anything was pushed: tells its side and its turn. */
  readonly middleHp: number;
  /** Gives way to nothing: pinned, or moved itself. */
  readonly fixed: boolean;
}

interface Neighbour extends Piece {
  readonly module: Module;
}

/** A moved module, or several that have no room for their neighbours between them. */
interface Block extends Piece {
  /** Where a neighbour goes that lies right under its middle. */
  readonly evenly: Side;
}

const nearEdge = (piece: Piece, side: Side): number =>
  side === 1 ? piece.leftHp : piece.leftHp + piece.widthHp;
const farEdge = (piece: Piece, side: Side): number => nearEdge(piece, side === 1 ? -1 : 1);

const reaches = (placeHp: number, edgeHp: number, side: Side): boolean =>
  side * (placeHp - edgeHp) >= -NOISE_HP;

const isBeyond = (piece: Piece, edgeHp: number, side: Side): boolean =>
  reaches(nearEdge(piece, side), edgeHp, side);

function sideOf(block: Block, piece: Piece): Side {
  const offset = piece.middleHp - block.middleHp;
  if (Math.abs(offset) <= NOISE_HP) return block.evenly;
  return offset > 0 ? 1 : -1;
}

/** The nearest place beyond an edge that keeps a piece on whole HP if it was, else on halves. */
function placeBeyond(edgeHp: number, piece: Piece, side: Side): number {
  const steps = Number.isInteger(piece.leftHp) ? 1 : 2;
  const closest = side === 1 ? edgeHp : edgeHp - piece.widthHp;
  return (side * Math.ceil((side * closest - NOISE_HP) * steps)) / steps + 0;
}

type Shove = readonly [piece: Piece, leftHp: number];

/** Where the pieces of a queue go so that all lie beyond an edge; undefined where something keeps them from it. */
function shove(
  queue: readonly Piece[],
  edgeHp: number,
  side: Side,
  endHp: number,
): readonly Shove[] | undefined {
  const shoves: Shove[] = [];
  let edge = edgeHp;
  for (const piece of queue) {
    if (piece.fixed || isBeyond(piece, edge, side)) break;
    const leftHp = placeBeyond(edge, piece, side);
    shoves.push([piece, leftHp]);
    edge = farEdge({ ...piece, leftHp }, side);
  }
  // Pieces that overlap already can begin before one that comes ahead of them: the next is not always the nearest.
  const isFree = queue.slice(shoves.length).every((piece) => isBeyond(piece, edge, side));
  return isFree && reaches(endHp, edge, side) ? shoves : undefined;
}

/** Pushes whatever lies on one side of a block clear of it, as far as it can give way. */
function clearSide(block: Block, others: readonly Piece[], side: Side, endHp: number): void {
  const edgeHp = farEdge(block, side);
  const queue = others
    .filter((piece) => sideOf(block, piece) === side)
    .sort((a, b) => side * (a.middleHp - b.middleHp));
  queue.forEach((piece, i) => {
    if (piece.fixed || isBeyond(piece, edgeHp, side)) return;
    for (const [shoved, leftHp] of shove(queue.slice(i), edgeHp, side, endHp) ?? []) shoved.leftHp = leftHp;
  });
}

function join(a: Block, b: Block): Block {
  const leftHp = Math.min(a.leftHp, b.leftHp);
  const widthHp = Math.max(farEdge(a, 1), farEdge(b, 1)) - leftHp;
  return { leftHp, widthHp, middleHp: leftHp + widthHp / 2, fixed: true, evenly: a.evenly };
}

/** Makes one block of those that touch; from left to right. */
function joinTouching(blocks: readonly Block[]): readonly Block[] {
  const joined: Block[] = [];
  for (const block of [...blocks].sort((a, b) => a.leftHp - b.leftHp)) {
    const last = joined.at(-1);
    if (last && reaches(farEdge(last, 1), block.leftHp, 1)) joined.splice(-1, 1, join(last, block));
    else joined.push(block);
  }
  return joined;
}

const isCaught = (piece: Piece, left: Block, right: Block): boolean =>
  !isBeyond(piece, farEdge(left, 1), 1) || !isBeyond(piece, farEdge(right, -1), -1);

/** Makes one block of the first two that caught a neighbour between them; a pinned one there keeps them apart. */
function joinAround(
  blocks: readonly Block[],
  neighbours: readonly Neighbour[],
): readonly Block[] | undefined {
  for (const [i, left] of blocks.entries()) {
    const right = blocks[i + 1];
    if (!right) return undefined;
    const between = neighbours.filter((piece) => sideOf(left, piece) === 1 && sideOf(right, piece) === -1);
    if (between.some(({ fixed }) => fixed) || !between.some((piece) => isCaught(piece, left, right)))
      continue;
    return [...blocks.slice(0, i), join(left, right), ...blocks.slice(i + 2)];
  }
  return undefined;
}

/** The neighbours of a row after the push. At most one round for each moved module. */
function settle(
  moved: readonly Block[],
  standing: readonly Neighbour[],
  rowHp: number,
): readonly Neighbour[] {
  const neighbours = standing.map((neighbour) => ({ ...neighbour }));
  const blocks = joinTouching(moved);
  for (const block of blocks) {
    const others = [...neighbours, ...blocks.filter((other) => other !== block)];
    clearSide(block, others, -1, 0);
    clearSide(block, others, 1, rowHp);
  }
  const joined = joinAround(blocks, neighbours);
  return joined ? settle(joined, standing, rowHp) : neighbours;
}

/**
 * Pushes the neighbours of moved modules along the row, each to the side on which its middle lies, by no more
 * than it takes. One that lies right under the middle goes to where the moved module came from. Neighbours keep
 * their order; pinned ones stay and stop the push, as the ends of the row do: what cannot give way stays
 * where it is, overlapped.
 *
 * @param take - as it was before the move
 * @param modules - as they stand after it
 * @param moved - ids of the modules that stand where they were put
 */
export function pushNeighbours(
  kit: Kit,
  take: Take,
  modules: readonly Module[],
  moved: ReadonlySet<string>,
): readonly Module[] {
  const before = new Map(take.modules.map((module) => [module.id, module]));

  const pieceOf = (module: Module): Piece => {
    const { widthHp } = kindOf(kit, module);
    const { atHp, pinned } = module;
    const fixed = pinned === true || moved.has(module.id);
    return { leftHp: atHp, widthHp, middleHp: atHp + widthHp / 2, fixed };
  };
  const blockOf = (module: Module): Block => {
    const home = before.get(module.id);
    const cameFromLeft = home?.row === module.row && home.atHp < module.atHp;
    return { ...pieceOf(module), evenly: cameFromLeft ? -1 : 1 };
  };

  const pushedTo = new Map<string, number>();
  for (const row of take.rows) {
    const inRow = modules.filter((module) => module.row === row.id);
    const blocks = inRow.filter(({ id }) => moved.has(id)).map(blockOf);
    const standing = inRow
      .filter(({ id }) => !moved.has(id))
      .map((module) => ({ ...pieceOf(module), module }));
    for (const { module, leftHp } of settle(blocks, standing, row.widthHp)) pushedTo.set(module.id, leftHp);
  }
  return mapKept(modules, (module) => withField(module, 'atHp', pushedTo.get(module.id) ?? module.atHp));
}
