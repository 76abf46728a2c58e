import { list, namesOf } from '../checks/words.ts';
import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import type { MarkupPart } from '../sheet/markup.ts';
import { INK, line, rect, SOFT, text } from '../sheet/svg.ts';
import type { WholeTake } from '../wiring/whole-take.ts';
import { type InsetBody, LETTERS, MARGIN, WIDE } from './inset.ts';

const TOP = 30;
const HEADER_PX = 22;
const ROW_PX = 44;

/** Which link group each header belongs to, counted from 1. */
function numbersOf({ parts }: WholeTake): ReadonlyMap<PlacedHeader, number> {
  const numbers = new Map<PlacedHeader, number>();
  let group = 0;
  for (const { linkGroups } of parts) {
    for (const { harnesses } of linkGroups) {
      group++;
      for (const { moduleSeats } of harnesses)
        for (const { on } of moduleSeats) numbers.set(on.header, group);
    }
  }
  return numbers;
}

/** Link groups as a scheme: modules from left to right as seen from the rear, each header with its group's number. */
export function groupsBody(take: WholeTake): InsetBody {
  const numbers = numbersOf(take);
  const modules = [...take.places.modules].sort((a, b) => b.leftMm - a.leftMm);
  const step = (WIDE - 2 * MARGIN) / Math.max(1, modules.length);
  const heights = [...new Set([...numbers.keys()].map(({ yMm }) => yMm))].sort((a, b) => b - a);
  const bottom = TOP + 26 + heights.length * ROW_PX;
  const xOf = (module: PlacedModule): number => MARGIN + step * (modules.indexOf(module) + 0.5);
  const spot = (header: PlacedHeader) => ({
    x: xOf(header.owner as PlacedModule),
    y: TOP + 46 + heights.indexOf(header.yMm) * ROW_PX,
  });
  const dashOf = (group: number) => (group % 2 ? {} : { dash: '6 4' });
  const boxes = modules.map((module): MarkupPart => {
    const x = xOf(module);
    const passing = module.headers.filter((header) => header.passes && numbers.has(header));
    return [
      rect({ left: x - step * 0.32, right: x + step * 0.32, top: TOP, bottom }, { line: INK, width: 1.4 }),
      text(module.name, x, TOP + 17, { size: LETTERS, bold: true, anchor: 'middle' }),
      passing.length > 1 && line(passing.map(spot), { line: INK, width: 5 }),
    ];
  });
  const ways = take.harnesses.map(({ moduleSeats }): MarkupPart => {
    const points = moduleSeats.map(({ on }) => spot(on.header)).sort((a, b) => a.x - b.x);
    const group = numbers.get(moduleSeats[0]?.on.header as PlacedHeader) ?? 0;
    return line(points, { line: SOFT, width: 3, ...dashOf(group) });
  });
  const headers = [...numbers].map(([header, group]): MarkupPart => {
    const { x, y } = spot(header);
    const half = HEADER_PX / 2;
    const box = { left: x - half, right: x + half, top: y - half, bottom: y + half };
    return [
      rect(box, { fill: '#fff', line: INK, width: 1.6, ...dashOf(group) }),
      text(String(group), x, y + 5, { size: LETTERS, bold: true, anchor: 'middle' }),
    ];
  });
  const groups = take.parts.flatMap((part) => part.linkGroups);
  const told = groups.map(({ ribbons }, i) => `Group ${i + 1}: ${namesOf(ribbons)}`);
  const twice = modules.filter(
    ({ headers: own }) => new Set(own.flatMap((header) => numbers.get(header) ?? [])).size > 1,
  );
  const verdict =
    twice.length > 0 ? `${namesOf(twice)} hangs on two groups` : 'Headers joined inside: one group';
  return {
    high: bottom + 28,
    seen: `${list(told)}. ${verdict}.`,
    body: [
      text(told.join('   '), MARGIN, 16, { size: LETTERS * 0.92 }),
      boxes,
      ways,
      headers,
      text(verdict, MARGIN, bottom + 20, { size: LETTERS * 0.92, bold: twice.length > 0 }),
    ],
  };
}
