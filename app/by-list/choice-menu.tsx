import '../style/by-list.css';
import { type KeyboardEvent, type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { Edit } from '../../src/index.ts';
import { start } from '../actions/action.ts';
import type { Editor } from '../editor.ts';
import { useEditor, useSession } from '../hooks.ts';
import { Icon } from '../panels/icon.tsx';
import { isNarrow } from '../store/view.ts';
import { type Choice, doAndTell, type Page } from './choice.ts';
import { ChoiceForm } from './choice-form.tsx';
import { choicesOf } from './item-choices.ts';
import { goTo, treeNow } from './list-state.ts';
import { createPreview } from './preview.ts';

/** Room to the edges of the window, px. */
const EDGE_PX = 8;

/** Beside a point, and wholly within the window; on a narrow one at its foot, so that the drawing stays in sight. */
function useBeside(ref: RefObject<HTMLElement | null>, page: unknown): void {
  const choosing = useSession((session) => session.choosing);
  const stage = useSession((session) => session.stage);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another page is of another size.
  useLayoutEffect(() => {
    const menu = ref.current;
    if (!menu || !choosing) return;
    if (!menu.matches(':popover-open')) menu.showPopover();
    const { offsetWidth, offsetHeight } = menu;
    const within = (at: number, size: number, room: number): number =>
      Math.max(EDGE_PX, Math.min(at, room - size - EDGE_PX));
    if (isNarrow(stage)) return;
    const origin = choosing.onStage ? document.querySelector('.stage')?.getBoundingClientRect() : undefined;
    menu.style.left = `${within((origin?.left ?? 0) + choosing.x, offsetWidth, innerWidth)}px`;
    menu.style.top = `${within((origin?.top ?? 0) + choosing.y, offsetHeight, innerHeight)}px`;
  }, [ref, choosing, stage, page]);
}

/**
 * Keys that do it without the menu, as printed. Single letters find things in the list, so that only keys that type
 * nothing are told.
 */
function useKeysFor({ keysOf, deed }: Choice): string | undefined {
  const of = keysOf ?? (deed.type === 'action' ? deed.action : undefined);
  const printed = useSession(({ printKeys }) => of && printKeys?.(of));
  return printed && printed.length > 1 ? printed : undefined;
}

interface ItemProps {
  readonly choice: Choice;
  readonly onTake: (choice: Choice) => void;
  readonly onShow: (choice: Choice) => void;
}

function ChoiceItem({ choice, onTake, onShow }: ItemProps) {
  const { label, words, off, deed } = choice;
  const keys = useKeysFor(choice);
  return (
    <button
      type="button"
      role="menuitem"
      tabIndex={-1}
      aria-disabled={off !== undefined || undefined}
      aria-describedby="choice-foot"
      aria-haspopup={deed.type === 'more' ? 'menu' : deed.type === 'fields' ? 'dialog' : undefined}
      onFocus={() => onShow(choice)}
      onPointerEnter={({ pointerType }) => pointerType === 'mouse' && onShow(choice)}
      onClick={() => onTake(choice)}
    >
      <span className="what">
        {label}
        {(off ?? words) && <small>{off ?? words}</small>}
      </span>
      {keys && <kbd>{keys}</kbd>}
      {deed.type === 'more' && (
        <span className="onward">
          <Icon name="chevron" />
        </span>
      )}
    </button>
  );
}

interface Group {
  readonly under: string | undefined;
  readonly choices: readonly Choice[];
}

/** Choices in their order, those under one heading together. */
function inGroups(choices: readonly Choice[]): readonly Group[] {
  const groups = new Map<string | undefined, Choice[]>();
  for (const choice of choices) {
    const there = groups.get(choice.under);
    if (there) there.push(choice);
    else groups.set(choice.under, [choice]);
  }
  return [...groups].map(([under, list]) => ({ under, choices: list }));
}

/** The keys go back to where they were, or to where the list stands when that is gone. */
function giveBack(opener: Element | null): void {
  const isThere = opener instanceof HTMLElement && opener.isConnected && opener !== document.body;
  const to = isThere
    ? opener
    : (document.querySelector<HTMLElement>('[role=treeitem][tabindex="0"]') ??
      document.querySelector<HTMLElement>('.by-list'));
  to?.focus({ preventScroll: true });
}

interface Step {
  readonly page: Page;
  /** The choice that is being typed into. */
  readonly typing?: Choice;
}

/** What can be done with an item: chosen by keys or by hand, shown on the drawing before it is done. */
export function ChoiceMenu() {
  const editor = useEditor();
  const { session } = editor;
  const choosing = useSession((state) => state.choosing);
  const [steps, setSteps] = useState<readonly Step[]>(() => {
    const branch = choosing && treeNow(editor).byId.get(choosing.item);
    if (!branch) return [];
    const page = choicesOf(editor, branch, choosing.others);
    const typing = choosing.take && page.choices.find(({ label }) => label === choosing.take);
    return [{ page }, ...(typing ? [{ page, typing }] : [])];
  });
  const [found, setFound] = useState<readonly Choice[] | null>(null);
  const [preview] = useState(() => createPreview(editor));
  const [opener] = useState(() => document.activeElement);
  const ref = useRef<HTMLElement>(null);
  const foot = useRef<HTMLParagraphElement>(null);
  const step = steps.at(-1);
  const page = step?.page;
  useBeside(ref, `${steps.length} ${found?.length}`);

  const leave = (): void => {
    preview.drop();
    session.setState({ choosing: null });
  };
  const close = (): void => {
    leave();
    giveBack(opener);
  };

  const first = steps[0]?.page;
  useEffect(() => {
    return first?.later?.((choices) => {
      setFound(choices);
      const n = choices.length;
      session.setState({ spoken: `${n === 0 ? 'No' : n} ${n === 1 ? 'remedy' : 'remedies'} found.` });
    });
  }, [first, session]);

  // Another page takes the keys to its first choice.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when the page changes.
  useEffect(() => {
    if (!step) close();
    else if (!step.typing)
      (
        ref.current?.querySelector<HTMLElement>('[role=menuitem]') ??
        ref.current?.querySelector<HTMLElement>('[role=menu]')
      )?.focus();
  }, [step]);

  // Elsewhere pressed, or gone to: nothing is done.
  useEffect(() => {
    const outside = ({ target }: Event): void => {
      if (!ref.current?.contains(target as Node)) {
        preview.drop();
        session.setState({ choosing: null });
      }
    };
    document.addEventListener('pointerdown', outside, { capture: true });
    return () => {
      document.removeEventListener('pointerdown', outside, { capture: true });
      preview.drop();
    };
  }, [preview, session]);

  if (!choosing || !step || !page) return null;

  const tell = (words: string): void => {
    if (foot.current) foot.current.textContent = words;
  };
  const show = ({ deed }: Choice): void => {
    preview.show(deed.type === 'edit' ? deed.edit : null);
    const shown = editor.gestures.get();
    tell(deed.type === 'edit' && shown && deed.shows ? deed.shows(shown) : '');
  };
  const carryOut = (edit: Edit, said: (editor: Editor) => string, then?: string): void => {
    const before = editor.layouts.layout();
    leave();
    doAndTell(
      editor,
      () => preview.keep(edit),
      () => (editor.layouts.layout() === before ? 'Nothing changed.' : said(editor)),
    );
    if (then) goTo(editor, then);
    giveBack(opener);
  };
  const back = (): void => {
    preview.drop();
    if (steps.length === 1) close();
    else setSteps(steps.slice(0, -1));
  };
  const take = (choice: Choice): void => {
    const { deed } = choice;
    if (choice.off !== undefined) return;
    preview.drop();
    if (deed.type === 'edit') carryOut(deed.edit, deed.said, deed.goTo);
    else if (deed.type === 'more') setSteps([...steps, { page: deed.page() }]);
    else if (deed.type === 'fields') setSteps([...steps, { page, typing: choice }]);
    else {
      close();
      if (deed.type === 'action') start(editor, deed.action);
      else deed.run();
    }
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    event.stopPropagation();
    const { key } = event;
    const stop = (): void => event.preventDefault();
    if (key === 'Escape' || key === 'Tab') {
      stop();
      if (key === 'Tab') close();
      else back();
      return;
    }
    const items = [...event.currentTarget.querySelectorAll<HTMLElement>('[role=menuitem]')];
    const now = items.indexOf(document.activeElement as HTMLElement);
    const ends: Record<string, number> = {
      ArrowDown: (now + 1) % items.length,
      ArrowUp: (now - 1 + items.length) % items.length,
      Home: 0,
      End: items.length - 1,
    };
    const to = ends[key];
    if (to !== undefined) {
      stop();
      items[to]?.focus();
    } else if (key === 'ArrowLeft') {
      stop();
      if (steps.length > 1) back();
    } else if (key === 'ArrowRight' && items[now]?.ariaHasPopup) {
      stop();
      items[now]?.click();
    } else if (key.length === 1 && key !== ' ' && !event.ctrlKey && !event.metaKey) {
      const starts = (item: HTMLElement): boolean =>
        item.textContent?.toLowerCase().startsWith(key.toLowerCase()) === true;
      [...items.slice(now + 1), ...items.slice(0, now + 1)].find(starts)?.focus();
    }
  };

  const isFirst = steps.length === 1;
  const [head, ...rest] = page.choices;
  const isByFinger = choosing.onStage && matchMedia('(hover: none)').matches;
  const every = isFirst && found && head ? [head, ...found, ...rest] : page.choices;
  const all = isByFinger ? every.filter(({ byKeys }) => !byKeys) : every;
  const waits = isFirst && page.later && !found;
  const items = ({ choices }: Group) =>
    choices.map((choice, i) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: two choices may bear one label, and none of them changes places.
      <ChoiceItem key={`${i} ${choice.label}`} choice={choice} onTake={take} onShow={show} />
    ));
  return (
    <section ref={ref} popover="manual" aria-label="What can be done" className="sheet-pop choice-menu">
      <div className="choice-head">
        {!isFirst && (
          <button type="button" className="quiet icon" aria-hidden="true" tabIndex={-1} onClick={back}>
            <Icon name="chevron" />
          </button>
        )}
        <b>{step.typing ? step.typing.label.replace('…', '') : page.title}</b>
      </div>
      {page.says && (
        <p id="choice-says" className="aside">
          {page.says}
        </p>
      )}
      {step.typing ? (
        <ChoiceForm choice={step.typing} onDone={carryOut} onLeave={back} preview={preview} />
      ) : (
        <div
          role="menu"
          aria-label={page.title}
          aria-describedby={page.says && 'choice-says'}
          tabIndex={-1}
          onKeyDown={onKeyDown}
        >
          {inGroups(all).map((group) =>
            group.under === undefined ? (
              items(group)
            ) : (
              // biome-ignore lint/a11y/useSemanticElements: a menu may hold groups, but no fieldsets.
              <div key={group.under} role="group" aria-label={group.under}>
                <small className="under" aria-hidden="true">
                  {group.under}
                </small>
                {items(group)}
              </div>
            ),
          )}
        </div>
      )}
      {all.length === 0 && !step.typing && <p className="aside">{page.none}</p>}
      {waits && <p className="aside">{page.waiting}</p>}
      {!step.typing && <p ref={foot} id="choice-foot" className="aside choice-foot" />}
    </section>
  );
}
