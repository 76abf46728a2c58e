import {
  type Edit,
  freshBoardId,
  headersInLine,
  hpToMm,
  type Kit,
  type Row,
  type Take,
} from '../../../src/index.ts';

/** Between boards side by side, mm. */
export const BESIDE_MM = 6;

/** A plain board with a line of headers that leave room for their connectors: common practice, no source. */
export const PLAIN_BOARD = { widthMm: 114, riseMm: 10, count: 8, pitchMm: 13.6, firstMm: 9 } as const;

/** The bus of the last header of any board; where there is none, the last with a voltage that links no modules. */
export function usualBus({ buses, voltages }: Kit, { supplies }: Take): string | undefined {
  const headers = supplies.flatMap(({ boards }) => boards.flatMap((board) => board.headers));
  const ids = new Set(voltages.map(({ id }) => id));
  const powers = buses.filter(({ pinout }) => pinout.some((line) => ids.has(line)));
  const links = powers.findLast(({ membersPerHost }) => membersPerHost === undefined);
  return headers.at(-1)?.bus ?? (links ?? powers[0])?.id;
}

/** The row with the fewest boards, the highest of several. */
function barestRow({ rows, supplies }: Take): Row | undefined {
  const boards = supplies.flatMap((supply) => supply.boards);
  const count = (id: string): number => boards.filter(({ row }) => row === id).length;
  return rows.toSorted((a, b) => count(a.id) - count(b.id))[0];
}

/** Beside what stands in a row as long as there is room; in the middle of an empty one. */
function freePlace({ id, widthHp }: Row, { supplies }: Take): number {
  const rowMm = hpToMm(widthHp);
  const there = supplies.flatMap(({ boards }) => boards.filter(({ row }) => row === id));
  const beside = Math.max(0, ...there.map(({ xMm, widthMm = 0 }) => xMm + widthMm + BESIDE_MM));
  if (there.length > 0) return beside + PLAIN_BOARD.widthMm <= rowMm ? beside : 0;
  return Math.max(0, Math.round((rowMm - PLAIN_BOARD.widthMm) / 2));
}

/** A new board with a line of power headers; nothing where there is no row to stand in. */
export function newBoard(kit: Kit, take: Take, supply: string): Edit | undefined {
  const row = barestRow(take);
  if (!row) return undefined;
  const { widthMm, riseMm } = PLAIN_BOARD;
  const bus = usualBus(kit, take);
  const board = freshBoardId(take);
  const headers = bus === undefined ? [] : headersInLine({ ...PLAIN_BOARD, bus, keyed: false });
  const at = { row: row.id, xMm: freePlace(row, take), fields: { widthMm, riseMm } };
  return {
    type: 'several',
    label: 'add a board',
    edits: [
      { type: 'add-board', take: take.id, supply, ...at },
      { type: 'set-board-headers', take: take.id, board, headers },
    ],
  };
}
