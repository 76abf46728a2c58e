import '../style/pin-map.css';
import { type ClipboardEvent, type KeyboardEvent, useId, useRef, useState } from 'react';
import { GND, type Kit } from '../../src/index.ts';
import { lineOf } from '../kinds/bus-draft.ts';
import { voltageName } from '../panels/figures.ts';
import { type Numbering, numberOf, pinOf, withListed } from './numbering.ts';

interface Props {
  readonly kit: Pick<Kit, 'voltages'>;
  /** What lies on each pin, in the order of a pin header, as typed; as many as there are. */
  readonly pins: readonly string[];
  readonly numbering: Numbering;
  readonly onPins: (pins: readonly string[]) => void;
}

/** How a line looks: by shape, not by colour alone. */
function sortOf({ voltages }: Props['kit'], line: string): 'voltage' | 'ground' | 'signal' | 'none' {
  if (line.trim() === '') return 'none';
  if (lineOf({ voltages }, line) === GND) return 'ground';
  return voltages.some(({ id }) => id === lineOf({ voltages }, line)) ? 'voltage' : 'signal';
}

const ROW_PX = 34;

/** The pins of a header as one looks at them: pin 1 marked, the notch beside the odd ones. */
function Field({ pins, kit, at }: Pick<Props, 'pins' | 'kit'> & { readonly at: number }) {
  const height = (pins.length / 2) * ROW_PX;
  if (height === 0) return null;
  return (
    <svg className="pin-field" width="84" height={height} viewBox={`0 0 84 ${height}`} aria-hidden="true">
      <rect className="body" x="6" y="1" width="72" height={height - 2} rx="3" />
      <rect className="notch" x="4" y={height / 2 - 12} width="5" height="24" />
      <path className="one" d={`M10 ${ROW_PX / 2 - 6}l7 6-7 6z`} />
      {pins.map((line, pin) => {
        const x = pin % 2 === 0 ? 30 : 58;
        const y = (Math.floor(pin / 2) + 0.5) * ROW_PX;
        const sort = sortOf(kit, line);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a pin is its number.
          <g key={pin} className={`pin ${sort}${pin === at ? ' at' : ''}`}>
            {pin === at && <circle className="halo" cx={x} cy={y} r="11" />}
            {sort === 'ground' ? (
              <path
                d={`M${x - 6} ${y - 2.5}h12M${x - 4} ${y + 1}h8M${x - 2} ${y + 4.5}h4M${x} ${y - 7}v4.500`}
              />
            ) : (
              <rect x={x - 4.5} y={y - 4.5} width="9" height="9" rx={sort === 'signal' ? 4.5 : 1} />
            )}
          </g>
        );
      })}
    </svg>
  );
}

/**
 * What lies on each pin, typed where the pin is. Arrows go from pin to pin; a list that is pasted fills the pins from
 * there on, in the order of the numbers that are shown.
 */
export function PinMap({ kit, pins, numbering, onPins }: Props) {
  const [at, setAt] = useState(0);
  const root = useRef<HTMLDivElement>(null);
  const hint = useId();
  const { length: count } = pins;
  const current = Math.min(at, count - 1);

  const set = (pin: number, line: string): void => onPins(pins.map((other, i) => (i === pin ? line : other)));
  const go = (pin: number): void => {
    if (pin < 0 || pin >= count) return;
    root.current?.querySelectorAll<HTMLInputElement>('input')[pin]?.focus();
    setAt(pin);
  };
  const nextTo = (pin: number, step: 1 | -1): number =>
    pinOf(Math.min(Math.max(numberOf(pin, count, numbering) + step, 1), count), count, numbering);

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>, pin: number): void => {
    const { selectionStart: start, selectionEnd: end, value } = event.currentTarget;
    const isAll = start === 0 && end === value.length;
    const steps: Readonly<Record<string, number | undefined>> = {
      ArrowUp: pin - 2,
      ArrowDown: pin + 2,
      ArrowLeft: isAll || end === 0 ? pin - (pin % 2) : undefined,
      ArrowRight: isAll || start === value.length ? pin - (pin % 2) + 1 : undefined,
      Enter: nextTo(pin, event.shiftKey ? -1 : 1),
    };
    const to = Object.hasOwn(steps, event.key) ? steps[event.key] : undefined;
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    go(to);
  };
  const onPaste = (event: ClipboardEvent<HTMLInputElement>, pin: number): void => {
    const listed = event.clipboardData.getData('text').split(/[,;\t\r\n]+/);
    if (listed.length < 2) return;
    event.preventDefault();
    const lines = listed.map((line) => lineOf(kit, line));
    onPins(withListed(pins, lines, pin, numbering));
  };
  const assign = (line: string): void => {
    set(current, line);
    const next = nextTo(current, 1);
    if (root.current?.contains(document.activeElement)) go(next);
    else setAt(next);
  };

  return (
    <div className="pin-map">
      <fieldset className="lines">
        <legend>
          Pin {numberOf(current, count, numbering)}
          <span className="unseen">: put on it</span>
        </legend>
        {[GND, ...kit.voltages.map(({ id }) => id), ''].map((line) => (
          <button
            key={line}
            type="button"
            className={`line ${sortOf(kit, line)}`}
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => assign(line)}
          >
            {line === '' ? 'nothing' : line === GND ? GND : voltageName(line)}
          </button>
        ))}
      </fieldset>
      <div className="map" ref={root} style={{ gridTemplateRows: `repeat(${count / 2}, ${ROW_PX}px)` }}>
        <Field pins={pins} kit={kit} at={current} />
        {pins.map((line, pin) => {
          const number = numberOf(pin, count, numbering);
          return (
            <label
              // biome-ignore lint/suspicious/noArrayIndexKey: a pin is its number.
              key={pin}
              className={`${pin % 2 === 0 ? 'odd' : 'even'}${pin === 0 ? ' first' : ''}`}
              style={{ gridRow: Math.floor(pin / 2) + 1 }}
            >
              <small>{number}</small>
              <input
                className="field"
                aria-label={`Pin ${number}`}
                aria-describedby={hint}
                size={5}
                placeholder="–"
                autoComplete="off"
                spellCheck={false}
                value={line}
                onFocus={(event) => {
                  setAt(pin);
                  event.currentTarget.select();
                }}
                onChange={({ currentTarget }) => set(pin, currentTarget.value)}
                onKeyDown={(event) => onKeyDown(event, pin)}
                onPaste={(event) => onPaste(event, pin)}
              />
            </label>
          );
        })}
      </div>
      <small id={hint} className="aside">
        GND, a voltage as in {kit.voltages[0]?.id ?? '+12'}, or a name for a signal; empty is not connected.
      </small>
    </div>
  );
}
