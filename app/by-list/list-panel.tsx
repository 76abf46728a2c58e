import '../style/by-list.css';
import {
  type FocusEvent,
  type KeyboardEvent,
  type MouseEvent,
  memo,
  useCallback,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { createPortal } from 'react-dom';
import { useStore } from 'zustand';
import { layOutSheet } from '../../src/index.ts';
import { perform, start } from '../actions/action.ts';
import { labelRibbon } from '../actions/label-ribbon.ts';
import { remove } from '../actions/remove.ts';
import { removeParts } from '../actions/remove-part.ts';
import { isKeyOf } from '../actions/shortcuts.ts';
import { showList } from '../actions/show-list.ts';
import { turn } from '../actions/turn.ts';
import { selectionKey } from '../canvas/model.ts';
import type { Editor } from '../editor.ts';
import { useAnalysis, useEditor, useGesture, useSession } from '../hooks.ts';
import { Icon, LevelMark } from '../panels/icon.tsx';
import { isTyping } from '../platform/keyboard.ts';
import { reveal } from '../store/focus-note.ts';
import { selectionOf } from '../store/selection.ts';
import { sheetNow, viewportNow } from '../store/view.ts';
import { listKeysOf } from '../tools/list-keys.ts';
import { toggled } from '../tools/pick.ts';
import { doAndTell } from './choice.ts';
import { isBehind, itemBox } from './item-box.ts';
import { fullName, sayItem, wordsOf } from './item-words.ts';
import { goTo, listOf, stand, standingIn, treeFor } from './list-state.ts';
import { openChoices } from './open-choices.ts';
import { type Branch, connectorId, selectableOf, type Tree } from './tree.ts';
import { shownIn, standOn, stepBy, trailOf, typeTo, withShut } from './walk-tree.ts';

/** Letters that follow one another sooner make one word, ms. */
const TYPING_MS = 700;

/** Shorter lists are on the page as a whole; of longer ones so many rows at a time, from every so many on. */
const WHOLE = 160;
const STRIDE = 40;

/** Up to so many modules the rows start open. */
const MOST_OPEN = 60;

const NOTHING_TYPED = { text: '', forget: (): void => {} };

const canSelect = (branch: Branch): boolean =>
  ['row', 'module', 'ribbon', 'board'].includes(branch.item.type);

interface RowProps {
  readonly tree: Tree;
  readonly branch: Branch;
  readonly top: number;
  readonly isHere: boolean;
  readonly isOpen: boolean;
  readonly isSelected: boolean | undefined;
}

/** One line of the list; what the drawing shows of the item is its name. */
const ListRow = memo(function ListRow({ tree, branch, top, isHere, isOpen, isSelected }: RowProps) {
  const { name, facts, brief, wrong } = wordsOf(tree, branch);
  const { children, level, place, parent, item, id } = branch;
  const hasMore = children.length > 0;
  return (
    <div
      role="treeitem"
      tabIndex={isHere ? 0 : -1}
      data-id={id}
      data-type={item.type === 'note' ? item.note.level : item.type}
      aria-label={[name, ...facts].join(', ')}
      aria-level={level}
      aria-posinset={place + 1}
      aria-setsize={(parent?.children ?? tree.roots).length}
      aria-expanded={hasMore ? isOpen : undefined}
      aria-selected={isSelected}
      style={{ top, paddingLeft: 2 + 15 * (level - 1) }}
    >
      <span className="twig" aria-hidden="true">
        {hasMore && <Icon name="chevron" />}
        {item.type === 'note' && <LevelMark level={item.note.level} />}
      </span>
      <b>{name}</b>
      {/* In a few words, for the eye alone: its name has all of them. */}
      <span className="facts" data-words={brief} />
      <span className="wrong" data-words={wrong} />
      {isHere && (
        <button
          type="button"
          className="choices"
          tabIndex={-1}
          aria-label="What can be done"
          title="What can be done (Enter)"
        >
          <Icon name="more" />
        </button>
      )}
    </div>
  );
});

/** A frame on the drawing around the item on which the list stands. */
function Frame({ branch }: { readonly branch: Branch | undefined }) {
  const editor = useEditor();
  const { derived } = useAnalysis();
  const side = useSession((session) => session.side);
  useSession(({ viewport, stage }) => viewport ?? stage);
  const isMoved = useGesture(({ running }) => running) && branch?.item.type === 'module';
  const { x, y, scale } = viewportNow(editor);
  const sheet = useMemo(() => layOutSheet(derived, side, scale), [derived, side, scale]);
  const host = document.querySelector('.stage');
  const isHidden = isMoved || !branch || (side === 'front' && isBehind(branch));
  const box = isHidden ? undefined : itemBox(sheet, derived, branch);
  if (!box || !host) return null;
  const { left, top, right, bottom } = box;
  return createPortal(
    <div
      className="list-frame"
      aria-hidden="true"
      style={{
        transform: `translate(${x + left}px,${y + top}px)`,
        width: right - left,
        height: bottom - top,
      }}
    />,
    host,
  );
}

/** Turns the case to where the item is drawn, lifts a ribbon above the others, and brings it into sight. */
function showOnDrawing(editor: Editor, tree: Tree, branch: Branch): void {
  const { session } = editor;
  const { item } = branch;
  if (isBehind(branch) && session.getState().side === 'front') {
    start(editor, turn);
    session.setState({ spoken: 'The case is turned to its rear.' });
  }
  const lifted = item.type === 'ribbon' || item.type === 'connector' ? item.ribbon.id : null;
  const cursor = item.type === 'module' ? item.module.id : session.getState().cursor;
  if (session.getState().lifted !== lifted || session.getState().cursor !== cursor)
    session.setState({ lifted, cursor });
  const box = itemBox(sheetNow(editor), tree.derived, branch);
  if (box) reveal(editor, { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 });
}

/** Selects the thing of an item alone, unless it is selected already; a connector is chosen with its ribbon. */
function selectOnly(editor: Editor, branch: Branch): void {
  const { session } = editor;
  const thing = selectableOf(branch);
  if (!thing) return;
  const { item } = branch;
  const isSelected = session.getState().selection.has(selectionKey(thing.type, thing.id));
  session.setState({
    ...(!isSelected && { selection: selectionOf(thing.type, [thing.id]) }),
    connector: item.type === 'connector' ? { ribbon: item.ribbon.id, connector: item.connector } : null,
  });
}

/** Takes an item out of the take, or lifts what sits there; a note is put away. */
function removeItem(editor: Editor, tree: Tree, branch: Branch): void {
  const { item } = branch;
  const name = fullName(tree, branch);
  if (item.type === 'module' || item.type === 'ribbon' || item.type === 'connector') {
    selectOnly(editor, branch);
    const words = item.type === 'connector' ? `${name} is free.` : `${name} removed.`;
    doAndTell(
      editor,
      () => start(editor, remove),
      () => words,
    );
  } else if (item.type === 'row') removeParts(editor, [{ type: 'row', part: item.row.row }]);
  else if (item.type === 'board') removeParts(editor, [{ type: 'board', part: item.board.board }]);
  else if (item.type === 'supply') removeParts(editor, [{ type: 'supply', part: item.supply }]);
  else if (item.type === 'note' && item.note.level !== 'damage' && !item.note.accepted) {
    const { take, key, facts, headline } = item.note;
    doAndTell(
      editor,
      () => perform(editor, { type: 'accept-finding', take, key, facts }),
      () => `Put away: ${headline}.`,
    );
  }
}

const isCoarse = (): boolean => matchMedia('(pointer: coarse)').matches;

/** First row of the part of a long list that is on the page. */
const firstOf = (scrollTop: number, rowPx: number): number =>
  Math.max(0, Math.floor(scrollTop / rowPx / STRIDE) * STRIDE - STRIDE);

/** All that is in the take as a list for keys, hands and ears: one tab stop, a frame on the drawing where it stands. */
export function ListPanel() {
  const editor = useEditor();
  const { session } = editor;
  const analysis = useAnalysis();
  const tree = treeFor(analysis);
  const list = listOf(editor);
  const state = useStore(list);
  const selection = useSession((now) => now.selection);
  const connector = useSession((now) => now.connector);
  const box = useRef<HTMLDivElement>(null);
  const hasKeys = useRef(false);
  const before = useRef<Element | null>(null);
  const typed = useRef(NOTHING_TYPED);
  const [first, setFirst] = useState(0);
  const text = useSession(({ stage }) => stage.text);
  const rowPx = (isCoarse() ? 44 : 28) * text;
  const keys = listKeysOf(editor);

  const here = standingIn(tree, state);
  const standing = useMemo(() => (here ? standOn(state, here) : state), [state, here]);
  const shown = useMemo(() => shownIn(tree, standing.open), [tree, standing.open]);
  const at = here ? shown.indexOf(here) : -1;

  // It opens on what is selected, with the rows open where that is not too much.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when it opens.
  useLayoutEffect(() => {
    before.current = document.activeElement;
    const { places } = tree.derived;
    const isNew = list.getState().at === '';
    const rows = isNew && places.modules.length <= MOST_OPEN ? tree.roots.map(({ id }) => id) : [];
    const open = isNew ? new Set(rows.filter((id) => id.startsWith('row:'))) : list.getState().open;
    const [key] = session.getState().selection;
    const branch = (key && tree.byId.get(key)) || standingIn(tree, list.getState()) || tree.roots[0];
    if (branch) stand(editor, tree, standOn({ at: branch.id, open }, branch));
    hasKeys.current = true;
    return () => {
      if (session.getState().lifted !== null) session.setState({ lifted: null });
    };
  }, []);

  // What lies around it may have changed: for the day when it goes.
  useEffect(() => {
    const { at: id } = list.getState();
    if (tree.byId.has(id)) list.setState({ trail: trailOf(tree, id) });
  }, [tree, list]);

  // What is selected on the drawing is where the list stands, unless the keys are in the list.
  useEffect(() => {
    if (hasKeys.current) return;
    const [key, ...more] = selection;
    if (key && more.length === 0)
      goTo(editor, connector ? connectorId(connector.ribbon, connector.connector) : key);
  }, [editor, selection, connector]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the keys follow where it stands, and come back when its row is made anew.
  useLayoutEffect(() => {
    const element = box.current;
    if (!element || at < 0) return;
    const top = at * rowPx;
    if (top < element.scrollTop) element.scrollTop = top;
    else if (top + rowPx > element.scrollTop + element.clientHeight)
      element.scrollTop = top + rowPx - element.clientHeight;
    if (!hasKeys.current) return;
    const active = document.activeElement;
    const isElsewhere = active !== document.body && active !== before.current && !element.contains(active);
    const row = element.querySelector<HTMLElement>('[tabindex="0"]');
    if (row && active !== row && !isElsewhere) row.focus({ preventScroll: true });
    before.current = null;
  }, [here?.id, at, tree]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of the take is no reason to move the drawing.
  useEffect(() => {
    if (here && hasKeys.current) showOnDrawing(editor, tree, here);
  }, [here?.id]);

  const branchOf = useCallback(
    (target: EventTarget): Branch | undefined => {
      const row = target instanceof Element ? target.closest<HTMLElement>('[role=treeitem]') : null;
      return row?.dataset.id === undefined ? undefined : tree.byId.get(row.dataset.id);
    },
    [tree],
  );

  const openAt = (
    branch: Branch,
    point?: { readonly x: number; readonly y: number },
    label?: string,
  ): void => {
    const row = box.current?.querySelector<HTMLElement>('[tabindex="0"]');
    const rect = row?.getBoundingClientRect();
    openChoices(editor, branch.id, point ?? { x: (rect?.left ?? 0) + 24, y: rect?.bottom ?? 0 }, label);
  };

  const toggle = (branch: Branch): void => {
    const isOpen = standing.open.has(branch.id);
    const open = isOpen ? withShut(standing.open, branch.id) : new Set([...standing.open, branch.id]);
    stand(editor, tree, { at: branch.id, open });
  };

  const select = (branch: Branch): void => {
    const thing = selectableOf(branch);
    if (!thing || !canSelect(branch)) return;
    const key = selectionKey(thing.type, thing.id);
    const next = toggled(session.getState().selection, key);
    session.setState({
      selection: next,
      connector: null,
      spoken: `${fullName(tree, branch)} ${next.has(key) ? 'selected' : 'no longer selected'}; ${next.size} in all.`,
    });
  };

  const close = (): void => {
    start(editor, showList);
    document.querySelector<HTMLElement>('.by-list')?.focus({ preventScroll: true });
  };

  const type = (letter: string): void => {
    typed.current.forget();
    const text = typed.current.text + letter;
    const forget = editor.platform.clock.after(TYPING_MS, () => {
      typed.current = NOTHING_TYPED;
    });
    typed.current = { text, forget };
    const found = here && typeTo(shown, here.id, text, (branch) => wordsOf(tree, branch).name);
    if (found) stand(editor, tree, { at: found.id, open: standing.open });
  };

  /** Whether the key meant something to the list. */
  const press = (event: KeyboardEvent<HTMLElement>, branch: Branch): boolean => {
    const { key, shiftKey } = event;
    const { keys: chosenKeys } = session.getState();
    if (keys.isCarrying()) return keys.press(event);
    if (event.ctrlKey || event.metaKey || event.altKey) {
      if (event.key === 'd') selectOnly(editor, branch);
      return false;
    }
    if (key === 'Enter') {
      if (['ribbons', 'take', 'reminders', 'put-away'].includes(branch.item.type)) toggle(branch);
      else openAt(branch);
    } else if (key === 'ContextMenu' || (key === 'F10' && shiftKey)) openAt(branch);
    else if (key === ' ' && typed.current.text === '') select(branch);
    else if (key.length > 1 && isKeyOf(remove, event, chosenKeys)) removeItem(editor, tree, branch);
    else if (key.length > 1 && isKeyOf(labelRibbon, event, chosenKeys)) openAt(branch, undefined, 'Label…');
    else if (key === 'Escape') {
      const { inHand, focus, connector: chosen, selection: selected } = session.getState();
      if (inHand !== null || focus !== null || chosen !== null || selected.size > 0) return false;
      close();
    } else {
      const next = stepBy(tree, shown, { at: branch.id, open: standing.open }, key);
      if (next) {
        typed.current.forget();
        typed.current = NOTHING_TYPED;
        stand(editor, tree, next);
      } else if (key.length === 1) type(key);
      else return false;
    }
    return true;
  };

  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    if (!here || isTyping(event.target)) return;
    if (!press(event, here)) return;
    event.preventDefault();
    event.stopPropagation();
  };

  const onClick = (event: MouseEvent<HTMLElement>): void => {
    const { target } = event;
    const branch = branchOf(target);
    if (!branch || !(target instanceof Element)) return;
    if (target.closest('.choices')) openAt(branch, { x: event.clientX, y: event.clientY });
    else if (target.closest('.twig') && branch.children.length > 0) toggle(branch);
    else {
      stand(editor, tree, { at: branch.id, open: standing.open });
      const thing = selectableOf(branch);
      if (thing && (event.ctrlKey || event.metaKey || event.shiftKey)) select(branch);
      else if (thing) {
        session.setState({ selection: selectionOf(thing.type, [thing.id]), connector: null });
        selectOnly(editor, branch);
      }
    }
  };

  const onContextMenu = (event: MouseEvent<HTMLElement>): void => {
    event.preventDefault();
    const branch = branchOf(event.target);
    if (!branch || session.getState().choosing) return;
    stand(editor, tree, { at: branch.id, open: standing.open });
    openAt(branch, event.clientX > 0 ? { x: event.clientX, y: event.clientY } : undefined);
  };

  const onBlur = ({ relatedTarget, currentTarget }: FocusEvent<HTMLElement>): void => {
    if (!(relatedTarget instanceof Element) || currentTarget.contains(relatedTarget)) return;
    hasKeys.current = false;
    keys.leave();
  };

  const from = shown.length <= WHOLE ? 0 : first;
  const to = shown.length <= WHOLE ? shown.length : first + 4 * STRIDE;
  const onPage = shown.slice(from, to).map((branch, i): readonly [Branch, number] => [branch, from + i]);
  // The row that has the keys stays, however far the list is scrolled; among the others, so that it keeps its element.
  if (here && at >= 0 && at < from) onPage.unshift([here, at]);
  if (here && at >= to) onPage.push([here, at]);
  const row = (branch: Branch, i: number) => (
    <ListRow
      key={branch.id}
      tree={tree}
      branch={branch}
      top={i * rowPx}
      isHere={branch === here}
      isOpen={standing.open.has(branch.id)}
      isSelected={canSelect(branch) ? selection.has(branch.id as `row:${string}`) : undefined}
    />
  );
  return (
    <section className="list-panel" aria-label="By list">
      <div className="list-head">
        <h2>By list</h2>
        <button type="button" className="plain" onClick={close}>
          Done
        </button>
      </div>
      <div
        ref={box}
        role="tree"
        aria-label="Everything in this take"
        aria-multiselectable="true"
        className="tree"
        onKeyDown={onKeyDown}
        onClick={onClick}
        onContextMenu={onContextMenu}
        onFocus={() => {
          hasKeys.current = true;
        }}
        onBlur={onBlur}
        onScroll={({ currentTarget }) => setFirst(firstOf(currentTarget.scrollTop, rowPx))}
      >
        <div role="none" style={{ height: shown.length * rowPx }}>
          {onPage.map(([branch, i]) => row(branch, i))}
        </div>
      </div>
      <p className="list-detail" aria-hidden="true">
        {here ? `${sayItem(tree, here)}.` : ''} <small>Enter: what can be done. Space: select.</small>
      </p>
      <Frame branch={here} />
    </section>
  );
}
