import {
  type Box,
  boardBox,
  type DerivedTake,
  moduleBox,
  type Note,
  RAIL_END_MM,
  runOf,
  type Sheet,
  spotsOf,
  xOf,
  yOf,
} from '../../src/index.ts';
import { headerBox } from '../canvas/draw/headers.ts';
import type { Branch } from './tree.ts';

/** Half of the frame around a note's mark, px. */
const MARK_PX = 15;

function noteBox(sheet: Sheet, take: DerivedTake, note: Note): Box | undefined {
  const [spot] = spotsOf(note, take);
  const row = spot && sheet.rowById.get(spot.row);
  if (!row) return undefined;
  const [x, y] = [xOf(row, spot.xMm), yOf(row, spot.yMm)];
  return { left: x - MARK_PX, right: x + MARK_PX, top: y - MARK_PX, bottom: y + MARK_PX };
}

/** Where an item is drawn, px of the sheet; nothing for what is not in the drawing. */
export function itemBox(sheet: Sheet, take: DerivedTake, { item }: Branch): Box | undefined {
  switch (item.type) {
    case 'row': {
      const row = sheet.rowById.get(item.row.row.id);
      const end = RAIL_END_MM * sheet.scale;
      return row && { left: row.left - end, right: row.right + end, top: row.top, bottom: row.bottom };
    }
    case 'module':
      return moduleBox(sheet, item.module);
    case 'header':
      return headerBox(sheet, item.header);
    case 'board':
      return boardBox(sheet, item.board);
    case 'ribbon':
      return runOf(sheet, take, item.ribbon)?.box;
    case 'connector': {
      const knot = runOf(sheet, take, item.ribbon)?.knots.find(
        ({ connector }) => connector === item.connector,
      );
      if (!knot) return undefined;
      const { x, y, halfWidth, halfHeight } = knot;
      return { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, bottom: y + halfHeight };
    }
    case 'note':
      return noteBox(sheet, take, item.note);
    default:
      return undefined;
  }
}

/** Whether an item lies behind the panels, where only the rear shows it. */
export const isBehind = ({ item: { type } }: Branch): boolean =>
  type === 'header' || type === 'ribbon' || type === 'connector' || type === 'board';
