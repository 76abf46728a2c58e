import type { Numbering } from './numbering.ts';
import { numberOf } from './numbering.ts';

const PINS = 8;
const X = [34, 74] as const;
const yOf = (pin: number): number => 20 + Math.floor(pin / 2) * 24;

const WAYS: Readonly<Record<Numbering, string>> = {
  zigzag: 'M34 20H74L34 44H74L34 68H74L34 92H74',
  down: 'M34 20V92C34 108 74 108 74 92V20',
};

/** A field of eight pins with the way of counting through it. */
function CountingPicture({ numbering }: { readonly numbering: Numbering }) {
  return (
    <svg className="counting" width="108" height="112" viewBox="0 0 108 112" aria-hidden="true">
      <rect className="body" x="18" y="6" width="72" height="100" rx="4" />
      <path className="one" d="M8 14l8 6-8 6z" />
      <path className="way" d={WAYS[numbering]} />
      {Array.from({ length: PINS }, (_, pin) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a pin is its number.
        <g key={pin}>
          <circle className="pin" cx={X[pin % 2 === 0 ? 0 : 1]} cy={yOf(pin)} r="9" />
          <text x={X[pin % 2 === 0 ? 0 : 1]} y={yOf(pin) + 4}>
            {numberOf(pin, PINS, numbering)}
          </text>
        </g>
      ))}
    </svg>
  );
}

const HABITS = [
  {
    id: 'zigzag',
    label: 'Across and on',
    means:
      'as on a pin header: 1 and 2 are a pair. Conductors of a ribbon lie in this order. Layouts are kept so.',
  },
  {
    id: 'down',
    label: 'Down one side, up the other',
    means: 'as on a chip. Enter what you have in this order: it is turned into the other.',
  },
] as const satisfies readonly { id: Numbering; label: string; means: string }[];

interface Props {
  readonly value: Numbering;
  readonly onChoice: (numbering: Numbering) => void;
}

/** Both habits of counting pins, to enter a pinout in either. */
export const NumberingChoice = ({ value, onChoice }: Props) => (
  <fieldset className="numberings">
    <legend>Numbers are counted</legend>
    {HABITS.map(({ id, label, means }) => (
      <label key={id} className={id === value ? 'chosen' : undefined}>
        <CountingPicture numbering={id} />
        <span>
          <span className="radio">
            <input type="radio" name="numbering" checked={id === value} onChange={() => onChoice(id)} />
            <b>{label}</b>
          </span>
          <small>{means}</small>
        </span>
      </label>
    ))}
  </fieldset>
);
