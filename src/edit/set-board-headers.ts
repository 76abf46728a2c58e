import type { BoardHeader, Kit, Layout } from '../layout/layout.ts';
import { PIN_ENDS } from '../layout/references.ts';
import { ok } from '../layout/result.ts';
import { boardsOf, editBoard, withFields } from './case-parts.ts';
import { type Edited, editTake, find, refuse, withField } from './change.ts';
import { refuseIfUnfit } from './check-noun.ts';
import { dropSeats } from './drop-seats.ts';

/**
 * Gives a board these headers and no others. Ribbons stay seated on headers that keep their id; the seats on those
 * that go are lifted, and a ribbon that is left without any goes as well unless it is locked.
 */
export interface SetBoardHeaders {
  readonly type: 'set-board-headers';
  readonly take: string;
  readonly board: string;
  readonly headers: readonly BoardHeader[];
}

const FIELDS = ['bus', 'dxMm', 'dyMm', 'axis', 'pin1', 'keyed'] as const;

/** What the edit does not say of a header is not known of it from now on; keys that are not ours stay. */
function headerAs(wanted: BoardHeader, before: BoardHeader | undefined): BoardHeader {
  const all = Object.fromEntries(FIELDS.map((key) => [key, wanted[key] ?? null]));
  return withFields(before ?? { id: wanted.id, bus: wanted.bus }, FIELDS, all);
}

function refuseIfWrong(kit: Kit, headers: readonly BoardHeader[]) {
  const ids = new Set<string>();
  for (const { id, bus, axis = 'vertical', pin1 } of headers) {
    if (ids.has(id)) return refuse(`There would be two headers "${id}"`);
    ids.add(id);
    const found = find(kit.buses, bus, 'bus');
    if (!found.ok) return found;
    if (pin1 && !PIN_ENDS[axis]?.includes(pin1))
      return refuse(`Pin 1 of a ${axis} header lies ${PIN_ENDS[axis]?.join(' or ')}`);
  }
  return undefined;
}

export function setBoardHeaders(layout: Layout, edit: SetBoardHeaders): Edited<Layout> {
  return editTake(layout, edit.take, (take) => {
    const found = find(boardsOf(take), edit.board, 'board');
    if (!found.ok) return found;
    const wrong = refuseIfWrong(layout.kit, edit.headers);
    if (wrong) return wrong;
    const { headers: before } = found.value;
    const known = new Map(before.map((header) => [header.id, header]));
    const headers = edit.headers.map((header) => headerAs(header, known.get(header.id)));
    const isAsBefore = headers.length === before.length && headers.every((one, i) => one === before[i]);
    const changed = editBoard(take, edit.board, (board) => {
      const after = isAsBefore ? board : withField(board, 'headers', headers);
      return refuseIfUnfit('Board', after, board.name) ?? ok(after);
    });
    if (!changed.ok) return changed;
    const has = new Set(headers.map(({ id }) => id));
    const ribbons = dropSeats(
      take.ribbons,
      ({ on }) => 'board' in on && on.board === edit.board && !has.has(on.header),
    );
    return ok(withField(changed.value, 'ribbons', ribbons));
  });
}
