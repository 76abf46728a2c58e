import { selectionKey } from '../canvas/model.ts';
import type { Editor } from '../editor.ts';
import { selectionOf } from '../store/selection.ts';
import { NOTHING } from '../store/session.ts';
import { treeNow } from './list-state.ts';
import { selectableOf } from './tree.ts';

/**
 * Opens what can be done with an item, beside a point of the window or of the stage, CSS px. The thing is selected
 * with it.
 * @param take - the label of the choice that is taken at once
 */
export function openChoices(
  editor: Editor,
  id: string,
  at: { readonly x: number; readonly y: number; readonly onStage?: true },
  take?: string,
): void {
  const branch = treeNow(editor).byId.get(id);
  if (!branch) return;
  const { session } = editor;
  const { selection: others } = session.getState();
  const thing = selectableOf(branch);
  const isSelected = thing && others.has(selectionKey(thing.type, thing.id));
  const { item } = branch;
  session.setState({
    choosing: { ...at, item: id, others: at.onStage ? others : NOTHING, ...(take && { take }) },
    ...(thing && !isSelected && { selection: selectionOf(thing.type, [thing.id]) }),
    connector: item.type === 'connector' ? { ribbon: item.ribbon.id, connector: item.connector } : null,
  });
}
