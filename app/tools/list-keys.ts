import { selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { type Arrow, alongOf, rowsOf } from '../store/arrows.ts';
import { selectionOf } from '../store/selection.ts';
import { sheetNow } from '../store/view.ts';
import { createCarry } from './carry.ts';
import { createRibbonKeys } from './ribbon-keys.ts';
import { walk } from './walk.ts';

interface ListKey {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/**
 * Keys on the list of modules. Arrows walk from module to module while nothing is selected; Enter picks one
 * up, arrows then move it, Enter puts it down and Escape puts it back. A ribbon that alone is selected has them first.
 */
export interface ListKeys {
  /** Whether the key meant something here. */
  press(key: ListKey): boolean;
  /**
   * The pointer was used: what the keys carry is put back, and the space bar is the hand's that moves the sheet,
   * until the keys walk again.
   */
  pointed(): void;
  /** The list lost the keys. */
  leave(): void;
  /** Whether something is being carried: arrows move it, Enter puts it down, Escape puts it back. */
  isCarrying(): boolean;
  /** Picks a module up, a ribbon to be slid, or one of its connectors; selected, whatever was selected before. */
  pickUp(what: PickUp): void;
}

type PickUp = { readonly module: string } | { readonly ribbon: string; readonly connector?: number };

const ARROWS: Readonly<Record<string, Arrow>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

export function createListKeys(editor: Editor): ListKeys {
  const { session } = editor;
  const carry = createCarry(editor);
  const onRibbon = createRibbonKeys(editor);
  let walked = false;

  const putBack = (): void => {
    carry.cancel();
    onRibbon.cancel();
  };

  /** What is carried is known as it was when it was picked up: what another hand changes meanwhile puts it back. */
  let isOwn = false;
  editor.layouts.store.subscribe((now, then) => {
    if (!isOwn && now.history.present !== then.history.present) putBack();
  });

  const onCarry = ({ key, altKey, shiftKey }: ListKey): boolean => {
    const arrow = ARROWS[key];
    if (arrow) carry.step(rowsOf(arrow), alongOf(editor, arrow) * (altKey ? 0.5 : 1), shiftKey);
    else if (key === 'Enter' || key === ' ') carry.drop();
    else if (key === 'Escape') carry.cancel();
    else return false;
    return true;
  };

  const onRibbonCarry = ({ key }: ListKey): boolean => {
    const arrow = ARROWS[key];
    if (arrow) onRibbon.step(arrow);
    else if (key === 'Enter' || key === ' ') onRibbon.drop();
    else if (key === 'Escape') onRibbon.cancel();
    else return false;
    return true;
  };

  const onWalk = (arrow: Arrow): void => {
    walked = true;
    const { modules } = shownAnalysis(editor).derived.places;
    session.setState({ cursor: walk(sheetNow(editor), modules, session.getState().cursor, arrow) });
  };

  const pick = (): boolean => {
    const { cursor, selection } = session.getState();
    if (cursor === null || !shownAnalysis(editor).derived.places.moduleById.has(cursor)) return false;
    if (!selection.has(selectionKey('module', cursor))) {
      session.setState({ selection: selectionOf('module', [cursor]) });
    }
    carry.pick(cursor);
    return true;
  };

  const onKey = (press: ListKey): boolean => {
    if (carry.isCarrying()) return onCarry(press);
    if (onRibbon.isCarrying()) return onRibbonCarry(press);
    const arrow = ARROWS[press.key];
    if (arrow ? onRibbon.choose(arrow) : press.key === 'Enter' && onRibbon.pick()) return true;
    if (press.key === 'Enter' || (press.key === ' ' && walked)) return pick();
    if (!arrow || session.getState().selection.size > 0) return false;
    onWalk(arrow);
    return true;
  };

  return {
    press(press) {
      isOwn = true;
      const isMeant = onKey(press);
      isOwn = false;
      return isMeant;
    },
    pointed() {
      walked = false;
      carry.cancel();
      onRibbon.cancel();
    },
    leave: putBack,
    isCarrying: () => carry.isCarrying() || onRibbon.isCarrying(),
    pickUp(what) {
      if ('module' in what) {
        const { selection } = session.getState();
        const isSelected = selection.has(selectionKey('module', what.module));
        session.setState({
          cursor: what.module,
          ...(!isSelected && { selection: selectionOf('module', [what.module]) }),
        });
        carry.pick(what.module);
        return;
      }
      const { ribbon, connector } = what;
      session.setState({
        selection: selectionOf('ribbon', [ribbon]),
        connector: connector === undefined ? null : { ribbon, connector },
      });
      onRibbon.pick();
    },
  };
}

const shared = new WeakMap<Editor, ListKeys>();

/** The keys that the drawing and By list share: what one of them picks up the other can put down. */
export function listKeysOf(editor: Editor): ListKeys {
  const known = shared.get(editor) ?? createListKeys(editor);
  shared.set(editor, known);
  return known;
}
