import { useState } from 'react';
import { writeTable } from '../../src/stock.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { tableFile } from './table-text.ts';
import { useMyStock } from './use-my-stock.ts';

const FORMS = [
  { id: 'point', label: '12.5, cells apart by commas', mark: '.', delimiter: ',' },
  { id: 'comma', label: '12,5, cells apart by semicolons', mark: ',', delimiter: ';' },
] as const;

/** Kinds of module as a file that spreadsheets open. */
export function TableOut({ onSaid }: { readonly onSaid: (words: string) => void }) {
  const { platform } = useEditor();
  const layout = useLayout((present) => present);
  const { state } = useMyStock();
  const [form, setForm] = useState<(typeof FORMS)[number]['id']>('point');
  const [whose, setWhose] = useState<'layout' | 'stock'>('layout');
  const source = whose === 'stock' && state.is === 'open' ? state.stock.layout : layout;
  const { modules } = source.kit;
  const save = async (): Promise<void> => {
    const { mark, delimiter } = FORMS.find(({ id }) => id === form) ?? FORMS[0];
    const files = await platform.files();
    const text = tableFile(writeTable(source.kit, modules, mark), delimiter);
    const saved = await files.save(`${source.title}, kinds of module`, text, 'table');
    if (!saved.ok) onSaid(saved.error);
  };
  return (
    <section className="stock-part table-out">
      <header>
        <h3>To a spreadsheet</h3>
      </header>
      <div className="stock-deeds">
        <label className="choice">
          Kinds of
          <select
            className="field"
            value={whose}
            onChange={({ target }) => setWhose(target.value === 'stock' ? 'stock' : 'layout')}
          >
            <option value="layout">this layout</option>
            <option value="stock">my stock</option>
          </select>
        </label>
        <label className="choice">
          Numbers
          <select
            className="field"
            value={form}
            onChange={({ target }) => setForm(target.value === 'comma' ? 'comma' : 'point')}
          >
            {FORMS.map(({ id, label }) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="plain"
          aria-disabled={modules.length === 0}
          onClick={() => modules.length > 0 && void save()}
        >
          Save as a table…
        </button>
      </div>
      <p className="aside">
        Read again, such a file gives the same kinds. Text that a spreadsheet would take for a formula has an
        apostrophe before it.
      </p>
    </section>
  );
}
