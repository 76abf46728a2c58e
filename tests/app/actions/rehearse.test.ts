import { describe, expect, test } from 'vitest';
import { rehearse } from '../../../app/actions/rehearse.ts';
import { showTake } from '../../../app/actions/show-take.ts';
import { choicesOf } from '../../../app/by-list/item-choices.ts';
import { treeNow } from '../../../app/by-list/list-state.ts';
import { connectorId } from '../../../app/by-list/tree.ts';
import { shownAnalysis } from '../../../app/editor.ts';
import { selectionOf } from '../../../app/store/selection.ts';
import { Driver } from '../driver.ts';

const rehearsing = ({ editor }: Driver) => editor.session.getState().rehearsing;

describe('rehearsing', () => {
  test('the connector chosen, else the first one seated; nothing without a selection', () => {
    const driver = new Driver();
    const { session } = driver.editor;
    expect(rehearse.enabled(driver.editor)).toBe(false);
    session.setState({ selection: selectionOf('ribbon', ['t1']) });
    rehearse.run(driver.editor);
    // A plug of T2 sits in the first socket of T1.
    expect(rehearsing(driver)).toEqual({ ribbon: 't2', connector: 2 });
    session.setState({ connector: { ribbon: 't1', connector: 2 } });
    rehearse.run(driver.editor);
    expect(rehearsing(driver)).toEqual({ ribbon: 't1', connector: 2 });
  });

  test('of a module, its first header with a seat', () => {
    const driver = new Driver();
    const { session } = driver.editor;
    session.setState({ selection: selectionOf('module', ['gull-1']) });
    rehearse.run(driver.editor);
    expect(rehearsing(driver)).toEqual({ ribbon: 'l4', connector: 1 });
    showTake(driver.editor, 'one-long-jetty');
    session.setState({ selection: selectionOf('module', ['cobble-5']), rehearsing: null });
    rehearse.run(driver.editor);
    expect(rehearsing(driver)).toEqual({ ribbon: 's3', connector: 1 });
  });

  test('by list: at a connector, a header and a note that tells a mishap', () => {
    const driver = new Driver();
    showTake(driver.editor, 'one-long-jetty');
    const tree = treeNow(driver.editor);
    const note = shownAnalysis(driver.editor).notes.find(({ check }) => check === 'displaced');
    const ids = [
      connectorId('s1', 3),
      `header:${JSON.stringify(['module', 'cobble-3', 'shore'])}`,
      `note:${note?.key}`,
    ];
    for (const id of ids) {
      driver.editor.session.setState({ rehearsing: null });
      const branch = tree.byId.get(id);
      if (!branch) throw new Error(`no item ${id}`);
      const choice = choicesOf(driver.editor, branch, new Set()).choices.find(({ label }) =>
        label.startsWith('Rehearse'),
      );
      if (choice?.deed.type !== 'do') throw new Error(`nothing to rehearse at ${id}`);
      choice.deed.run();
      expect(rehearsing(driver)).toEqual({ ribbon: 's1', connector: 3 });
    }
  });
});
