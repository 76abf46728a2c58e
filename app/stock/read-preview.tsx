import type { Header, Kit, ModuleKind } from '../../src/index.ts';
import type { Column, ReadRow, RowChoice } from '../../src/stock.ts';
import { figure, voltageName } from '../panels/figures.ts';
import { counted } from './kind-words.ts';

const CHOICE_WORDS: Readonly<Record<RowChoice, string>> = {
  change: 'change it',
  new: 'make another',
  leave: 'leave it',
};

/** More rows than these are read and not shown. */
const MOST_SHOWN = 200;

interface Props {
  readonly kit: Kit;
  readonly rows: readonly ReadRow[];
  readonly columns: readonly Column[];
  readonly chosen: ReadonlyMap<number, RowChoice>;
  readonly choicesFor: (row: ReadRow) => readonly RowChoice[];
  readonly onChoose: (row: number, choice: RowChoice) => void;
}

const maybe = (value: number | undefined, unit: string): string =>
  value === undefined ? '?' : `${figure(value)}${unit}`;

function drawWords(kind: ModuleKind, voltage: string): string {
  const ma = kind.draws[voltage];
  return ma === undefined ? 'none' : ma === null ? '?' : `${figure(ma)} mA`;
}

function headerWords(kit: Kit, { bus, role, xMm, yMm, pin1 }: Header): string {
  const name = kit.buses.find(({ id }) => id === bus)?.name ?? bus;
  const end = pin1 ? `, pin 1 ${pin1}` : ', pin 1 ?';
  return `${name}${role === 'host' ? ' (host)' : ''} at ${figure(xMm)} / ${figure(yMm)}${end}`;
}

function Choice({
  row,
  chosen,
  choicesFor,
  onChoose,
}: Pick<Props, 'chosen' | 'choicesFor' | 'onChoose'> & { readonly row: ReadRow }) {
  const choices = choicesFor(row);
  const words = (choice: RowChoice): string => {
    if (choice === 'new' && !row.before) return 'make it';
    return choice === 'leave' && !choices.includes('change') && row.before
      ? 'as it is already'
      : CHOICE_WORDS[choice];
  };
  return (
    <select
      className="field"
      aria-label={`What is done with ${row.name}`}
      value={chosen.get(row.row) ?? choices[0]}
      onChange={({ target }) => onChoose(row.row, target.value as RowChoice)}
    >
      {choices.map((choice) => (
        <option key={choice} value={choice}>
          {words(choice)}
        </option>
      ))}
    </select>
  );
}

/** What the table reads to, kind by kind, before anything is done. */
export function ReadPreview({ kit, rows, columns, ...choosing }: Props) {
  const told = new Set(columns.flatMap(({ field }) => (field?.fact.of === 'draw' ? field.fact.voltage : [])));
  const untold = kit.voltages.filter(({ id }) => !told.has(id));
  return (
    <section className="stock-part">
      <header>
        <h3>It reads to {counted(rows.length, 'kind')}</h3>
      </header>
      {untold.length > 0 && rows.some(({ before }) => !before) && (
        <p className="none">
          No column for {untold.map(({ id }) => voltageName(id)).join(', ')}: new kinds are read as drawing
          none of it.
        </p>
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what is wider than the screen is scrolled by keys as well */}
      <section className="table-scroll" tabIndex={0} aria-label="What the table reads to">
        <table className="counts preview-table">
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">What is done</th>
              <th scope="col">Width</th>
              <th scope="col">Depth</th>
              {kit.voltages.map(({ id }) => (
                <th key={id} scope="col">
                  {voltageName(id)}
                </th>
              ))}
              <th scope="col">Owned</th>
              <th scope="col">Headers, mm from the left and the bottom</th>
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, MOST_SHOWN).map((row) => {
              const kind = row.changed ?? row.made;
              if (!kind) return null;
              return (
                <tr key={row.row}>
                  <th scope="row">{row.name}</th>
                  <td>
                    <Choice row={row} {...choosing} />
                  </td>
                  <td>{figure(kind.widthHp)} HP</td>
                  <td>{maybe(kind.depthMm, ' mm')}</td>
                  {kit.voltages.map(({ id }) => (
                    <td key={id}>{drawWords(kind, id)}</td>
                  ))}
                  <td>{kind.owned ?? '–'}</td>
                  <td className="wide">
                    {kind.headers.map((header) => headerWords(kit, header)).join('; ') || '–'}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </section>
      {rows.length > MOST_SHOWN && <p className="none">And {rows.length - MOST_SHOWN} more.</p>}
    </section>
  );
}
