import { lineName } from '../../src/index.ts';
import { type Group, levelOf } from './groups.ts';
import type { Chain, PinScene, SceneContact, ScenePin } from './pin-scene.ts';

/** Measures of the drawing, px: the same on screen, so that its words keep their size. */
export interface MapSize {
  readonly column: number;
  readonly row: number;
  /** For the name and number of a pin. */
  readonly label: number;
  /** How far the ribbon is seen beside its connector, and over the labels at most. */
  readonly stub: number;
  readonly lane: number;
  /** How many lanes there is room for on each side. */
  readonly lanes: number;
  /** Lines of contacts are written smaller. */
  readonly isTight: boolean;
}

/** Wide headers stand closer. */
const TALL_PINS = 30;

export function mapSize(pins: number, isTight: boolean): MapSize {
  const row = pins > TALL_PINS ? 24 : isTight ? 28 : 31;
  return isTight
    ? { column: 48, row, label: 72, stub: 4, lane: 23, lanes: 1, isTight }
    : { column: 72, row, label: 112, stub: 18, lane: 24, lanes: 2, isTight };
}

/** A letter in bold at 12 px and at 11 px, in the middle. */
const LETTER_PX = 6.6;
const SMALL_LETTER_PX = 6.1;

/** As much of a name as there is room for; its end tells "data 11" from "data 12". */
function fitted(name: string, px: number, letterPx = LETTER_PX): string {
  const most = Math.floor(px / letterPx);
  return name.length > most ? `${name.slice(0, Math.max(most - 3, 1))}…${name.slice(-2)}` : name;
}

const nameOf = (line: string): string => (line === '' ? '–' : lineName(line));

/** Whether something stands back behind the group looked at. */
type Dims = (group: Group | undefined) => string;

interface Frame extends MapSize {
  readonly width: number;
  readonly height: number;
  /** Middle of a column (−1 … 2) and of a row. */
  readonly x: (column: number) => number;
  readonly y: (row: number) => number;
}

function frameOf(size: MapSize, rows: number): Frame {
  const side = size.lanes * size.lane + size.label;
  return {
    ...size,
    width: 2 * side + 4 * size.column,
    height: rows * size.row,
    x: (column) => side + (column + 1.5) * size.column,
    y: (row) => (row + 0.5) * size.row,
  };
}

const at = (x: number, y: number) => ({ transform: `translate(${x}px, ${y}px)` });

/** Octagon and diamond with the letter of a group: the shapes of damage and fault. */
export function Bead({
  group,
  x = 0,
  y = 0,
}: {
  readonly group: Group;
  readonly x?: number;
  readonly y?: number;
}) {
  const isDamage = levelOf(group) === 'damage';
  return (
    <g className={isDamage ? 'bead damage' : 'bead fault'} transform={`translate(${x} ${y})`}>
      <path
        transform={group.letter.length > 1 ? 'scale(1.3 1.1)' : undefined}
        d={isDamage ? 'M-3.7-9h7.4l5.3 5.3v7.4l-5.3 5.3h-7.4l-5.3-5.3v-7.4z' : 'M0-11 11 0 0 11-11 0z'}
      />
      <text y="4">{group.letter}</text>
    </g>
  );
}

/** The module behind: its board, the header on it, where pin 1 is. */
function Ground({ frame, scene, isKeyed }: { frame: Frame; scene: PinScene; isKeyed: boolean }) {
  const { x, y, row, column } = frame;
  const [top, bottom] = [
    y(scene.header.row) - row / 2,
    y(scene.header.row + scene.header.rows - 1) + row / 2,
  ];
  const [left, right] = [x(0) - column / 2, x(1) + column / 2];
  const pin1 = scene.pins[0];
  const pin1Left = pin1?.column === 0;
  const isUp = pin1?.row === scene.header.row;
  const edge = isUp ? top : bottom;
  const out = isUp ? -1 : 1;
  const mark = pin1 ? x(pin1.column) : 0;
  const notch = (top + bottom) / 2;
  return (
    <>
      <rect
        className="slab"
        x={frame.lanes * frame.lane + 0.5}
        y="0.5"
        width={frame.width - 2 * frame.lanes * frame.lane - 1}
        height={frame.height - 1}
        rx="6"
      />
      {isKeyed && (
        <>
          <rect
            className="box"
            x={left - 7}
            y={top - 13}
            width={right - left + 14}
            height={bottom - top + 26}
            rx="2"
          />
          <rect
            className="notch"
            x={(pin1Left ? left : right) - 9}
            y={notch - row * 0.8}
            width="18"
            height={row * 1.6}
          />
        </>
      )}
      <rect className="outline" x={left} y={top} width={right - left} height={bottom - top} rx="3" />
      <path className="pin-1" d={`M${mark - 6} ${edge + out * (isKeyed ? 26 : 15)}h12l-6 ${-out * 9}z`} />
      <text
        className="pin-1"
        x={mark + (pin1Left ? -11 : 11)}
        y={edge + out * (isKeyed ? 22 : 11) + 4}
        textAnchor={pin1Left ? 'end' : 'start'}
      >
        pin 1
      </text>
    </>
  );
}

/** A pin with its number and the name of its line; joined to what touches it by a line. */
function Pin({ pin, frame, isSocket, dims }: { pin: ScenePin; frame: Frame; isSocket: boolean; dims: Dims }) {
  const { x, y, column } = frame;
  const isLeft = pin.column === 0;
  const out = isLeft ? -1 : 1;
  const [px, py] = [x(pin.column), y(pin.row)];
  const label = x(isLeft ? -1 : 2) + (out * column) / 2;
  const numberPx = frame.stub + 5;
  const namePx = numberPx + 17;
  return (
    <g className={`pin ${pin.meeting ?? 'bare'}${dims(pin.group)}`}>
      <path className="way" d={`M${px + out * 9} ${py}H${label + out * (numberPx - 4)}`} />
      <rect className={isSocket ? 'hole' : 'brass'} x={px - 5} y={py - 5} width="10" height="10" rx="1" />
      <text className="number" x={label + out * numberPx} y={py + 4} textAnchor={isLeft ? 'end' : 'start'}>
        {pin.pin + 1}
      </text>
      <text className="name" x={label + out * namePx} y={py + 4.3} textAnchor={isLeft ? 'end' : 'start'}>
        {fitted(nameOf(pin.line), frame.label - namePx)}
      </text>
      {pin.meeting === 'open' && (
        <circle className="ring" cx={label + out * (frame.label + frame.lane / 2)} cy={py} r="5.5" />
      )}
    </g>
  );
}

/** What became one, strung together. */
function ChainMark({ chain, frame, dims }: { chain: Chain; frame: Frame; dims: Dims }) {
  const { x, y, column } = frame;
  const out = chain.column === 0 ? -1 : 1;
  const lane = Math.min(chain.lane, frame.lanes - 1);
  const slabEdge = x(chain.column === 0 ? -1 : 2) + out * (column / 2 + frame.label);
  const bx = slabEdge + out * (lane + 0.5) * frame.lane;
  return (
    <g className={`chain ${levelOf(chain.group)}${dims(chain.group)}`}>
      <path className="string" d={`M${bx} ${y(Math.min(...chain.rows))}V${y(Math.max(...chain.rows))}`} />
      {chain.rows.map((row) => (
        <path key={row} className="string" d={`M${slabEdge - out * 3} ${y(row)}H${bx}`} />
      ))}
      {chain.rows.map((row) => (
        <Bead key={row} group={chain.group} x={bx} y={y(row)} />
      ))}
    </g>
  );
}

function Contact({ contact, frame, dims }: { contact: SceneContact; frame: Frame; dims: Dims }) {
  const { x, y, column, row } = frame;
  const [w, h] = [column - 7, row - 7];
  return (
    <g
      className={`contact ${contact.meeting ?? 'free'}${dims(contact.group)}`}
      style={at(x(contact.column), y(contact.row))}
    >
      <rect className="chip" x={-w / 2} y={-h / 2} width={w} height={h} rx="3" />
      <text y="4.3">{fitted(nameOf(contact.line), w - 2, frame.isTight ? SMALL_LETTER_PX : LETTER_PX)}</text>
    </g>
  );
}

/** The connector over the pins: ribbon, body, stripe at contact 1, and each contact by its line. */
function Plug({ scene, frame, dims }: { scene: PinScene; frame: Frame; dims: Dims }) {
  const { x, y, column, row } = frame;
  const { plug } = scene;
  const [w, h] = [plug.columns * column + 6, plug.rows * row + 12];
  const stripeUp = scene.contacts[0]?.row === plug.row;
  const corner = at(x(plug.column) - column / 2 - 3, y(plug.row) - row / 2 - 6);
  const stripeY = y(plug.row) - row / 2 + (stripeUp ? -6 : plug.rows * row + 1);
  const { stub } = frame;
  const conductors = Array.from({ length: 2 * plug.rows - 1 }, (_, i) => 6 + ((i + 1) * row) / 2);
  return (
    <>
      <g className="part" style={corner}>
        <g>
          <rect className="band" x={-stub} y="1" width={w + 2 * stub} height={h - 2} />
          <path className="conductors" d={conductors.map((cy) => `M${-stub} ${cy}H${w + stub}`).join('')} />
        </g>
      </g>
      <g className="part" style={at(x(plug.column) - column / 2 - 3, stripeY)}>
        <rect className="stripe" x={-stub} width={w + 2 * stub} height="5" />
      </g>
      <g className="part" style={corner}>
        <rect className="shell" y="4" width={w} height={h - 8} rx="4" />
      </g>
      <g className="part" style={at(x(plug.column) - column / 2 - 3, stripeY)}>
        <rect className="stripe" width={w} height="5" rx="1.5" />
      </g>
      {scene.contacts.map((contact) => (
        <Contact key={contact.contact} contact={contact} frame={frame} dims={dims} />
      ))}
    </>
  );
}

interface Props {
  readonly scene: PinScene;
  readonly size: MapSize;
  readonly isKeyed: boolean;
  /** The connector goes into the socket of another ribbon. */
  readonly isSocket: boolean;
  /** Letter of the group that stands out. */
  readonly focus: string | null;
}

/** What meets what: the header with its lines, and over it the connector with those of the ribbon. */
export function PinMap({ scene, size, isKeyed, isSocket, focus }: Props) {
  const frame = frameOf(size, scene.rows);
  const dims: Dims = (group) => (focus === null || group?.letter === focus ? '' : ' dim');
  return (
    <svg
      className={size.isTight ? 'pin-map tight' : 'pin-map'}
      width={frame.width}
      height={frame.height}
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      aria-hidden="true"
    >
      <Ground frame={frame} scene={scene} isKeyed={isKeyed} />
      {scene.pins.map((pin) => (
        <Pin key={pin.pin} pin={pin} frame={frame} isSocket={isSocket} dims={dims} />
      ))}
      {scene.chains.map((chain) => (
        <ChainMark key={`${chain.column}${chain.group.letter}`} chain={chain} frame={frame} dims={dims} />
      ))}
      <g className="plug">
        <Plug scene={scene} frame={frame} dims={dims} />
      </g>
    </svg>
  );
}
