import { describe, expect, it } from 'vitest';
import type { Bus } from '../../src/layout/layout.ts';
import { applied, littleLayout, refusalOf } from '../support/little-layout.ts';

const layout = littleLayout();
const reef: Bus = { id: 'reef', name: 'Reef', pinout: ['GND', 'mix'], membersPerHost: 3 };

describe('add-bus', () => {
  it('adds a bus behind the others and leaves all else as it is', () => {
    const { kit, takes } = applied(layout, { type: 'add-bus', bus: reef });
    expect(kit.buses).toEqual([...layout.kit.buses, reef]);
    expect(kit.modules).toBe(layout.kit.modules);
    expect(takes).toBe(layout.takes);
  });

  it.each([
    [{ ...reef, id: 'shore' }, 'There is already a bus "shore"'],
    [{ ...reef, name: ' ' }, 'A bus needs a name'],
    [{ ...reef, id: '' }, 'Reef cannot be kept so: id: must not be empty'],
    [{ ...reef, membersPerHost: -1 }, 'Reef cannot be kept so: membersPerHost: must be at least 0, not -1'],
  ])('refuses %j', (bus, words) => {
    expect(refusalOf(layout, { type: 'add-bus', bus })).toBe(words);
  });
});
