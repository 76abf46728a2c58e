import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../src/checks/catalogue.ts';
import { LEVELS, type Note } from '../../src/checks/check.ts';
import { checkLayout } from '../../src/checks/check-layout.ts';
import { drawnChecks } from '../../src/checks/drawn-checks.ts';
import { checks } from '../../src/checks/index.ts';
import { spotsOf } from '../../src/checks/spots.ts';
import { openDocument } from '../../src/document.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';

const FOLDER = new URL('../../src/checks/rules/', import.meta.url);

/** The catalogue of the design, in its order. */
const CATALOGUE = `overlap off-row wrong-height too-deep over-board wrong-connector lines-differ free-pins
  double-seat loose-end wrong-axis looks-away crossed displaced off-pitch out-of-line short-ribbon tight-bend
  no-clearance ribbons-clash crowded stripe-reversed key-against foreign-voltage stripe-side spare-connectors
  lead-short over-members two-hosts no-host split-member unlinked unknown-facts guessed-data unpowered
  missing-voltage double-feed joined-supplies overload low-headroom board-overload contact-overload low-voltage
  ground-shift`.split(/\s+/);

const found = (layout: Layout, check: string): Note[] =>
  checkLayout(layout).flatMap(({ notes }) => notes.filter((note) => note.check === check));

describe('the list of checks', () => {
  it('names every file of the folder once, each file after its check', () => {
    const files = readdirSync(FOLDER).map((file) => file.replace(/\.ts$/, ''));
    expect([...checks].map(({ id }) => id).sort()).toEqual(files.sort());
  });

  it('begins with those that need no computation of currents', () => {
    expect(checks.slice(0, drawnChecks.length)).toEqual(drawnChecks);
    for (const { id } of drawnChecks) {
      const text = readFileSync(new URL(`${id}.ts`, FOLDER), 'utf8');
      expect(text, id).not.toMatch(/electrical|load-words/);
    }
  });

  it('is the catalogue, in the order in which findings are listed', () => {
    expect(checks.map(({ id }) => id)).toEqual(CATALOGUE);
    expect(Object.keys(catalogue)).toEqual(CATALOGUE);
  });
});

describe.each(checks.map((check) => [check.id, check] as const))('%s', (id, check) => {
  const { about, examples } = catalogue[id] ?? expect.fail(`${id} is not in the catalogue`);
  const { good, bad } = examples;

  it('says what it protects against and where it comes from', () => {
    expect(about.why.length).toBeGreaterThan(20);
    expect(about.source.length).toBeGreaterThan(10);
    expect(about.title.length).toBeGreaterThan(5);
    expect(LEVELS).toContain(check.level);
  });

  it('shows two drawings that open', () => {
    for (const layout of [good(), bad()]) expect(openDocument(layout)).toEqual({ ok: true, value: layout });
  });

  it('finds nothing in the drawing just inside the rule', () => {
    expect(found(good(), id)).toEqual([]);
  });

  it('finds the one thing in the drawing just outside', () => {
    const notes = found(bad(), id);
    expect(notes.map((note) => note.level)).toEqual([check.level]);
    const { kit, takes } = bad();
    for (const note of notes) {
      const { message, remedy, key } = note;
      expect(message).toMatch(/^[\p{L}\d\u2212].*[.]$/u);
      expect(message).not.toMatch(/undefined|NaN|\[object/);
      expect(remedy).toMatch(/[.]$/);
      expect(key.startsWith(`${id}/`)).toBe(true);
      const take = takes.find((each) => each.id === note.take);
      expect(take && spotsOf(note, deriveTake(kit, take)).length).toBeGreaterThan(0);
    }
  });
});
