import { type ReactNode, useState } from 'react';
import { GND, type Power } from '../../src/index.ts';
import { toggleHeat } from '../actions/toggle-heat.ts';
import { useEditor, useSession } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { Icon } from '../panels/icon.tsx';
import { PrintedKeys } from '../panels/printed-keys.tsx';
import { FactMark } from './fact-mark.tsx';
import { HeatScale } from './heat-scale.tsx';
import { LineChoice } from './line-choice.tsx';
import { ModuleButton } from './module-button.tsx';
import { badness, type ModuleRow, moduleRows } from './module-rows.ts';
import { GROUND_WORDS, millivolts } from './power-words.ts';
import { showHeat } from './show-heat.ts';

type Column = 'name' | 'lost' | 'ground';

/** Told at once; the others on demand. */
const MOST_SHOWN = 8;

const shiftOf = ({ arrival }: ModuleRow): number => Math.abs(arrival?.groundMv ?? 0);

const ORDERS: Readonly<Record<Column, (a: ModuleRow, b: ModuleRow) => number>> = {
  name: (a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }),
  // Rows come the worst first.
  lost: () => 0,
  ground: (a, b) => shiftOf(b) - shiftOf(a),
};

interface HeadProps {
  readonly column: Column;
  readonly sorted: Column;
  readonly onSort: (column: Column) => void;
  readonly children: ReactNode;
}

/** The head of a column, which sorts by it: names rising, all else the worst first. */
function Head({ column, sorted, onSort, children }: HeadProps) {
  const order = column === 'name' ? 'ascending' : 'descending';
  return (
    <th scope="col" aria-sort={column === sorted ? order : 'none'}>
      <button type="button" onClick={() => onSort(column)}>
        {children}
        {column === sorted && <span aria-hidden="true">{column === 'name' ? ' ▴' : ' ▾'}</span>}
      </button>
    </th>
  );
}

function Row({ row, isGround }: { readonly row: ModuleRow; readonly isGround: boolean }) {
  const { id, name, known, isDrawUnknown, atLeast, arrival } = row;
  const isOver = arrival !== undefined && badness(row) > arrival.allowedMv * (1 + 1e-6);
  const least = atLeast ? '≥ ' : '';
  return (
    <tr>
      <th scope="row">
        <ModuleButton id={id}>
          {name}
          <small>
            <FactMark known={known} /> {GROUND_WORDS[known]}
            {isDrawUnknown && ', draw unknown'}
          </small>
        </ModuleButton>
      </th>
      {!arrival && <td colSpan={isGround ? 1 : 3}>not reached</td>}
      {arrival?.volts !== undefined && <td>{figure(arrival.volts, 2)}</td>}
      {arrival && !isGround && (
        <td>
          {least}
          {isOver ? <b>{millivolts(arrival.mv)}, too much</b> : millivolts(arrival.mv)}
        </td>
      )}
      {arrival && (
        <td>
          {isGround && least}
          {millivolts(arrival.groundMv)}
        </td>
      )}
    </tr>
  );
}

/** What arrives at each module, the worst first, and the heat map of the same. */
export function Arrivals({ power }: { readonly power: Power }) {
  const editor = useEditor();
  const heat = useSession((session) => session.heat);
  const [first = GND] = power.take.kit.supplyLines;
  const [chosen, setChosen] = useState(first);
  const [sorted, setSorted] = useState<Column>('lost');
  const [isWhole, setWhole] = useState(false);
  const line = heat ?? (power.take.kit.supplyLines.includes(chosen) ? chosen : first);
  const isGround = line === GND;
  const rows = moduleRows(power, line).toSorted(ORDERS[sorted]);
  const shown = isWhole ? rows : rows.slice(0, MOST_SHOWN);
  const choose = (id: string): void => {
    setChosen(id);
    if (heat !== null) showHeat(editor, id);
  };
  const heads = { sorted, onSort: setSorted };
  return (
    <section className="arrivals" aria-label="What arrives">
      <h3>What arrives at the modules</h3>
      <LineChoice line={line} onChoose={choose} />
      <button
        type="button"
        className="heat-toggle"
        aria-pressed={heat !== null}
        onClick={() => showHeat(editor, heat === null ? line : null)}
      >
        <i className="box" aria-hidden="true">
          {heat !== null && <Icon name="tick" />}
        </i>
        Heat map on the drawing
        <PrintedKeys of={toggleHeat} />
      </button>
      {heat !== null && <HeatScale line={line} />}
      {rows.length === 0 ? (
        <p className="aside">No module uses it.</p>
      ) : (
        <table>
          <thead>
            <tr>
              <Head {...heads} column="name">
                Module
              </Head>
              {!isGround && <th scope="col">V</th>}
              {!isGround && (
                <Head {...heads} column="lost">
                  lost, mV
                </Head>
              )}
              <Head {...heads} column={isGround ? 'lost' : 'ground'}>
                ground, mV
              </Head>
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Row key={row.id} row={row} isGround={isGround} />
            ))}
          </tbody>
        </table>
      )}
      {rows.length > MOST_SHOWN && (
        <button type="button" className="plain" onClick={() => setWhole(!isWhole)}>
          {isWhole ? `Only the first ${MOST_SHOWN}` : `All ${rows.length} modules`}
        </button>
      )}
    </section>
  );
}
