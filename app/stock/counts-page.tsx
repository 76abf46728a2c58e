import '../style/stock-own.css';
import { useEffect, useMemo, useState } from 'react';
import type { Mend, WholeTake } from '../../src/index.ts';
import { type Count, inventoryOf, leftOf, searchSubstitutes, shoppingFor, shortOf } from '../../src/stock.ts';
import { perform } from '../actions/action.ts';
import { useEditor, useLayout, useSession } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { analyse } from '../store/analysis.ts';
import { inSlices } from '../store/in-slices.ts';
import { takeOf } from '../store/shown.ts';
import { counted } from './kind-words.ts';
import { Said } from './said.tsx';

const SORTS: readonly (readonly [sort: Count['sort'], title: string])[] = [
  ['module', 'Modules'],
  ['ribbon', 'Ribbons'],
  ['lead', 'Leads'],
];

const price = (value: number): string => figure(value, 2);

function leftWords(count: Count): string {
  const left = leftOf(count);
  if (left === undefined) return 'not counted';
  return left < 0 ? `${-left} short` : `${left} left`;
}

function costWords(count: Count): string {
  if (shortOf(count) === 0) return '';
  return count.price === undefined ? 'price unknown' : price(shortOf(count) * count.price);
}

/** What could take the place of one of a kind that is short; `null` while it is looked for. */
function useSubstitutes(derived: WholeTake, { id, sort }: Count): readonly Mend[] | null {
  const editor = useEditor();
  const [found, setFound] = useState<{ derived: WholeTake; mends: readonly Mend[] } | null>(null);
  useEffect(() => {
    if (sort === 'module') return undefined;
    return inSlices(editor, searchSubstitutes(derived, id), (mends) => setFound({ derived, mends }));
  }, [editor, derived, id, sort]);
  if (sort === 'module') return [];
  return found?.derived === derived ? found.mends : null;
}

interface ShortProps {
  readonly count: Count;
  readonly derived: WholeTake;
  readonly onExchange: (mend: Mend) => void;
}

/** A kind that is short: what it costs to buy, and what is owned and would fit in its place. */
function Short({ count, derived, onExchange }: ShortProps) {
  const substitutes = useSubstitutes(derived, count);
  const cost = costWords(count);
  return (
    <li className="offer">
      <p className="offer-head">
        <b>{count.name}</b>
        <small>
          {shortOf(count)} short: {count.used} used, {count.owned} owned · to buy: {cost}
        </small>
      </p>
      {substitutes === null && <p className="none">Looking for what is owned and would fit…</p>}
      {substitutes?.length === 0 && (
        <p className="none">
          {count.sort === 'module'
            ? 'Only another one will do.'
            : 'Nothing else that is owned and free would fit.'}
        </p>
      )}
      {substitutes && substitutes.length > 0 && (
        <div className="offer-deeds">
          {substitutes.map((mend) => (
            <button key={mend.label} type="button" className="plain" onClick={() => onExchange(mend)}>
              {mend.label}
            </button>
          ))}
        </div>
      )}
    </li>
  );
}

function summaryOf(counts: readonly Count[], name: string): string {
  const { pieces, cost, unpriced } = shoppingFor(counts);
  const uncounted = counts.filter(({ used, owned }) => used > 0 && owned === undefined).length;
  const notCounted = uncounted > 0 ? ` ${counted(uncounted, 'kind')} in use: nobody has counted.` : '';
  if (pieces === 0) return `${name} needs nothing that is counted and not owned.${notCounted}`;
  const known = pieces - unpriced;
  const costs = known === 0 ? 'prices are not known' : `buying costs ${price(cost)}`;
  const more = known > 0 && unpriced > 0 ? `, and ${unpriced} of unknown price besides` : '';
  return `${counted(pieces, 'piece')} short; ${costs}${more}.${notCounted}`;
}

/** What a take uses of everything, against what is owned. */
export function CountsPage() {
  const editor = useEditor();
  const layout = useLayout((present) => present);
  const shown = useSession(({ take }) => take);
  const [chosen, setChosen] = useState<string | null>(null);
  const [all, setAll] = useState(false);
  const [said, setSaid] = useState('');
  const take = takeOf(layout, chosen ?? shown);
  const { derived } = analyse(layout.kit, take);
  const counts = useMemo(() => inventoryOf(derived), [derived]);
  const short = counts.filter((count) => shortOf(count) > 0);
  const exchange = ({ label, edit }: Mend): void => {
    perform(editor, edit);
    setSaid(`Done: ${label}. One undo takes it back.`);
  };
  return (
    <>
      <div className="stock-deeds">
        <label className="choice">
          Take
          <select className="field" value={take.id} onChange={({ target }) => setChosen(target.value)}>
            {layout.takes.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label className="choice">
          <input type="checkbox" checked={all} onChange={({ target }) => setAll(target.checked)} />
          Kinds that it does not use, too
        </label>
      </div>
      <Said words={said} />
      <p className="summary">{summaryOf(counts, take.name)}</p>
      {short.length > 0 && (
        <section className="stock-part">
          <header>
            <h3>Short</h3>
          </header>
          <ul className="offers">
            {short.map((count) => (
              <Short
                key={`${count.sort} ${count.id}`}
                count={count}
                derived={derived}
                onExchange={exchange}
              />
            ))}
          </ul>
        </section>
      )}
      {SORTS.map(([sort, title]) => {
        const rows = counts.filter((count) => count.sort === sort && (all || count.used > 0));
        if (rows.length === 0) return null;
        return (
          <section key={sort} className="stock-part">
            <table className="counts">
              <thead>
                <tr>
                  <th scope="col">{title}</th>
                  <th scope="col">Used</th>
                  <th scope="col">Owned</th>
                  <th scope="col">Left</th>
                  <th scope="col">One costs</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((count) => (
                  <tr key={count.id} className={shortOf(count) > 0 ? 'short' : undefined}>
                    <th scope="row">{count.name}</th>
                    <td>{count.used}</td>
                    <td>{count.owned ?? '–'}</td>
                    <td>{leftWords(count)}</td>
                    <td>{count.price === undefined ? '–' : price(count.price)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        );
      })}
      <p className="aside">
        Each take is counted by itself: takes are alternatives, and so are layouts. How many of a kind you own
        is told with the kind, and shared by way of My stock.
      </p>
    </>
  );
}
