import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BusDraft,
  busDraftOf,
  lineOf,
  NEW_BUS_DRAFT,
  pinsShown,
  readBus,
} from '../../../app/kinds/bus-draft.ts';
import { applyEdit, demoLayout, emptyKit, emptyLayout } from '../../../src/index.ts';
import { runs } from '../../support/runs.ts';

const kit = emptyKit();
const draft = (part: Partial<BusDraft>): BusDraft => ({
  ...NEW_BUS_DRAFT,
  name: 'Reef',
  count: '4',
  pins: ['GND', 'mix'],
  ...part,
});

describe('the form for a bus', () => {
  it('makes one of its pins, and leaves the rest not connected', () => {
    expect(readBus(kit, draft({ most: '3' })).bus).toEqual({
      id: 'reef',
      name: 'Reef',
      pinout: ['GND', 'mix', '', ''],
      membersPerHost: 3,
    });
  });

  it.each([
    ['gnd', 'GND'],
    ['Ground', 'GND'],
    ['+12 V', '+12'],
    ['12', '+12'],
    ['−12V', '-12'],
    [' mix ', 'mix'],
    ['+9', '+9'],
    ['', ''],
  ])('takes %j for %j', (text, line) => {
    expect(lineOf(kit, text)).toBe(line);
  });

  it.each([
    [{ name: '' }, 'name'],
    [{ name: 'Power, 10-way' }, 'name'],
    [{ count: '3' }, 'count'],
    [{ count: '' }, 'count'],
    [{ count: '130' }, 'count'],
    [{ pins: [] }, 'pins'],
    [{ most: '0' }, 'most'],
    [{ most: '1.5' }, 'most'],
  ])('names what is wrong in %j', (part, field) => {
    const { bus, problems } = readBus(kit, draft(part));
    expect(bus).toBeNull();
    expect(Object.keys(problems)).toContain(field);
  });

  it('makes only what the layout takes, whatever is typed', () => {
    const text = fc.oneof(fc.string({ maxLength: 8 }), fc.constantFrom('2', '10', '128', 'GND', ''));
    const part = fc.record({ name: text, count: text, pins: fc.array(text, { maxLength: 12 }), most: text });
    const property = fc.property(part, (typed) => {
      const { bus, problems } = readBus(kit, typed);
      expect(bus === null).toBe(Object.keys(problems).length > 0);
      expect(pinsShown(typed)).toBeLessThanOrEqual(128);
      if (bus) expect(applyEdit(emptyLayout(kit), { type: 'add-bus', bus })).toMatchObject({ ok: true });
    });
    fc.assert(property, runs(500));
  });
});

describe('the form for a bus that there is', () => {
  it.each(demoLayout().kit.buses)('gives $name back as it is where nothing is changed', (bus) => {
    const { kit: shoreline } = demoLayout();
    expect(readBus(shoreline, busDraftOf(bus), bus).bus).toEqual(bus);
  });

  it('takes no pin for another line that was not touched, and keeps keys that are not known', () => {
    const bus = { id: 'odd', name: 'Odd', pinout: ['0', '12', '', 'ground'], membersPerHost: 0, later: 1 };
    expect(readBus(kit, busDraftOf(bus), bus).bus).toEqual(bus);
    const typed = { ...busDraftOf(bus), pins: ['0', '12 V', '', 'ground'] };
    expect(readBus(kit, typed, bus).bus?.pinout).toEqual(['0', '+12', '', 'ground']);
  });
});
