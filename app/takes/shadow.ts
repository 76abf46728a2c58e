import { moduleBox, type Run, runOf, type WholeTake } from '../../src/index.ts';
import { addBox, addLine, boxAround, CENTRED, paint, write, writeUpward } from '../canvas/draw/paper.ts';
import { widthOf } from '../canvas/draw/text-width.ts';
import type { Overlay } from '../canvas/model.ts';

const NAME_PX = 11;

/** Dashes of what stands or lies elsewhere in the other take, px. */
const DASH = [6, 4];

const seatsText = (take: WholeTake, id: string): string =>
  JSON.stringify(take.take.ribbons.find((ribbon) => ribbon.id === id)?.seats ?? null);

/** What is elsewhere in another take: outlines of its modules, and the ways of its ribbons. Nothing of it is drawn while something is dragged. */
export function shadowOf(mine: WholeTake, other: WholeTake): Overlay {
  const here = mine.places.moduleById;
  const moved = other.places.modules.filter(({ id, module, row }) => {
    const own = here.get(id);
    return !own || own.module.atHp !== module.atHp || own.row.row.id !== row.row.id;
  });
  const movedIds = new Set(moved.map(({ id }) => id));
  const laid = other.wiring.ribbons.filter(
    ({ id, uses }) =>
      seatsText(mine, id) !== seatsText(other, id) ||
      uses.some((joints) =>
        joints.some(({ on }) => on.type === 'header' && movedIds.has(on.header.owner.id)),
      ),
  );
  return {
    draw: (ctx, paper) => {
      const { sheet, theme } = paper;
      const boxes = moved
        .filter(({ row }) => sheet.rowById.has(row.row.id))
        .map((module) => ({ module, box: moduleBox(sheet, module) }));
      const runs = laid.flatMap((ribbon): Run[] => {
        const run = runOf(sheet, other, ribbon);
        return run ? [run] : [];
      });
      ctx.save();
      ctx.globalAlpha = 0.85;
      // A dark line on a light one is seen on panels and on the case alike.
      paint(ctx, { line: theme.markInk, width: 4 }, boxes, ({ box }) => addBox(ctx, box));
      paint(ctx, { line: theme.markInk, width: 4 }, runs, (run) => addLine(ctx, run.line));
      paint(ctx, { line: theme.mark, width: 2, dash: DASH }, boxes, ({ box }) => addBox(ctx, box));
      paint(ctx, { line: theme.mark, width: 2, dash: DASH }, runs, (run) => addLine(ctx, run.line));
      for (const { module, box } of boxes) {
        const half = widthOf(ctx, module.name, NAME_PX, 700) / 2 + 4;
        const isUpright = 2 * half > box.right - box.left;
        const at = { x: (box.left + box.right) / 2, y: box.bottom - (isUpright ? half : 8) - 3 };
        const plate = isUpright ? boxAround(at, 8, half) : boxAround(at, half, 8);
        paint(ctx, { fill: theme.mark }, [plate], (one) => addBox(ctx, one));
        const letter = isUpright ? writeUpward : write;
        letter(ctx, module.name, at.x, at.y + 0.5, {
          px: NAME_PX,
          colour: theme.markInk,
          weight: 700,
          ...CENTRED,
        });
      }
      ctx.restore();
    },
  };
}
