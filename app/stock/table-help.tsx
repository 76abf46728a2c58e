import { useState } from 'react';
import type { Kit } from '../../src/index.ts';
import { templateTable } from '../../src/stock.ts';
import { useEditor } from '../hooks.ts';
import { tableFile, tableToPaste } from './table-text.ts';

interface Props {
  readonly kit: Kit;
  readonly onTry: (text: string) => void;
  readonly onSaid: (words: string) => void;
}

/** Headers in the template; more are more columns of the same sort. */
const HEADERS = 2;

/** How a table is read, with an example and a template to fill in. */
export function TableHelp({ kit, onTry, onSaid }: Props) {
  const { platform } = useEditor();
  const [[headings = [], cells = []]] = useState(() => templateTable(kit, 1, ','));
  const example = tableToPaste([headings, cells]);
  const save = async (): Promise<void> => {
    const files = await platform.files();
    const saved = await files.save(
      'Kinds of module',
      tableFile(templateTable(kit, HEADERS, ','), ';'),
      'table',
    );
    if (!saved.ok) onSaid(saved.error);
  };
  const copy = async (): Promise<void> => {
    const clipboard = await platform.clipboard();
    clipboard.put(example);
    onSaid('The example is on the clipboard.');
  };
  const buses = kit.buses.map(({ name }) => name).join('; ');
  return (
    <details className="table-help">
      <summary>
        <b>How a table is read</b>
      </summary>
      <dl>
        <dt>A row is a kind, a column a fact</dt>
        <dd>
          Columns are found by their headings, whatever their order and however they are separated: Name,
          Width, Height, Depth, Depth is (with plugs or without), Current at +12 V, Owned, Price, Figures are
          (measured, published or guessed), Colour, Notes. A unit may stand in the heading or the cell: “Depth
          (cm)”, “32 mm”.
        </dd>
        <dt>A header takes a few columns</dt>
        <dd>
          Header 1 bus, Header 1 x, Header 1 y, Header 1 pin 1 (down, up, left or right); and where you want
          them: role (host or member; empty is a member), z, axis, keyed, passes, isolated (yes or no),
          counts, name. The next one is Header 2. x is the middle of the pins in mm from the left edge seen
          from the front, y from the bottom edge. Buses go by their names{buses ? `: ${buses}` : ''}.
        </dd>
        <dt>Empty, or “?”</dt>
        <dd>
          Not known, and told where it matters. Of a current “none” or 0 says that none is drawn; a voltage
          without a column is not drawn by new kinds. A kind that is there already keeps what has no column.
        </dd>
        <dt>Numbers</dt>
        <dd>
          12.5 and 12,5 are the same. “1,250” is asked about, unless the other numbers tell which it is.
        </dd>
      </dl>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what is wider than the screen is scrolled by keys as well */}
      <section className="table-scroll" tabIndex={0} aria-label="Example of a table">
        <table className="counts example">
          <thead>
            <tr>
              {headings.map((heading) => (
                <th key={heading} scope="col">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              {headings.map((heading, at) => (
                <td key={heading}>{cells[at]}</td>
              ))}
            </tr>
          </tbody>
        </table>
      </section>
      <div className="stock-deeds">
        <button type="button" className="plain" onClick={() => void copy()}>
          Copy the example
        </button>
        <button type="button" className="plain" onClick={() => onTry(example)}>
          Try it here
        </button>
        <button type="button" className="plain" onClick={() => void save()}>
          Save a template…
        </button>
      </div>
    </details>
  );
}
