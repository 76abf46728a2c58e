import fc from 'fast-check';
import type { Kit, Module, Take } from '../../src/layout/layout.ts';
import { rackOf } from './rack-of.ts';

const HP_WIDE = 5;

/**
 * Racks of eight to thirteen modules in one row, with gaps between them, one to three hosts, voices with and without a
 * power header, four to seven kinds of ribbon, counted and priced, three to twelve headers of a board; too large to try
 * every wiring.
 */
export const middleRacks: fc.Arbitrary<{ readonly kit: Kit; readonly take: Take }> = fc
  .record({
    gaps: fc.array(fc.constantFrom(0, 0, 0, 0.5, 1, 2), { minLength: 8, maxLength: 13 }),
    mutes: fc.uniqueArray(fc.nat(12), { maxLength: 4 }),
    hosts: fc.uniqueArray(fc.nat(7), { minLength: 1, maxLength: 3 }),
    kinds: fc.uniqueArray(fc.nat(8), { minLength: 2, maxLength: 5 }),
    stock: fc.array(fc.record({ owned: fc.nat(3), price: fc.integer({ min: 1, max: 5 }) }), {
      minLength: 12,
      maxLength: 12,
    }),
    membersPerHost: fc.integer({ min: 2, max: 9 }),
    boardHeaders: fc.integer({ min: 3, max: 12 }),
  })
  .map(({ gaps, mutes, hosts, kinds, stock, membersPerHost, boardHeaders }) => {
    const { kit, take } = rackOf(10);
    const [voice] = kit.modules;
    const [shore, power] = kit.buses;
    if (!voice || !shore || !power) throw new Error('rackOf has changed');
    let atHp = 0;
    const modules = gaps.map((gap, i): Module => {
      const kind = hosts.includes(i) ? 'collector' : mutes.includes(i) ? 'mute' : 'voice';
      const module = { id: `m${i}`, kind, row: 'row-0', atHp: atHp + gap };
      atHp += gap + HP_WIDE;
      return module;
    });
    const leads = [9, 10];
    const ribbons = kit.ribbons
      .filter((_, i) => kinds.includes(i) || leads.includes(i))
      .map((ribbon, i) => ({ ...ribbon, ...stock[i] }));
    const mute = { ...voice, id: 'mute', headers: voice.headers.slice(0, 1) };
    return {
      kit: {
        ...kit,
        modules: [...kit.modules, mute],
        ribbons,
        buses: [{ ...shore, membersPerHost }, power],
      },
      take: {
        ...take,
        modules,
        supplies: take.supplies.map((supply) => ({
          ...supply,
          boards: supply.boards.map((board) => ({ ...board, headers: board.headers.slice(0, boardHeaders) })),
        })),
      },
    };
  });
