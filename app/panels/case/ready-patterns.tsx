import { useState } from 'react';
import { CASE_PATTERNS, type CasePattern, mmToHp, type Take, uToMm } from '../../../src/index.ts';
import { useTake } from '../../hooks.ts';
import { MeasureField } from './measure-field.tsx';
import { useCase } from './use-case.ts';

/** Between rows of the little drawings, HP. */
const GAP_HP = 4;

const WIDEST_HP = Math.max(...CASE_PATTERNS.flatMap(({ rows }) => rows.map(({ widthHp }) => widthHp)));

const heightHp = (heightU: number): number => mmToHp(uToMm(heightU));

const tallness = (rows: CasePattern['rows']): number =>
  rows.reduce((sum, { heightU }) => sum + heightHp(heightU), GAP_HP * (rows.length - 1));

const TALLEST_HP = Math.max(...CASE_PATTERNS.map(({ rows }) => tallness(rows)));

/** A pattern's rows, all patterns to one scale, as seen from the front, with the HP as its unit. */
function PatternDrawing({ rows }: Pick<CasePattern, 'rows'>) {
  const bars = rows.map(({ widthHp, heightU }, i) => {
    const above = i === 0 ? 0 : tallness(rows.slice(0, i)) + GAP_HP;
    const top = 1 + (TALLEST_HP - tallness(rows)) / 2 + above;
    return { top, width: widthHp, height: heightHp(heightU) };
  });
  return (
    <svg viewBox={`0 0 ${WIDEST_HP + 2} ${TALLEST_HP + 2}`} aria-hidden="true">
      {bars.map(({ top, width, height }) => (
        <rect key={top} x={1 + (WIDEST_HP - width) / 2} y={top} width={width} height={height} />
      ))}
    </svg>
  );
}

const isLaidOut = ({ rows }: Take, pattern: CasePattern['rows']): boolean =>
  rows.length === pattern.length &&
  rows.every(({ widthHp, heightU }, i) => {
    const wanted = pattern[i];
    return widthHp === wanted?.widthHp && heightU === wanted.heightU;
  });

/** Ready rows to start from, one tap each. */
export function ReadyPatterns() {
  const { perform } = useCase();
  const take = useTake();
  const [typedMm, setTyped] = useState<number | undefined>(undefined);
  const depth = typedMm === undefined ? {} : { depthMm: typedMm };
  return (
    <div className="ready">
      <div className="measures">
        <MeasureField
          what="Depth"
          unit="mm"
          of="the case behind its panels"
          value={typedMm ?? take.rows[0]?.depthMm}
          onCommit={(mm) => mm !== null && setTyped(mm)}
        />
        <p className="aside">From the back of the panels to the floor; then tap a pattern.</p>
      </div>
      <ul className="patterns">
        {CASE_PATTERNS.map(({ id, name, rows }) => (
          <li key={id}>
            <button
              type="button"
              aria-pressed={isLaidOut(take, rows)}
              onClick={() => perform({ type: 'lay-out-rows', take: take.id, rows, ...depth })}
            >
              <PatternDrawing rows={rows} />
              {name}
            </button>
          </li>
        ))}
      </ul>
      <p className="aside">Common sizes, all to be changed below. A row in which something stands stays.</p>
    </div>
  );
}
