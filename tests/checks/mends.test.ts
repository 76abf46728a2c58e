import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Mend, Note } from '../../src/checks/check.ts';
import { checks } from '../../src/checks/index.ts';
import { remedies } from '../../src/checks/remedies/index.ts';
import { mendsOf } from '../../src/checks/remedies/mends-of.ts';
import { checkTake } from '../../src/checks/run.ts';
import { openDocument } from '../../src/document.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { deepFreeze } from '../support/deep-freeze.ts';
import { runs } from '../support/runs.ts';
import { layoutWithLeads } from '../support/with-leads.ts';

/** Checks that ask for a look, for facts or for a decision: nothing that the program could do for anybody. */
const WITHOUT = [
  'free-pins',
  'foreign-voltage',
  'stripe-side',
  'spare-connectors',
  'unknown-facts',
  'guessed-data',
  'overload',
  'low-headroom',
];

function done(layout: Layout, { edit, label }: Mend): Layout {
  const result = applyEdit(layout, edit);
  if (!result.ok) throw new Error(`${label}: ${result.error.message}`);
  return result.value;
}

const notesIn = (layout: Layout, take: string): readonly Note[] => {
  const found = layout.takes.find(({ id }) => id === take);
  return found ? checkTake(deriveTake(layout.kit, found)) : [];
};

describe('the list of remedies', () => {
  it('has one for every check that a program can do something about', () => {
    const ids = checks.map(({ id }) => id);
    expect([...Object.keys(remedies), ...WITHOUT].sort()).toEqual([...ids].sort());
  });
});

describe('any mend of any note', () => {
  /** What one property after the other needs, for each mend of a layout. */
  function eachMend(
    layout: Layout,
    judge: (note: Note, mend: Mend, before: readonly Note[], after: readonly Note[]) => void,
  ): Set<string> {
    const mended = new Set<string>();
    for (const take of layout.takes) {
      const derived = deriveTake(layout.kit, take);
      const before = checkTake(derived);
      for (const note of before) {
        const mends = mendsOf(derived, note);
        expect(mends.length, note.headline).toBeLessThanOrEqual(3);
        expect(new Set(mends.map(({ label }) => label)).size, note.headline).toBe(mends.length);
        for (const mend of mends) {
          const after = done(layout, mend);
          expect(openDocument(after).ok, mend.label).toBe(true);
          judge(note, mend, before, notesIn(after, take.id));
          mended.add(note.check);
        }
      }
    }
    return mended;
  }

  it('is carried out, makes its note go, brings no new damage, and says in plain words what it does', () => {
    const mended = new Set<string>();
    const property = fc.property(fc.oneof(arbitraryLayout, layoutWithLeads), (layout) => {
      const found = eachMend(deepFreeze(layout), (note, mend, before, after) => {
        const damage = (notes: readonly Note[]): number =>
          notes.filter(({ level }) => level === 'damage').length;
        const severe = (notes: readonly Note[]): number =>
          notes.filter(({ level }) => level !== 'reminder').length;
        expect(
          after.map(({ key }) => key),
          `${note.headline}: ${mend.label}`,
        ).not.toContain(note.key);
        expect(damage(after), `${note.headline}: ${mend.label}`).toBeLessThanOrEqual(
          damage(before) - (note.level === 'damage' ? 1 : 0),
        );
        if (note.level === 'fault')
          expect(severe(after), `${note.headline}: ${mend.label}`).toBeLessThan(severe(before));
        const worse = after.filter(
          ({ key, level }) => level === 'damage' && !before.some((old) => old.key === key),
        );
        for (const { check, subjects, message } of worse) {
          const known = before.some(
            (old) =>
              old.check === check &&
              subjects.every(({ type, id }) =>
                old.subjects.some((each) => each.type === type && each.id === id),
              ),
          );
          expect(known, `${note.headline}: ${mend.label} brings ${message}`).toBe(true);
        }
        expect(mend.label).toMatch(/^[A-Z\p{L}].*[^.]$/u);
        expect(`${mend.label} ${mend.why ?? ''}`).not.toMatch(/undefined|NaN|\[object|Infinity| {2}/);
      });
      for (const check of found) mended.add(check);
    });
    fc.assert(property, runs(40));
    expect([...mended].length, 'checks of which one note or more was mended').toBeGreaterThan(15);
  }, 60_000);

  it('is the same each time', () => {
    const labels = (layout: Layout): string[] =>
      layout.takes.flatMap((take) => {
        const derived = deriveTake(layout.kit, take);
        return checkTake(derived).flatMap((note) => mendsOf(derived, note).map(({ label }) => label));
      });
    fc.assert(
      fc.property(arbitraryLayout, (layout) => {
        expect(labels(structuredClone(layout))).toEqual(labels(layout));
      }),
      runs(10),
    );
  });
});
