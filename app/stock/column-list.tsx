import type { Kit } from '../../src/index.ts';
import { type Cells, type Column, fieldsFor } from '../../src/stock.ts';
import { counted } from './kind-words.ts';

/** Headers that can be chosen by hand beyond those that the table has. */
const SPARE_HEADERS = 1;

/** More columns than these are matched by their headings alone. */
const MOST_SHOWN = 80;

interface Props {
  readonly kit: Kit;
  readonly cells: Cells;
  readonly columns: readonly Column[];
  readonly hasHeadings: boolean;
  readonly isOpen: boolean;
  readonly onHeadings: (has: boolean) => void;
  readonly onColumn: (at: number, key: string | null) => void;
}

const headersIn = (columns: readonly Column[]): number =>
  Math.max(0, ...columns.map(({ field }) => (field?.fact.of === 'header' ? field.fact.number : 0)));

/** The first cell of a column that says something. */
function sampleOf(cells: Cells, at: number, hasHeadings: boolean): string {
  const rows = cells.filter((row) => row.some((cell) => cell.trim() !== '')).slice(hasHeadings ? 1 : 0);
  return rows.map((row) => row[at]?.trim() ?? '').find((cell) => cell !== '') ?? '';
}

const MOST_NAMED = 8;

function namesOf(columns: readonly Column[]): string {
  const names = columns.map(({ letter, heading }) => heading.slice(0, 40) || letter);
  return `${names.slice(0, MOST_NAMED).join(', ')}${names.length > MOST_NAMED ? ' …' : ''}`;
}

/** What each column tells, as matched by its heading; another meaning is chosen by hand. */
export function ColumnList({ kit, cells, columns, hasHeadings, isOpen, onHeadings, onColumn }: Props) {
  const fields = fieldsFor(kit, headersIn(columns) + SPARE_HEADERS);
  const left = columns.filter(({ field, at }) => !field && sampleOf(cells, at, hasHeadings) !== '');
  const words =
    left.length === 0
      ? 'All columns are matched'
      : `${counted(left.length, 'column')} left out: ${namesOf(left)}`;
  return (
    <details className="columns" open={isOpen || undefined}>
      <summary>
        <b>Columns</b> <span>{words}</span>
      </summary>
      <label className="choice">
        <input type="checkbox" checked={hasHeadings} onChange={({ target }) => onHeadings(target.checked)} />
        The first row holds headings
      </label>
      <ul>
        {columns.slice(0, MOST_SHOWN).map(({ at, letter, heading, field }) => (
          <li key={at}>
            <span className="letter">{letter}</span>
            <span className="sample">
              {heading && <b>{heading}</b>}
              <small>{sampleOf(cells, at, hasHeadings)}</small>
            </span>
            <select
              className="field"
              aria-label={`Column ${letter}${heading ? ` (${heading})` : ''} tells`}
              value={field?.key ?? ''}
              onChange={({ target }) => onColumn(at, target.value === '' ? null : target.value)}
            >
              <option value="">left out</option>
              {fields.map(({ key, label }) => (
                <option key={key} value={key}>
                  {label}
                </option>
              ))}
            </select>
          </li>
        ))}
      </ul>
      {columns.length > MOST_SHOWN && (
        <p className="none">And {columns.length - MOST_SHOWN} more, matched by their headings.</p>
      )}
    </details>
  );
}
