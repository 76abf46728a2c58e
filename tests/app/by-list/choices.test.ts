import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Choice, Page } from '../../../app/by-list/choice.ts';
import { choicesOf, firstGap } from '../../../app/by-list/item-choices.ts';
import { flatWays, freeEndsFor } from '../../../app/by-list/lay-choices.ts';
import { listOf, standingIn, treeNow } from '../../../app/by-list/list-state.ts';
import { openChoices } from '../../../app/by-list/open-choices.ts';
import { connectorId, headerId } from '../../../app/by-list/tree.ts';
import { shownAnalysis } from '../../../app/editor.ts';
import { applyEdit, berthOn, checkTake, deriveTake, type Layout } from '../../../src/index.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import { arbitraryLayout } from '../../support/arbitrary-layout.ts';
import { runs } from '../../support/runs.ts';
import { Driver } from '../driver.ts';

const NOBODY: ReadonlySet<string> = new Set();

/** What can be done with an item, as when its menu is opened. */
function pageOf(driver: Driver, id: string): Page {
  openChoices(driver.editor, id, { x: 0, y: 0 });
  const branch = treeNow(driver.editor).byId.get(id);
  if (!branch) throw new Error(`no item ${id}`);
  return choicesOf(driver.editor, branch, NOBODY);
}

const labels = ({ choices }: Page): string[] => choices.map(({ label }) => label);

function find({ choices }: Page, label: RegExp): Choice {
  const found = choices.find((choice) => label.test(choice.label));
  if (!found) throw new Error(`no choice ${label}`);
  return found;
}

function more(page: Page, label: RegExp): Page {
  const { deed } = find(page, label);
  if (deed.type !== 'more') throw new Error(`${label} leads nowhere`);
  return deed.page();
}

const moduleHeader = (module: string, header: string): string =>
  `header:${JSON.stringify(['module', module, header])}`;

/** The demo's first take without ribbons. */
const bare = (...kept: string[]): Layout => {
  const layout = demoLayout();
  const [first, ...others] = layout.takes;
  if (!first) throw new Error('no take');
  const ribbons = first.ribbons.filter(({ id }) => kept.includes(id));
  return { ...layout, takes: [{ ...first, ribbons }, ...others] };
};

describe('what can be done', () => {
  test('every edit that is offered for anything can be carried out, and leaves a take that can be judged', () => {
    const property = (layout: Layout, pick: number): void => {
      const driver = new Driver(layout);
      const ids = [...treeNow(driver.editor).byId.keys()];
      const id = ids[pick % ids.length];
      if (id === undefined) return;
      const page = pageOf(driver, id);
      const all = page.choices.flatMap((choice) =>
        choice.deed.type === 'more' && choice.off === undefined ? choice.deed.page().choices : [choice],
      );
      for (const { deed, off, label } of all) {
        expect(label).not.toBe('');
        if (deed.type !== 'edit' || off !== undefined) continue;
        const done = applyEdit(layout, deed.edit);
        if (!done.ok) throw new Error(`${id}: ${label}: ${done.error.message}`);
        const take = done.value.takes[0];
        if (take) expect(() => checkTake(deriveTake(done.value.kit, take))).not.toThrow();
      }
    };
    fc.assert(fc.property(arbitraryLayout, fc.nat(), property), runs(150));
  });

  test('a free header: the lead that feeds it, ribbons that land, the owned ones first', () => {
    const driver = new Driver(bare());
    const feed = find(pageOf(driver, moduleHeader('harbour', 'power')), /^Feed it from Board 1, header \d$/);
    expect(feed.words).toMatch(/^Lead 16-way, \d+ mm; \d+ mm needed, \d+ mm there; 3 left in the stock$/);
    const lay = more(pageOf(driver, moduleHeader('jetty-c', 'shore')), /^Lay a ribbon/);
    const [first] = lay.choices;
    expect(first?.label).toBe('Shore, 3 at 5 HP');
    expect(first?.under).toBe('To the left, seen from the rear');
    expect(first?.words).toBe(
      '3 of 3 connectors would land, on Jetty C, Cobble 5 and Cobble 6; 1 left in the stock',
    );
    expect(lay.choices.some(({ under }) => under === 'To the right, seen from the rear')).toBe(false);
  });

  test('directions are the screen’s of the rear: the module laid to stands there', () => {
    const driver = new Driver(bare());
    const { derived } = shownAnalysis(driver.editor);
    for (const module of derived.places.modules) {
      const header = module.headers.find(({ bus }) => bus.bus.id === 'shore');
      if (!header) continue;
      for (const { laying, under } of flatWays(derived, berthOn(header))) {
        const others = laying.landings.filter(({ on }) => on && on.type === 'header' && on.header !== header);
        // Seen from the rear, what stands further right on the front is further left.
        const left = under === 'To the left, seen from the rear';
        for (const { xMm } of others) expect(xMm > header.xMm).toBe(left);
      }
    }
  });

  test('a laid ribbon is one step; words tell how it landed', () => {
    const driver = new Driver(bare());
    const id = moduleHeader('jetty-a', 'shore');
    const lay = more(pageOf(driver, id), /^Lay a ribbon/);
    const choice = lay.choices[0];
    if (choice?.deed.type !== 'edit') throw new Error('nothing to lay');
    driver.editor.layouts.run(choice.deed.edit);
    expect(driver.steps).toBe(1);
    expect(choice.deed.said(driver.editor)).toMatch(/^S1 laid: \d of \d connectors land/);
    expect(labels(pageOf(driver, id))).toEqual([
      'Lift connector 5 of S1',
      'Rehearse a wrong plug…',
      'S1, connector 5',
      'Jetty A',
    ]);
  });

  test('a free socket takes a plug, of a new ribbon or of one that lies there', () => {
    const driver = new Driver(bare('t1'));
    const socket = connectorId('t1', 0);
    const plugged = more(pageOf(driver, socket), /^Plug a ribbon into it/);
    expect(plugged.choices.map(({ label }) => label)).toContain('Tide, extension');
    expect(labels(pageOf(driver, socket))).not.toContain('Plug a free plug into it…');
    const ribbon = { id: 't2', kind: 'tide-more', label: 'T2', seats: [] };
    const layout = bare('t1');
    const [take, ...others] = layout.takes;
    if (!take) throw new Error('no take');
    const loose = new Driver({
      ...layout,
      takes: [{ ...take, ribbons: [...take.ribbons, ribbon] }, ...others],
    });
    const free = more(pageOf(loose, socket), /^Plug a free plug into it/);
    expect(labels(free)).toEqual(['Connector 3 of T2']);
    const t1 = shownAnalysis(loose.editor).derived.wiring.ribbonById.get('t1');
    if (!t1) throw new Error('no ribbon');
    expect(freeEndsFor(loose.editor, { type: 'connector', ribbon: t1, connector: 0 })).toMatchObject([
      { ribbon: 't2', connector: 2 },
    ]);
  });

  test('a locked ribbon offers what is held fast with the reason', () => {
    const driver = new Driver(bare('s1'));
    const take = driver.take.id;
    driver.editor.layouts.run({ type: 'lock-ribbon', take, ribbons: ['s1'], locked: true });
    expect(find(pageOf(driver, connectorId('s1', 3)), /^Lift it/).off).toBe('S1 is locked');
    expect(find(pageOf(driver, 'ribbon:s1'), /^Exchange/).off).toBe('S1 is locked');
    expect(labels(pageOf(driver, 'ribbon:s1'))).toContain('Unlock');
  });

  test('opening it selects the thing, but not instead of several of which it is one', () => {
    const driver = new Driver();
    pageOf(driver, headerId(shownAnalysis(driver.editor).derived.places.modules[0]?.headers[0] as never));
    expect(driver.selection).toEqual(['module:harbour']);
    driver.editor.session.setState({ selection: new Set(['module:harbour', 'module:kelp']) });
    pageOf(driver, 'module:kelp');
    expect(driver.selection).toEqual(['module:harbour', 'module:kelp']);
    pageOf(driver, connectorId('s1', 2));
    expect(driver.selection).toEqual(['ribbon:s1']);
    expect(driver.editor.session.getState().connector).toEqual({ ribbon: 's1', connector: 2 });
  });

  test('a new module finds the first gap that is wide enough', () => {
    const { places } = shownAnalysis(new Driver().editor).derived;
    const [upper, lower] = places.rows;
    if (!upper || !lower) throw new Error('no rows');
    expect(firstGap(places.modules, lower, 30)).toBe(0);
    expect(firstGap(places.modules, upper, 8)).toBe(96);
    expect(firstGap(places.modules, upper, 2)).toBe(70);
    expect(firstGap([], upper, 200)).toBe(0);
  });

  test('the list goes to where a choice leads, and opens what it lies in', () => {
    const driver = new Driver();
    const to = find(pageOf(driver, connectorId('s1', 3)), /^Cobble 1, shore$/);
    if (to.deed.type !== 'do') throw new Error('leads nowhere');
    to.deed.run();
    const state = listOf(driver.editor).getState();
    expect(standingIn(treeNow(driver.editor), state)?.id).toBe(moduleHeader('cobble-1', 'shore'));
    expect([...state.open].sort()).toEqual(['module:cobble-1', 'row:upper']);
  });
});
