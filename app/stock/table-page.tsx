import '../style/stock-own.css';
import { type DragEvent, useDeferredValue, useId, useMemo, useState } from 'react';
import { applyEdit, type Kit, type Result } from '../../src/index.ts';
import {
  type Cells,
  choicesFor,
  type ReadRow,
  type RowChoice,
  readTable,
  seemsHeaded,
  tableEdit,
} from '../../src/stock.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { lossWords, lostBy } from '../kinds/loss.ts';
import { BadCells } from './bad-cells.tsx';
import { ColumnList } from './column-list.tsx';
import { keepMade } from './keep-made.ts';
import { counted } from './kind-words.ts';
import { ReadPreview } from './read-preview.tsx';
import { Said } from './said.tsx';
import { TableHelp } from './table-help.tsx';
import { TableOut } from './table-out.tsx';
import { parseTable } from './table-text.ts';

/** Cells mended on the page, by "row,column", both from 0. */
type Mended = ReadonlyMap<string, string>;

/** How the user wants the table read; `null`: as it seems. */
interface Wish {
  readonly headed: boolean | null;
  readonly byHand: ReadonlyMap<number, string | null>;
  readonly mended: Mended;
  readonly chosen: ReadonlyMap<number, RowChoice>;
}

const NO_WISH: Wish = { headed: null, byHand: new Map(), mended: new Map(), chosen: new Map() };

function withMended(cells: Cells, mended: Mended): Cells {
  if (mended.size === 0) return cells;
  return cells.map((row, r) => {
    const touched = [...mended].filter(([key]) => key.startsWith(`${r},`));
    if (touched.length === 0) return row;
    const next = [...row];
    for (const [key, text] of touched) {
      const at = Number(key.split(',')[1]);
      while (next.length <= at) next.push('');
      next[at] = text;
    }
    return next;
  });
}

function read(kit: Kit, parsed: Result<Cells, string> | null, { headed, byHand, mended }: Wish) {
  if (!parsed?.ok) return null;
  const cells = withMended(parsed.value, mended);
  const hasHeadings = headed ?? seemsHeaded(kit, cells);
  return { cells, hasHeadings, table: readTable(kit, cells, { hasHeadings, byHand }) };
}

const doneWords = (made: number, changed: number): string =>
  [made > 0 ? `${counted(made, 'kind')} made` : '', changed > 0 ? `${counted(changed, 'kind')} changed` : '']
    .filter(Boolean)
    .join(', ');

/** Kinds of module out of a spreadsheet, and into one. */
export function TablePage() {
  const editor = useEditor();
  const layout = useLayout((present) => present);
  const [text, setText] = useState('');
  const [wish, setWish] = useState(NO_WISH);
  const [keeps, setKeeps] = useState(true);
  const [said, setSaid] = useState('');
  const [isOver, setIsOver] = useState(false);
  const id = useId();
  const settled = useDeferredValue(text);
  const parsed = useMemo(() => (settled.trim() === '' ? null : parseTable(settled)), [settled]);
  const found = useMemo(() => read(layout.kit, parsed, wish), [layout.kit, parsed, wish]);

  const bring = (other: string): void => {
    setText(other);
    setWish(NO_WISH);
    setSaid('');
  };
  const bringRead = (file: Result<string | null, string>): void => {
    if (!file.ok) setSaid(file.error);
    else if (file.value !== null) bring(file.value);
  };
  const pick = async (): Promise<void> => {
    const files = await editor.platform.files();
    bringRead(await files.pick('table'));
  };
  const drop = async (event: DragEvent): Promise<void> => {
    const [file] = event.dataTransfer.files;
    setIsOver(false);
    if (!file) return;
    event.preventDefault();
    event.stopPropagation();
    const files = await editor.platform.files();
    bringRead(await files.read(file, 'table'));
  };

  const rows: readonly ReadRow[] = found?.table.rows ?? [];
  const plan = useMemo(() => tableEdit(layout.kit, rows, wish.chosen), [layout.kit, rows, wish.chosen]);
  const loss = useMemo(
    () =>
      plan.changed.length > 0 && plan.edit
        ? lossWords(lostBy(layout, applyEdit(layout, plan.edit)))
        : undefined,
    [layout, plan],
  );
  const carryOut = async (): Promise<void> => {
    if (!plan.edit) return;
    const done = editor.layouts.run(plan.edit);
    if (!done.ok) {
      setSaid(`Nothing is done: ${done.error}.`);
      return;
    }
    const words = doneWords(plan.made.length, plan.changed.length);
    bring('');
    const kinds = plan.made.map((made) => ({ sort: 'module' as const, id: made }));
    const isKept = keeps && kinds.length > 0 && (await keepMade(editor, kinds));
    const where =
      !keeps || kinds.length === 0
        ? ''
        : isKept
          ? ' In my stock, too.'
          : ' They could not be put into my stock.';
    setSaid(`${words}.${where} One undo takes it all back from this layout.`);
  };

  return (
    <>
      <div className="table-in">
        <label htmlFor={id}>
          <b>Kinds of module from a spreadsheet</b>
          <small>Copy the cells there, headings included, and paste them here; or drop a file.</small>
        </label>
        <textarea
          id={id}
          className={isOver ? 'field over' : 'field'}
          rows={5}
          spellCheck={false}
          wrap="off"
          value={text}
          onChange={({ target }) => bring(target.value)}
          onDragOver={(event) => {
            if (!event.dataTransfer.types.includes('Files')) return;
            event.preventDefault();
            setIsOver(true);
          }}
          onDragLeave={() => setIsOver(false)}
          onDrop={(event) => void drop(event)}
        />
        <div className="stock-deeds">
          <button type="button" className="plain" onClick={() => void pick()}>
            Choose a file…
          </button>
          {text !== '' && (
            <button type="button" className="quiet" onClick={() => bring('')}>
              Clear
            </button>
          )}
        </div>
      </div>
      <Said words={said} />
      {parsed && !parsed.ok && <p className="table-refused">{parsed.error}</p>}
      {found && (
        <>
          {found.table.refused !== undefined && <p className="table-refused">{found.table.refused}.</p>}
          <ColumnList
            kit={layout.kit}
            cells={found.cells}
            columns={found.table.columns}
            hasHeadings={found.hasHeadings}
            isOpen={found.table.refused !== undefined}
            onHeadings={(headed) => setWish({ ...wish, headed })}
            onColumn={(at, key) => setWish({ ...wish, byHand: new Map(wish.byHand).set(at, key) })}
          />
          <BadCells
            bad={found.table.bad}
            onMend={(row, column, mended) =>
              setWish({ ...wish, mended: new Map(wish.mended).set(`${row - 1},${column}`, mended) })
            }
          />
          {rows.length > 0 && (
            <>
              <ReadPreview
                kit={layout.kit}
                rows={rows}
                columns={found.table.columns}
                chosen={wish.chosen}
                choicesFor={choicesFor}
                onChoose={(row, choice) =>
                  setWish({ ...wish, chosen: new Map(wish.chosen).set(row, choice) })
                }
              />
              <div className="table-do">
                <button
                  type="button"
                  className="do"
                  aria-disabled={!plan.edit}
                  onClick={() => void carryOut()}
                >
                  {plan.edit ? doWords(plan.made.length, plan.changed.length) : 'Nothing to do'}
                </button>
                <label className="choice">
                  <input
                    type="checkbox"
                    checked={keeps}
                    onChange={({ target }) => setKeeps(target.checked)}
                  />
                  Keep new ones in my stock, too
                </label>
                {loss && <small>{loss}</small>}
              </div>
            </>
          )}
        </>
      )}
      <TableHelp kit={layout.kit} onTry={bring} onSaid={setSaid} />
      <TableOut onSaid={setSaid} />
    </>
  );
}

function doWords(made: number, changed: number): string {
  if (changed === 0) return `Make ${counted(made, 'kind')}`;
  return made === 0
    ? `Change ${counted(changed, 'kind')}`
    : `Make ${made} and change ${counted(changed, 'kind')}`;
}
