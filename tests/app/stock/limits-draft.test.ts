import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LIMIT_NAMES, type LimitsDraft, limitsDraftOf, readLimits } from '../../../app/stock/limits-draft.ts';
import { applyEdit, demoLayout, type Kit, LIMIT_FACTS, limitsOf } from '../../../src/index.ts';
import { runs } from '../../support/runs.ts';

const layout = demoLayout();
const { kit } = layout;
const stepFrom = (from: Kit, part: Partial<LimitsDraft>) =>
  readLimits(from, { ...limitsDraftOf(from), ...part });

describe('the form for limits', () => {
  it('changes nothing where nothing was typed', () => {
    expect(stepFrom(kit, {})).toEqual({ step: null, problems: {} });
  });

  it('tells and reads a share in percent', () => {
    expect(limitsDraftOf(kit).headroom).toBe('20');
    expect(stepFrom(kit, { headroom: '35 %' }).step).toEqual({
      type: 'set-limits',
      limits: { headroom: 0.35 },
    });
  });

  it('keeps none of its own that is the default, typed out or left empty', () => {
    const own = { ...kit, limits: { skewMm: 5, headroom: 0.1 } };
    const cleared = { type: 'set-limits', limits: { skewMm: null } };
    expect(stepFrom(own, { skewMm: '3' }).step).toEqual(cleared);
    expect(stepFrom(own, { skewMm: '' }).step).toEqual(cleared);
  });

  it.each([
    [{ headroom: '101' }, 'headroom'],
    [{ contactMilliohm: '0' }, 'contactMilliohm'],
    [{ ambientC: '-273' }, 'ambientC'],
    [{ ribbonMm: 'thin' }, 'ribbonMm'],
    [{ groundShiftMv: '-1 mV' }, 'groundShiftMv'],
  ])('names what is wrong in %j', (part, field) => {
    const { step, problems } = stepFrom(kit, part);
    expect(step).toBeNull();
    expect(Object.keys(problems)).toEqual([field]);
  });

  it('makes only what the layout takes, and says afterwards what was typed', () => {
    const text = fc.oneof(
      fc.integer({ min: -5, max: 2000 }).map(String),
      fc.constantFrom('', '0', '1e3', '0,5', 'x'),
    );
    const draft = fc.record(Object.fromEntries(LIMIT_NAMES.map((name) => [name, text])));
    const property = fc.property(draft, (typed) => {
      const { step, problems } = readLimits(kit, typed as unknown as LimitsDraft);
      if (!step) return;
      expect(problems).toEqual({});
      const done = applyEdit(layout, step);
      expect(done.ok).toBe(true);
      if (!done.ok) return;
      const again = readLimits(done.value.kit, typed as unknown as LimitsDraft);
      expect(again).toEqual({ step: null, problems: {} });
      const reset = readLimits(
        done.value.kit,
        Object.fromEntries(LIMIT_NAMES.map((name) => [name, ''])) as unknown as LimitsDraft,
      ).step;
      const back = reset && applyEdit(done.value, reset);
      expect(limitsOf(back?.ok ? back.value.kit : done.value.kit)).toEqual(
        Object.fromEntries(LIMIT_NAMES.map((name) => [name, LIMIT_FACTS[name].value])),
      );
    });
    fc.assert(property, runs(300));
  });
});
