import { useMemo, useState } from 'react';
import {
  applyEdit,
  type Kit,
  type Layout,
  type ModuleKind,
  type OpenFact,
  unknownFactsOf,
} from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { duplicateKind, removalOf } from '../actions/kinds.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { countKinds, NO_USE, type Uses, usesWords } from '../kinds/count-kinds.ts';
import { factName, fieldOf } from '../kinds/fact-words.ts';
import { Problem } from '../kinds/field.tsx';
import { OpenFactList } from '../kinds/open-fact-list.tsx';
import { useOpenFacts } from '../kinds/use-open-facts.ts';
import { figure } from '../panels/figures.ts';
import { Icon } from '../panels/icon.tsx';
import { ModuleDrawing } from '../panels/kind-drawing.tsx';
import '../style/modules-page.css';

/** Which kinds are listed: all, by use, with something unknown, or those on a bus. */
type Filter = 'all' | 'used' | 'unused' | 'unknown' | `bus ${string}`;

const hasWords = ({ buses }: Kit, { name, notes = '', headers }: ModuleKind, find: string): boolean => {
  const words = find.trim().toLowerCase().split(/\s+/);
  const on = headers.map(({ bus }) => buses.find(({ id }) => id === bus)?.name ?? bus);
  const text = [name, notes, ...on].join(' ').toLowerCase();
  return words.every((word) => text.includes(word));
};

/** The kinds that are looked for. */
export function listedKinds(
  kit: Kit,
  counts: ReadonlyMap<string, Uses>,
  filter: Filter,
  find: string,
): readonly ModuleKind[] {
  const passes = (kind: ModuleKind): boolean => {
    switch (filter) {
      case 'all':
        return true;
      case 'used':
        return counts.has(kind.id);
      case 'unused':
        return !counts.has(kind.id);
      case 'unknown':
        return unknownFactsOf(kind).length > 0;
      default:
        return kind.headers.some(({ bus }) => filter === `bus ${bus}`);
    }
  };
  return kit.modules.filter((kind) => passes(kind) && hasWords(kit, kind, find));
}

const inSentence = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

/** What is not known of a kind, and whether the rest was guessed. */
export function unknownWords(kind: ModuleKind): string {
  const facts = unknownFactsOf(kind);
  const names = facts.filter(({ is }) => is !== 'guessed').map((fact) => factName(fact, kind));
  const first = names.length > 0 ? `Not known: ${names.map(inSentence).join(', ')}` : '';
  const guessed = facts.length > names.length ? 'Its figures are guessed' : '';
  return [first, guessed].filter(Boolean).join('. ');
}

interface RowProps {
  readonly kit: Kit;
  readonly layout: Layout;
  readonly kind: ModuleKind;
  readonly counts: Uses;
  readonly onRefusal: (words: string) => void;
}

/** One kind: what it looks like, how many there are, what is not known of it, and what can be done with it. */
function KindRow({ kit, layout, kind, counts, onRefusal }: RowProps) {
  const editor = useEditor();
  const { id, name, widthHp, owned } = kind;
  const inStock = { sort: 'module', kind: id } as const;
  const unknown = unknownFactsOf(kind);
  const removal = applyEdit(layout, removalOf(inStock));
  const pinsOf = (bus: string): number => kit.buses.find((known) => known.id === bus)?.pinout.length ?? 0;
  const refusal = removal.ok ? undefined : removal.error.message;
  const remove = (row: HTMLElement | null): void => {
    const next = (row?.nextElementSibling ?? row?.previousElementSibling)?.querySelector<HTMLElement>(
      '.open',
    );
    perform(editor, removalOf(inStock));
    editor.session.setState({ spoken: `${name} is out of the stock.` });
    requestAnimationFrame(() => (next ?? document.querySelector<HTMLElement>('.new-module'))?.focus());
  };
  return (
    <li>
      <button
        type="button"
        className="open"
        onClick={() => editor.session.setState({ kindDesk: { ...inStock, full: true } })}
      >
        <span className="picture">
          <ModuleDrawing kind={kind} pinsOf={pinsOf} />
        </span>
        <span className="words">
          <b>{name}</b>
          <small>
            {figure(widthHp)} HP · {kind.headers.length} header{kind.headers.length === 1 ? '' : 's'} ·{' '}
            {counts.takes.length === 0 ? 'in no take' : usesWords(counts.takes, '')}
            {owned !== undefined && ` · ${owned} owned`}
          </small>
          {unknown.length > 0 && <small>{unknownWords(kind)}</small>}
        </span>
      </button>
      <button
        type="button"
        className="quiet icon"
        aria-label={`Clone ${name}`}
        title="Clone: another kind like it"
        onClick={() => {
          const copy = duplicateKind(editor, inStock);
          if (copy) editor.session.setState({ spoken: `${copy} is in stock.` });
        }}
      >
        <Icon name="duplicate" />
      </button>
      <button
        type="button"
        className="quiet icon"
        aria-label={`Remove ${name}`}
        aria-disabled={refusal !== undefined}
        aria-description={refusal}
        title={refusal ?? 'Remove it from the kit'}
        onClick={({ currentTarget }) => {
          if (refusal) onRefusal(refusal);
          else remove(currentTarget.closest('li'));
        }}
      >
        <Icon name="remove" />
      </button>
    </li>
  );
}

/** Every kind of module in this layout's kit, and the facts that are worth finding out. */
export function ModulesPage() {
  const { session } = useEditor();
  const layout = useLayout((present) => present);
  const { kit } = layout;
  const [find, setFind] = useState('');
  const [filter, setFilter] = useState<Filter>('all');
  const [refusal, setRefusal] = useState<string>();
  const counts = useMemo(() => countKinds(layout), [layout]);
  const kinds = listedKinds(kit, counts, filter, find);
  const { facts, done } = useOpenFacts(layout);
  const lead = ({ kind, fact }: OpenFact): void =>
    session.setState({ kindDesk: { sort: 'module', kind: kind.id, full: true, at: fieldOf(fact) } });
  return (
    <div className="modules-page">
      <section aria-label="Kinds of module">
        <div className="finders">
          <label className="find">
            <Icon name="search" />
            <input
              type="search"
              placeholder="Find by name, bus or notes"
              aria-label="Find a kind of module"
              value={find}
              onChange={({ currentTarget: { value } }) => setFind(value)}
            />
          </label>
          <select
            className="field"
            aria-label="Which kinds"
            value={filter}
            onChange={({ currentTarget: { value } }) => setFilter(value as Filter)}
          >
            <option value="all">all kinds</option>
            <option value="used">in a take</option>
            <option value="unused">in no take</option>
            <option value="unknown">with unknown facts</option>
            <optgroup label="On a bus">
              {kit.buses.map(({ id, name }) => (
                <option key={id} value={`bus ${id}`}>
                  {name}
                </option>
              ))}
            </optgroup>
          </select>
          <button
            type="button"
            className="plain new-module"
            onClick={() => session.setState({ kindDesk: { sort: 'module', kind: null, full: true } })}
          >
            New kind…
          </button>
        </div>
        <div aria-live="polite">
          <p className="aside">
            {kinds.length === kit.modules.length
              ? `${kinds.length} kind${kinds.length === 1 ? '' : 's'}`
              : `${kinds.length} of ${kit.modules.length} kinds`}
          </p>
          <Problem id="modules-page-refusal" words={refusal} />
        </div>
        <ul className="kind-rows">
          {kinds.map((kind) => (
            <KindRow
              key={kind.id}
              {...{ kit, layout, kind }}
              counts={counts.get(kind.id) ?? NO_USE}
              onRefusal={setRefusal}
            />
          ))}
          {kinds.length === 0 && (
            <li className="none">
              {kit.modules.length === 0
                ? 'No modules in stock yet. Enter one with New kind…, or many at once with From a table.'
                : 'No such kind.'}
            </li>
          )}
        </ul>
      </section>
      <section className="to-find-out" aria-label="Facts to find out">
        <h3>Facts to find out</h3>
        <p className="aside">
          {done && facts.length === 0
            ? 'No note rests on an unknown or guessed fact.'
            : 'What is not known is not checked. Here is what notes rest on, worst first.'}
        </p>
        <OpenFactList facts={facts} naming onFact={lead} />
      </section>
    </div>
  );
}
