import {
  type KeyboardEvent,
  type ReactNode,
  type SubmitEvent,
  useEffect,
  useId,
  useRef,
  useState,
} from 'react';
import {
  applyEdit,
  type Bus,
  type Edit,
  type Kit,
  type Layout,
  lossWords as lossLines,
  lossOf,
  type ModuleKind,
  type RibbonKind,
} from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { Icon } from '../panels/icon.tsx';
import { isLead } from '../store/leads.ts';
import { Problem } from './field.tsx';
import { lossWords, lostBy } from './loss.ts';
import type { Problems } from './typed.ts';

/** The kit with the buses that were made in the form and are in no layout yet. */
export function useKitInForm(): readonly [kit: Kit, made: readonly Bus[], add: (bus: Bus) => void] {
  const kit = useLayout((layout) => layout.kit);
  const [made, setMade] = useState<readonly Bus[]>([]);
  const add = (bus: Bus): void => setMade([...made, bus]);
  return [made.length > 0 ? { ...kit, buses: [...kit.buses, ...made] } : kit, made, add];
}

/** Which problems are shown: those of fields that were left, and all of them once it was to be kept. */
export function useTold<Field extends string>(problems: Problems<Field>) {
  const [left, setLeft] = useState<ReadonlySet<Field>>(new Set());
  const [all, setAll] = useState(false);
  return {
    told: (field: Field): string | undefined => (all || left.has(field) ? problems[field] : undefined),
    leave: (field: Field) => (): void => setLeft((before) => new Set(before).add(field)),
    tellAll: (): void => setAll(true),
  };
}

type Kind = ModuleKind | RibbonKind;

const busesUsed = (kind: Kind): ReadonlySet<string> =>
  new Set('lay' in kind ? [kind.bus] : kind.headers.map(({ bus }) => bus));

function editFor(kind: Kind, isNew: boolean): Edit {
  if ('lay' in kind) return { type: isNew ? 'add-ribbon-kind' : 'change-ribbon-kind', kind };
  return { type: isNew ? 'add-module-kind' : 'change-module-kind', kind };
}

/** The kind and the buses made for it, in one step. */
export function stepFor(kind: Kind, isNew: boolean, made: readonly Bus[]): Edit {
  const used = busesUsed(kind);
  const buses = made.filter(({ id }) => used.has(id)).map((bus): Edit => ({ type: 'add-bus', bus }));
  const edit = editFor(kind, isNew);
  if (buses.length === 0) return edit;
  return { type: 'several', label: `${isNew ? 'make' : 'change'} ${kind.name}`, edits: [...buses, edit] };
}

/** Making a kind is saying that it is mine. */
async function keepInMyStock(editor: Editor, kind: Kind): Promise<void> {
  const { keepMade } = await import('../stock/keep-made.ts');
  await keepMade(editor, [{ sort: 'lay' in kind ? 'ribbon' : 'module', id: kind.id }]);
}

interface Props {
  readonly title: string;
  readonly kind: Kind | null;
  readonly before: Kind | undefined;
  readonly made: readonly Bus[];
  readonly tellAll: () => void;
  /** Beside the fields; absent: the children lie in columns of their own. */
  readonly preview?: ReactNode;
  /** Something was typed that would be lost on leaving: it is asked before. */
  readonly unsaved?: boolean;
  /** Stands with the buttons. */
  readonly aside?: ReactNode;
  /** The kind is kept; its id. */
  readonly onKept?: (id: string) => void;
  readonly children: ReactNode;
}

const WRONG = '[aria-invalid]';

/** What a change would take along, take by take. */
const linesOfLoss = (layout: Layout, step: Edit): readonly string[] =>
  layout.takes.flatMap(({ id, name }) =>
    lossLines(lossOf(layout, id, step)).map((line) => (layout.takes.length > 1 ? `${name}: ${line}` : line)),
  );

/** The form's frame: Enter or its button keeps the kind, Escape leaves everything as it was. */
export function KindForm({
  title,
  kind,
  before,
  made,
  tellAll,
  preview,
  unsaved = false,
  aside,
  onKept,
  children,
}: Props) {
  const editor = useEditor();
  const { layouts, session } = editor;
  const layout = useLayout((present) => present);
  const [refusal, setRefusal] = useState<string>();
  const [leaving, setLeaving] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const id = useId();
  const isNew = before === undefined;
  const close = (): void => session.setState({ kindDesk: null });
  const leave = (): void => (unsaved && !leaving ? setLeaving(true) : close());
  const step = kind && stepFor(kind, isNew, made);
  const loss = step && !isNew ? lossWords(lostBy(layout, applyEdit(layout, step))) : undefined;

  useEffect(() => {
    const first = form.current?.querySelector<HTMLElement>('.fields input, .fields select');
    first?.focus();
  }, []);
  useEffect(() => {
    if (!unsaved) setLeaving(false);
  }, [unsaved]);

  const kept = (now: Kind, { kit }: Layout): void => {
    if (isNew) void keepInMyStock(editor, now);
    const shelf = 'lay' in now ? (isLead(now, kit) ? 'leads' : 'ribbons') : 'modules';
    const spoken = isNew ? `${now.name} is in stock.` : `${now.name} is changed.`;
    onKept?.(now.id);
    session.setState({ kindDesk: null, trayFilter: shelf, trayFind: '', spoken });
    const key = `${'lay' in now ? 'ribbon' : 'module'}:${now.id}`;
    requestAnimationFrame(() =>
      document
        .querySelector(`[data-kind="${CSS.escape(key)}"]`)
        ?.scrollIntoView({ inline: 'nearest', block: 'nearest' }),
    );
  };
  /** Says what would be lost; answered with yes, the change is made and the form goes. */
  const ask = (now: Kind, edit: Edit, lines: readonly string[]): void => {
    session.setState({ asked: { edit, question: `Change ${before?.name ?? now.name}?`, lines } });
    const end = session.subscribe(({ asked }) => {
      if (asked) return;
      end();
      if (layouts.layout() !== layout) kept(now, layouts.layout());
    });
  };

  const keep = (event: SubmitEvent): void => {
    event.preventDefault();
    if (!kind || !step) {
      tellAll();
      setRefusal(undefined);
      requestAnimationFrame(() => form.current?.querySelector<HTMLElement>(WRONG)?.focus());
      return;
    }
    const lines = isNew ? [] : linesOfLoss(layout, step);
    if (lines.length > 0) {
      ask(kind, step, lines);
      return;
    }
    const done = layouts.run(step);
    if (done.ok) kept(kind, done.value);
    else setRefusal(done.error);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.defaultPrevented || !unsaved || leaving) return;
    event.preventDefault();
    setLeaving(true);
  };

  return (
    <form ref={form} noValidate onSubmit={keep} onKeyDown={onKeyDown}>
      <header>
        <h2>{title}</h2>
        <button type="button" className="quiet icon" aria-label="Close" title="Close (Esc)" onClick={leave}>
          <Icon name="close" />
        </button>
      </header>
      {preview === undefined ? (
        <div className="body columns">{children}</div>
      ) : (
        <div className="body">
          <div className="fields">{children}</div>
          <div className="preview">{preview}</div>
        </div>
      )}
      <footer>
        <div className="words" aria-live="polite">
          <Problem id={`${id}-refusal`} words={refusal} />
          {leaving ? (
            <small>What you changed is not kept yet. Leave again to leave it.</small>
          ) : (
            loss && <small>{loss}</small>
          )}
        </div>
        {aside}
        <button type="button" className="quiet" onClick={leave}>
          {leaving ? 'Leave it' : 'Cancel'}
        </button>
        <button type="submit" className="do">
          {isNew ? 'Put in stock' : 'Change'}
        </button>
      </footer>
    </form>
  );
}
