import { describe, expect, it } from 'vitest';
import { hitPile } from '../../../app/canvas/hit-test.ts';
import { levelsOf } from '../../../src/drawing/draw-order.ts';
import { runOf } from '../../../src/drawing/runs.ts';
import { layOutSheet } from '../../../src/drawing/sheet.ts';
import { deriveTake, type Take } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';

const { kit, takes } = demoLayout();
const deriveRack = (take: Take) => deriveTake(kit, take);

const raised = (take: Take, id: string, over: number): Take => ({
  ...take,
  ribbons: take.ribbons.map((ribbon) => (ribbon.id === id ? { ...ribbon, over } : ribbon)),
});

/** Ribbons at every point along all leads, the uppermost first. */
function pilesAlongLeads(take: Take): string[][] {
  const derived = deriveRack(take);
  const sheet = layOutSheet(derived, 'rear', 2);
  const leads = derived.wiring.ribbons.filter(({ facts }) => !facts.flat);
  const line = leads.flatMap((lead) => runOf(sheet, derived, lead)?.line ?? []);
  return line.map(({ x, y }) =>
    hitPile(sheet, derived, x, y).flatMap((hit) => (hit.type === 'ribbon' ? [hit.id] : [])),
  );
}

const isFlat = (id: string | undefined): boolean =>
  takes[0]?.ribbons.some((ribbon) => ribbon.id === id && !ribbon.label?.startsWith('L')) === true;

describe('ribbons where they cross', () => {
  const take = takes[0] as Take;
  const crossing = pilesAlongLeads(take).findIndex(([a, b, c]) => isFlat(a) !== isFlat(b) && b && !c);
  const [upper, lower] = pilesAlongLeads(take)[crossing] ?? [];

  it('are taken the last drawn first, or as their numbers say', () => {
    if (!upper || !lower) throw new Error('nothing crosses the lead');
    const first = (of: Take): string | undefined => pilesAlongLeads(of)[crossing]?.[0];
    expect(first(raised(take, lower, 1))).toBe(lower);
    expect(first(raised(take, upper, -1))).toBe(lower);
    expect(first(raised(raised(take, lower, 1), upper, 2))).toBe(upper);
  });

  it('are drawn level by level, all in one where nobody has said otherwise', () => {
    const runs = (of: Take) => deriveRack(of).wiring.ribbons.map((ribbon) => ({ ribbon }));
    const ids = (of: Take) => levelsOf(runs(of)).map((level) => level.map(({ ribbon }) => ribbon.id));
    const all = take.ribbons.map(({ id }) => id);
    expect(ids(take)).toEqual([all]);
    const [first = '', second = '', ...others] = all;
    expect(ids(raised(raised(take, first, 3), second, -1))).toEqual([[second], others, [first]]);
    expect(levelsOf([])).toEqual([[]]);
  });
});
