import { describe, expect, test } from 'vitest';
import { greet } from '../../../app/keep/greet.ts';
import { firstRecord } from '../../../app/keep/kept-layout.ts';
import { emptyLayout } from '../../../src/layout/starter.ts';
import { Driver } from '../driver.ts';
import { firstLayout } from './browser.ts';

const layout = { ...emptyLayout(), id: 'kept', title: 'Kept' };
const kept = { is: 'kept', layout, record: firstRecord(layout, 'kept', 1) } as const;

const banner = ({ editor }: Driver): string | null => editor.session.getState().banner;

describe('what the shelf says', () => {
  test('in time, nothing more happens', () => {
    const driver = new Driver(layout);
    expect(greet(driver.editor, kept)).toBe(kept.record);
    expect(banner(driver)).toBeNull();
  });

  test('late, it takes the place of a demo on which nothing was done', () => {
    const driver = new Driver(firstLayout('demo'));
    expect(greet(driver.editor, kept)).toBe(kept.record);
    expect(driver.editor.layouts.layout()).toBe(layout);
    expect(driver.steps).toBe(0);
  });

  test('late, it leaves alone what was done meanwhile', () => {
    const driver = new Driver(firstLayout('demo'));
    driver.editor.layouts.run({ type: 'rename-layout', title: 'Begun' });
    expect(greet(driver.editor, kept)).toBeNull();
    expect(driver.editor.layouts.layout().title).toBe('Begun');
    expect(banner(driver)).toContain('“Kept” is in My layouts');
  });

  test('what it could not give is told', () => {
    const driver = new Driver(firstLayout('demo'));
    greet(driver.editor, { is: 'unreadable', title: 'Old', why: 'too old' });
    expect(banner(driver)).toContain('“Old” could not be opened: too old');
    greet(driver.editor, { is: 'fault', fault: 'blocked' });
    expect(banner(driver)).toContain('keep nothing');
  });
});
