import { describe, expect, test } from 'vitest';
import { start } from '../../../app/actions/action.ts';
import { actions } from '../../../app/actions/index.ts';
import { actionFor } from '../../../app/actions/shortcuts.ts';
import { toggleHeat } from '../../../app/actions/toggle-heat.ts';
import { Driver } from '../driver.ts';

function press({ editor }: Driver, key: string): void {
  const none = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };
  start(editor, actionFor(actions, { ...none, key }) ?? expect.fail(`no action for ${key}`));
}

const foldOf = ({ editor }: Driver) => editor.session.getState().fold;

describe('the power panel', () => {
  test('opens and shuts with V, and takes the place of the case', () => {
    const driver = new Driver();
    press(driver, 'c');
    press(driver, 'v');
    expect(foldOf(driver)).toBe('power');
    press(driver, 'v');
    expect(foldOf(driver)).toBeNull();
  });

  test('is let go before the selection', () => {
    const driver = new Driver();
    driver.click(driver.on('gull-1'));
    press(driver, 'v');
    press(driver, 'Escape');
    expect([foldOf(driver), driver.selection]).toEqual([null, ['module:gull-1']]);
    press(driver, 'Escape');
    expect(driver.selection).toEqual([]);
  });

  test('gives way to By list', () => {
    const driver = new Driver();
    press(driver, 'v');
    press(driver, 'i');
    expect(foldOf(driver)).toBeNull();
    expect(driver.editor.session.getState().listOpen).toBe(true);
  });
});

describe('the heat map', () => {
  test('shows the first voltage and says the worst of it; then it goes', async () => {
    const { editor } = new Driver();
    await toggleHeat.run(editor);
    expect(editor.session.getState().heat).toBe('+12');
    expect(editor.session.getState().spoken).toMatch(
      /^Heat map of \+12 V\. .* loses most, 21 mV of 250 allowed\.$/,
    );
    expect(toggleHeat.label(editor)).toBe('Hide the heat map');
    await toggleHeat.run(editor);
    expect(editor.session.getState().heat).toBeNull();
  });
});
