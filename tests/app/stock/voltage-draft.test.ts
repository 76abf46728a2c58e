import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NEW_VOLTAGE_DRAFT, readVoltage, voltageDraftOf } from '../../../app/stock/voltage-draft.ts';
import { applyEdit, emptyKit, emptyLayout } from '../../../src/index.ts';
import { runs } from '../../support/runs.ts';

const kit = emptyKit();
const read = (part: Partial<typeof NEW_VOLTAGE_DRAFT>) => readVoltage(kit, { ...NEW_VOLTAGE_DRAFT, ...part });

describe('the form for a voltage', () => {
  it('takes the volts from the name where none are typed', () => {
    expect(read({ id: '+15' }).voltage).toEqual({ id: '+15', volts: 15 });
    expect(read({ id: '−15 V' }).voltage).toEqual({ id: '-15', volts: -15 });
    expect(read({ id: '+3,3' }).voltage).toEqual({ id: '+3,3', volts: 3.3 });
    expect(read({ id: 'bias', volts: '9 V', dropMv: '50 mV' }).voltage).toEqual({
      id: 'bias',
      volts: 9,
      dropMv: 50,
    });
  });

  it.each([
    [{ id: '', volts: '5' }, 'id'],
    [{ id: 'gnd', volts: '5' }, 'id'],
    [{ id: '+12' }, 'id'],
    [{ id: '±15', volts: '15' }, 'id'],
    [{ id: 'bias' }, 'volts'],
    [{ id: '0' }, 'volts'],
    [{ id: '+15', dropMv: '-1' }, 'dropMv'],
  ])('names what is wrong in %j', (part, field) => {
    const { voltage, problems } = read(part);
    expect(voltage).toBeNull();
    expect(Object.keys(problems)).toEqual([field]);
  });

  it('gives one back as it is where nothing is changed, keys of a newer program included', () => {
    const before = { id: '+12', volts: 12, dropMv: 100, later: 1 };
    expect(readVoltage(kit, voltageDraftOf(before), before).voltage).toEqual(before);
  });

  it('makes only what the layout takes, whatever is typed', () => {
    const text = fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom('+15', '-9', 'GND', '0', '', '5e3'));
    const property = fc.property(fc.record({ id: text, volts: text, dropMv: text }), (typed) => {
      const { voltage, problems } = read(typed);
      expect(voltage === null).toBe(Object.keys(problems).length > 0);
      if (voltage)
        expect(applyEdit(emptyLayout(kit), { type: 'add-voltage', voltage })).toMatchObject({ ok: true });
    });
    fc.assert(property, runs(300));
  });
});
