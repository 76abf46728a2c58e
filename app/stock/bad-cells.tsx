import { useState } from 'react';
import { type BadCell, badCellWords } from '../../src/stock.ts';
import { counted } from './kind-words.ts';

/** More than these are told by their number: whoever has so many mends the table where it came from. */
const MOST_SHOWN = 40;

interface CellProps {
  readonly bad: BadCell;
  readonly onMend: (text: string) => void;
}

function MendCell({ bad, onMend }: CellProps) {
  const [text, setText] = useState(bad.text);
  const commit = (): void => {
    if (text !== bad.text) onMend(text);
  };
  return (
    <input
      className="field"
      aria-label={`Row ${bad.row}, column ${bad.column?.letter}: should say`}
      value={text}
      onChange={({ target }) => setText(target.value)}
      onBlur={commit}
      onKeyDown={({ key }) => {
        if (key === 'Enter') commit();
      }}
    />
  );
}

interface Props {
  readonly bad: readonly BadCell[];
  readonly onMend: (row: number, column: number, text: string) => void;
}

/** Every cell that cannot be read, by row and column, each to be mended on the spot. */
export function BadCells({ bad, onMend }: Props) {
  return (
    <section className="bad-cells" aria-live="polite">
      {bad.length > 0 && (
        <>
          <h3>{counted(bad.length, 'cell')} cannot be read. Nothing is taken before all can.</h3>
          <ul>
            {bad.slice(0, MOST_SHOWN).map((cell) => (
              <li key={`${cell.row} ${cell.column?.at} ${cell.text} ${cell.why}`}>
                <svg viewBox="0 0 10 10" aria-hidden="true">
                  <path d="M5 0 10 5 5 10 0 5Z" />
                </svg>
                <span>{badCellWords(cell)}</span>
                {cell.column && (
                  <MendCell bad={cell} onMend={(text) => onMend(cell.row, cell.column?.at ?? 0, text)} />
                )}
              </li>
            ))}
          </ul>
          {bad.length > MOST_SHOWN && <p className="none">And {bad.length - MOST_SHOWN} more.</p>}
        </>
      )}
    </section>
  );
}
