import '../style/ribbon-bench.css';
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { CONDUCTOR_MM, HP_MM, type Limits, ribbonWidthMm, socketBodyMm } from '../../src/index.ts';
import type { ConnectorDraft, RibbonDraft } from '../kinds/ribbon-draft.ts';
import { figure } from '../panels/figures.ts';
import { gapBefore, movedTo, roomOf } from './connector-places.ts';
import { useWidth } from './use-width.ts';

interface Props {
  readonly connectors: readonly ConnectorDraft[];
  readonly lay: RibbonDraft['lay'];
  readonly conductors: number;
  readonly unit: 'HP' | 'mm';
  readonly limits: Limits;
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
  readonly onConnectors: (connectors: readonly ConnectorDraft[]) => void;
}

/** Room beside the outer connectors, px. */
const BESIDE = 34;
/** Above the ribbon, for the ruler and the numbers, px. */
const ABOVE = 46;
/** Below it, for the distances, px. */
const BELOW = 36;
/** However near they are, a finger finds them, px. */
const LEAST_GRIP = 24;
const MOST_SCALE = 7;
/** A ribbon that is dragged out may become so much longer, mm. */
const MORE_MM = 10_000;

/** Each press of an arrow, and with Shift, mm. */
const stepsIn = (unit: 'HP' | 'mm') =>
  unit === 'HP' ? ({ step: HP_MM / 2, fine: 0.1 } as const) : ({ step: 1, fine: 0.1 } as const);

/** A drag goes by these, mm. */
const snapIn = (unit: 'HP' | 'mm'): number => (unit === 'HP' ? HP_MM / 2 : 0.5);

const RULER_STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const;

/** Marks of a ruler that do not crowd, in its own unit. */
function marksFor(lengthMm: number, unit: 'HP' | 'mm', scale: number): readonly number[] {
  const unitMm = unit === 'HP' ? HP_MM : 1;
  const step = RULER_STEPS.find((each) => each * unitMm * scale >= 34) ?? 2000;
  return Array.from({ length: Math.floor(lengthMm / unitMm / step) + 1 }, (_, i) => i * step);
}

const waysOf = ({ ways }: ConnectorDraft, conductors: number): number =>
  Math.min(Math.max(Number(ways) || conductors, 1), conductors);

/** The ribbon laid out to scale as seen from the rear, stripe down; its connectors are dragged, or moved by arrows. */
export function RibbonBench({
  connectors,
  lay,
  conductors,
  unit,
  limits,
  chosen,
  onChoose,
  onConnectors,
}: Props) {
  const [box, width] = useWidth<HTMLDivElement>(640);
  const drag = useRef<{
    readonly index: number;
    readonly fromPx: number;
    readonly start: typeof connectors;
  } | null>(null);
  const lengthMm = Math.max(connectors.at(-1)?.atMm ?? 0, 10);
  const scale = Math.min((width - 2 * BESIDE) / lengthMm, MOST_SCALE);
  // While one is dragged the paper stays as it was, or the connector would run from under the hand.
  const held = useRef(scale);
  if (!drag.current) held.current = scale;
  const px = held.current;
  const bandPx = Math.max(ribbonWidthMm(conductors) * px, 8);
  const bodyPx = (ways: number): number => Math.max(socketBodyMm(ways).longMm * px, bandPx + 8);
  const tallest = Math.max(bodyPx(conductors), bandPx);
  const middle = ABOVE + tallest / 2;
  const height = ABOVE + tallest + BELOW;
  const x = (atMm: number): number => BESIDE + atMm * px;
  const bottom = middle + bandPx / 2;
  const wide = Math.max(limits.connectorBodyMm * px, 5);
  const linePx = CONDUCTOR_MM * px;

  const move = (index: number, atMm: number, from = connectors): void => {
    const [least, most] = roomOf(from, index, Math.min(limits.connectorBodyMm, 6), lengthMm + MORE_MM);
    onConnectors(movedTo(from, index, Math.min(Math.max(atMm, least), most)));
  };
  const onKeyDown = (event: KeyboardEvent, index: number): void => {
    const direction = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[event.key];
    if (!direction) return;
    event.preventDefault();
    event.stopPropagation();
    const { step, fine } = stepsIn(unit);
    const now = connectors[index]?.atMm ?? 0;
    move(index, now + direction * (event.shiftKey ? fine : step));
  };
  const onDown = (event: PointerEvent<SVGGElement>, index: number): void => {
    if (event.button !== 0) return;
    onChoose(index);
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { index, fromPx: event.clientX, start: connectors };
  };
  const onMove = (event: PointerEvent): void => {
    if (!drag.current) return;
    const { index, fromPx, start } = drag.current;
    const snap = event.altKey ? 0.1 : snapIn(unit);
    const atMm = (start[index]?.atMm ?? 0) + (event.clientX - fromPx) / held.current;
    move(index, Math.round(atMm / snap) * snap, start);
  };
  const onUp = (): void => {
    if (!drag.current) return;
    const { start } = drag.current;
    drag.current = null;
    // Drawn once more, now to the new scale.
    onConnectors(connectors === start ? start : [...connectors]);
  };
  const onCancel = (): void => {
    if (!drag.current) return;
    onConnectors(drag.current.start);
    drag.current = null;
  };

  return (
    <div className="ribbon-bench" ref={box}>
      <svg
        className="paper"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        aria-hidden="true"
      >
        <g className="ruler">
          <path d={`M${x(0)} 17H${x(lengthMm)}`} />
          {marksFor(lengthMm, unit, px).map((mark) => {
            const at = x(unit === 'HP' ? mark * HP_MM : mark);
            return (
              <g key={mark}>
                <path d={`M${at} 17v-5`} />
                <text x={at} y="9">
                  {mark}
                </text>
              </g>
            );
          })}
          <text x="3" y="9" className="unit">
            {unit}
          </text>
        </g>
        <g>
          <rect
            className="band"
            x={x(0) - Math.max(wide / 2, 4) - 2}
            y={middle - bandPx / 2}
            width={lengthMm * px + Math.max(wide, 8) + 4}
            height={bandPx}
          />
          {linePx > 2.6 &&
            Array.from({ length: conductors - 1 }, (_, i) => (
              <path
                // biome-ignore lint/suspicious/noArrayIndexKey: a conductor is its number.
                key={i}
                className="conductor"
                d={`M${x(0) - wide / 2 - 2} ${bottom - (i + 1) * linePx}H${x(lengthMm) + wide / 2 + 2}`}
              />
            ))}
          <rect
            className="stripe"
            x={x(0) - Math.max(wide / 2, 4) - 2}
            y={bottom - Math.max(linePx, 2)}
            width={lengthMm * px + Math.max(wide, 8) + 4}
            height={Math.max(linePx, 2)}
          />
          {connectors.slice(1).map(({ atMm }, i) => {
            const from = x(connectors[i]?.atMm ?? 0);
            const to = x(atMm);
            const gap = gapBefore(connectors, i + 1);
            const words = figure(unit === 'HP' ? gap / HP_MM : gap, 2);
            const y = ABOVE + tallest + 14;
            if (to - from < words.length * 7 + 6) return null;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a gap is the one behind its connector.
              <g key={i} className="distance">
                <path d={`M${from + 1} ${y}H${to - 1}M${from + 1} ${y - 4}v8M${to - 1} ${y - 4}v8`} />
                <text x={(from + to) / 2} y={y + 15}>
                  {words}
                </text>
              </g>
            );
          })}
          {lay === 'bends' && connectors.length > 1 && (
            <path
              className="may-bend"
              d={`M${(x(0) + x(connectors[1]?.atMm ?? 0)) / 2 - 9} ${middle - bandPx / 2 - 5}q9 -10 18 0`}
            />
          )}
        </g>
      </svg>
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        onPointerMove={onMove}
        onPointerUp={onUp}
        onPointerCancel={onCancel}
      >
        <title>The ribbon to scale, seen from the rear, stripe down</title>
        {connectors.map((connector, i) => {
          const { atMm, type, face, key } = connector;
          const ways = waysOf(connector, conductors);
          const long = bodyPx(ways);
          // Contacts lie on conductors 1 to its ways, the first beside the stripe.
          const centre = bottom - (ways * bandPx) / conductors / 2;
          const grip = Math.max(wide, LEAST_GRIP);
          const where = unit === 'HP' ? `${figure(atMm / HP_MM, 2)} HP` : `${figure(atMm, 2)} mm`;
          const pairs = Math.ceil(ways / 2);
          const pitch = 2 * (bandPx / conductors || 1);
          return (
            <g
              // biome-ignore lint/suspicious/noArrayIndexKey: a connector is its number.
              key={i}
              className={`grip ${type} ${face}${i === chosen ? ' chosen' : ''}`}
              role="slider"
              tabIndex={0}
              aria-label={`Connector ${i + 1} of ${connectors.length}, ${type}`}
              aria-valuenow={Number(atMm.toFixed(2))}
              aria-valuemin={0}
              aria-valuemax={Math.round(lengthMm)}
              aria-valuetext={where}
              aria-orientation="horizontal"
              onKeyDown={(event) => onKeyDown(event, i)}
              onFocus={() => onChoose(i)}
              onPointerDown={(event) => onDown(event, i)}
            >
              <rect
                className="room"
                x={x(atMm) - grip / 2}
                y={ABOVE - 18}
                width={grip}
                height={tallest + 30}
              />
              <rect
                className="body"
                x={x(atMm) - wide / 2}
                y={centre - long / 2}
                width={wide}
                height={long}
                rx={Math.min(wide / 4, 3)}
              />
              {key !== 'none' && (
                <rect
                  className="bump"
                  x={key === 'with-stripe' ? x(atMm) - wide / 2 - 3 : x(atMm) + wide / 2}
                  y={centre - 7}
                  width="3"
                  height="14"
                />
              )}
              {face === 'rear' &&
                wide > 12 &&
                Array.from({ length: pairs }, (_, pair) => (
                  <path
                    // biome-ignore lint/suspicious/noArrayIndexKey: a contact is its number.
                    key={pair}
                    className="contacts"
                    d={`M${x(atMm) - wide / 5} ${bottom - (pair + 0.5) * pitch}h.01M${x(atMm) + wide / 5} ${bottom - (pair + 0.5) * pitch}h.01`}
                  />
                ))}
              <path className="one" d={`M${x(atMm) - 4} ${centre + long / 2 - 3}l4 -7 4 7z`} />
              <text x={x(atMm)} y={ABOVE - 8}>
                {i + 1}
              </text>
            </g>
          );
        })}
      </svg>
    </div>
  );
}
