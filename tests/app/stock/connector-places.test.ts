import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ConnectorDraft } from '../../../app/kinds/ribbon-draft.ts';
import { newRibbonDraft, readRibbon, socketsAt } from '../../../app/kinds/ribbon-draft.ts';
import { lengthened, movedTo, roomOf, spaced, without } from '../../../app/stock/connector-places.ts';
import { applyEdit, demoLayout, emptyLayout } from '../../../src/index.ts';
import { runs } from '../../support/runs.ts';

const at = (connectors: readonly ConnectorDraft[]): number[] => connectors.map(({ atMm }) => atMm);
const three = socketsAt([0, 25.4, 76.2]);

describe('connectors along a ribbon', () => {
  it('move alone to a place, and by a gap with all behind them', () => {
    expect(at(movedTo(three, 1, 30))).toEqual([0, 30, 76.2]);
    expect(at(spaced(three, 1, 30))).toEqual([0, 30, 80.8]);
    expect(at(spaced(three, 2, 25.4))).toEqual([0, 25.4, 50.8]);
  });

  it('count from the first, wherever that goes', () => {
    expect(at(movedTo(three, 0, -10))).toEqual([0, 35.4, 86.2]);
    expect(at(movedTo(three, 0, 5.4))).toEqual([0, 20, 70.8]);
    expect(at(without(three, 0))).toEqual([0, 50.8]);
  });

  it('change places where one is typed beyond another', () => {
    const [first, , last] = socketsAt([0, 25.4, 76.2]);
    const plug = [first, { ...three[1], type: 'plug' }, last] as ConnectorDraft[];
    const moved = movedTo(plug, 1, 90);
    expect(at(moved)).toEqual([0, 76.2, 90]);
    expect(moved[2]?.type).toBe('plug');
  });

  it('grow by one more at the last distance', () => {
    expect(at(lengthened(three))).toEqual([0, 25.4, 76.2, 127]);
  });

  it('stop at the bodies of their neighbours when they are dragged', () => {
    expect(roomOf(three, 1, 6, 500)).toEqual([6, 70.2]);
    expect(roomOf(three, 0, 6, 500)).toEqual([-500, 19.4]);
    expect(roomOf(three, 2, 6, 500)).toEqual([31.4, 500]);
    expect(roomOf(socketsAt([0, 4, 8]), 1, 6, 500)).toEqual([6, 6]);
  });

  it('make a kind that the layout takes, whatever is done with them', () => {
    const kit = { ...demoLayout().kit, ribbons: [] };
    const deed = fc.oneof(
      fc.record({
        does: fc.constant('move' as const),
        i: fc.nat(6),
        mm: fc.double({ min: -300, max: 900, noNaN: true }),
      }),
      fc.record({
        does: fc.constant('space' as const),
        i: fc.nat(6),
        mm: fc.double({ min: 0.1, max: 200, noNaN: true }),
      }),
      fc.record({
        does: fc.constantFrom('add' as const, 'remove' as const),
        i: fc.nat(6),
        mm: fc.constant(0),
      }),
    );
    const property = fc.property(fc.array(deed, { maxLength: 12 }), (deeds) => {
      let connectors = three;
      for (const { does, i, mm } of deeds) {
        const index = i % connectors.length;
        if (does === 'move') connectors = movedTo(connectors, index, mm);
        else if (does === 'space' && index > 0) connectors = spaced(connectors, index, mm);
        else if (does === 'add') connectors = lengthened(connectors);
        else if (does === 'remove' && connectors.length > 2) connectors = without(connectors, index);
        expect(connectors[0]?.atMm).toBe(0);
        expect(at(connectors)).toEqual([...at(connectors)].sort((a, b) => a - b));
      }
      const draft = { ...newRibbonDraft(kit, 'ribbon'), spacing: 'each' as const, connectors };
      const { kind, problems } = readRibbon(kit, draft);
      expect(kind === null).toBe(Object.keys(problems).length > 0);
      const isApart = new Set(at(connectors)).size === connectors.length;
      expect(problems.connectors === undefined).toBe(isApart && (at(connectors).at(-1) ?? 0) <= 10_000);
      if (kind)
        expect(applyEdit(emptyLayout(kit), { type: 'add-ribbon-kind', kind })).toMatchObject({ ok: true });
    });
    fc.assert(property, runs(300));
  });
});
