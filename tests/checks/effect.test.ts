import { describe, expect, it } from 'vitest';
import { effectOf } from '../../src/checks/effect.ts';
import { checks } from '../../src/checks/index.ts';
import type { Edit } from '../../src/edit/edit.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import { applied } from '../support/little-layout.ts';

const demo = demoLayout();
const effect = (edit: Edit) => effectOf(demo, applied(demo, edit), checks);
const shore = demo.kit.buses[0];
if (!shore) throw new Error('the demo has no bus');

describe('the effect of a change of the kit', () => {
  it('names the kinds of a bus, and counts what is drawn of them', () => {
    const told = effect({ type: 'change-bus', bus: { ...shore, membersPerHost: 1 } });
    expect(told.modules).toEqual(['Jetty', 'Cobble', 'Boulder']);
    expect(told.ribbons.every((name) => name.startsWith('Shore'))).toBe(true);
    expect(told.seats).toBeGreaterThan(told.laid);
    expect(told.seatsLost).toBe(0);
    expect(told.lost).toEqual([]);
    expect([...new Set(told.gained.map(({ check }) => check))]).toEqual(['over-members']);
  });

  it('is nothing but a name where a voltage is renamed: every note stays', () => {
    const told = effect({ type: 'change-voltage', id: '+12', voltage: { id: '+12V', volts: 12 } });
    expect(told.gained).toEqual([]);
    expect(told.lost).toEqual([]);
    expect(told.modules).toContain('Cobble');
  });

  it('tells notes that come and go with a limit', () => {
    const tight = { type: 'set-limits', limits: { bendRadiusMm: 30 } } as const;
    const told = effect(tight);
    expect(told.gained.map(({ check }) => check)).toContain('tight-bend');
    expect(told.modules).toEqual([]);
    const back = effectOf(applied(demo, tight), demo, checks);
    expect(back.lost).toEqual(told.gained);
    expect(back.gained).toEqual(told.lost);
  });

  it('counts connectors that come off', () => {
    const kind = demo.kit.ribbons.find(({ id }) => demo.takes[0]?.ribbons.some((laid) => laid.kind === id));
    if (!kind) throw new Error('nothing is laid in the demo');
    const told = effect({
      type: 'change-ribbon-kind',
      kind: { ...kind, connectors: kind.connectors.slice(0, 2) },
    });
    expect(told.ribbons).toEqual([kind.name]);
    const laid = demo.takes.flatMap(({ ribbons }) => ribbons.filter(({ kind: id }) => id === kind.id));
    expect(told.laid).toBe(laid.length);
    const lost = laid.flatMap(({ seats }) => seats.filter(({ connector }) => connector > 1));
    expect(told.seatsLost).toBeGreaterThanOrEqual(lost.length);
  });

  it('is nothing where nothing changes', () => {
    expect(effectOf(demo, demo, checks)).toEqual({
      modules: [],
      ribbons: [],
      placed: 0,
      laid: 0,
      seats: 0,
      seatsLost: 0,
      ribbonsLost: 0,
      gained: [],
      lost: [],
    });
  });
});
