import { describe, expect, it } from 'vitest';
import { breakThings } from '../../../app/faults/break-things.ts';
import { defectsOfBreakage } from '../../../app/faults/breakage.ts';
import {
  breakageWords,
  deadWords,
  lineName,
  listWords,
  pinsWords,
  readingWords,
  suspectWords,
  testWords,
  volts,
} from '../../../app/faults/fault-words.ts';
import { renewBreakage, renewTest } from '../../../app/faults/renew.ts';
import {
  demoLayout,
  deriveTake,
  readingsWith,
  searchFault,
  type Take,
  type WholeTake,
} from '../../../src/index.ts';

function derive(change: (take: Take) => Take = (take) => take): WholeTake {
  const { kit, takes } = demoLayout();
  return deriveTake(kit, change(takes[0] ?? expect.fail('no take')));
}

const take = derive();
const module = (id: string) => take.places.moduleById.get(id) ?? expect.fail('no module');

describe('words', () => {
  it('count pins from 1 and run them together', () => {
    expect(pinsWords([2])).toBe('3');
    expect(pinsWords([5, 6])).toBe('6 and 7');
    expect(pinsWords([2, 3, 4, 7])).toBe('3 to 5 and 8');
    expect(listWords(['a', 'b', 'c'])).toBe('a, b and c');
    expect([lineName('-12'), lineName('GND')]).toEqual(['−12 V', 'ground']);
    expect([volts(-11.984), volts(0.004), volts(0)]).toEqual(['−11.98 V', '0.004 V', '0.00 V']);
  });

  it('say what a meter shows, and why a module is dead', () => {
    const { modules } = readingsWith(take, [{ type: 'unplugged', ribbon: 'l7', connector: 1 }]);
    const kelp = modules.find((row) => row.module.id === 'kelp') ?? expect.fail('no Kelp');
    expect(kelp.readings.map(readingWords)).toEqual(['nothing', 'nothing', 'nothing']);
    expect(deadWords(kelp)).toBe('no +12 V, −12 V and ground');
    const short = readingsWith(take, [{ type: 'module-short', module: 'kelp', lines: ['+5', 'GND'] }]);
    const foghorn = short.modules.find((row) => row.module.id === 'foghorn') ?? expect.fail('no Foghorn');
    expect(deadWords(foghorn)).toBe('+5 V pulled down');
  });

  it('tell each step where and how, with what to pull first', () => {
    const words = testWords({ type: 'measure', at: module('cobble-3'), line: '+12' }, take);
    expect(words.question).toBe(
      'Measure +12 V at Cobble 3, header shore, pins 6 and 7; black probe on a ground pin of Board 1. Is it there?',
    );
    expect(words.unplug).toBeUndefined();
    const l7 = take.wiring.ribbonById.get('l7') ?? expect.fail('no L7');
    const [atBoard, atKelp] = l7.uses.map(([joint]) => joint ?? expect.fail('no seat'));
    if (!atBoard || !atKelp) throw new Error('L7 has two seats');
    const pull = testWords({ type: 'unplug', seats: [atKelp], line: '+12' }, take);
    expect(pull.unplug).toBe('Pull L7 off Kelp.');
    expect(pull.question).toContain('in the freed connector of L7, contacts 9 and 10');
    const board = testWords({ type: 'unplug', seats: [atBoard], line: '+12' }, take);
    expect(board.unplug).toBe('Pull L7 off header 2 of Board 2.');
    expect(board.question).toContain('on the freed pins of header 2 of Board 2');
  });

  it('name every suspect and everything that can be broken apart from all others', () => {
    const seen = [{ test: { type: 'look', module: module('cobble-3') } as const, isThere: false }];
    const suspects = searchFault(take, seen).suspects.map(suspectWords);
    expect(new Set(suspects.map(({ place, what }) => `${place}: ${what}`)).size).toBe(suspects.length);
    for (const thing of breakThings(take)) {
      const places = thing.places();
      expect(new Set(places.map(({ label }) => label)).size).toBe(places.length);
      for (const { ways } of places) expect(new Set(ways.map(({ label }) => label)).size).toBe(ways.length);
    }
  });
});

describe('everything that can be broken', () => {
  it('is told, and does something to the case or is known to be felt by none', () => {
    let felt = 0;
    for (const thing of breakThings(take)) {
      for (const { ways } of thing.places()) {
        for (const { breakage } of ways.slice(0, 2)) {
          expect(breakageWords(breakage).what).not.toBe('');
          const defects = defectsOfBreakage(breakage, take);
          expect(defects.length).toBeGreaterThan(0);
          const { modules } = readingsWith(take, defects);
          if (modules.some(({ isDead, isTouched }) => isDead || isTouched)) felt++;
        }
      }
    }
    expect(felt).toBeGreaterThan(50);
  });

  it('stays what it is through an edit, and goes with what it is about', () => {
    const moved = derive((old) => ({
      ...old,
      modules: old.modules.map((each) => (each.id === 'kelp' ? { ...each, atHp: each.atHp + 1 } : each)),
    }));
    const gone = derive((old) => ({ ...old, ribbons: old.ribbons.filter(({ id }) => id !== 'l7') }));
    const l7 = breakThings(take).find(({ key }) => key === 'ribbon:l7') ?? expect.fail('no L7');
    for (const { breakage } of l7.places().flatMap(({ ways }) => ways)) {
      const now = renewBreakage(breakage, moved) ?? expect.fail('lost');
      expect(defectsOfBreakage(now, moved)).toEqual(defectsOfBreakage(breakage, take));
      expect(breakageWords(now)).toEqual(breakageWords(breakage));
      expect(renewBreakage(breakage, gone)).toBeUndefined();
    }
    const test = { type: 'look', module: module('kelp') } as const;
    expect(renewTest(test, moved)).toEqual({ type: 'look', module: moved.places.moduleById.get('kelp') });
  });
});
