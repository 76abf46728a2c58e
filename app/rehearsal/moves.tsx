import { Icon } from '../panels/icon.tsx';
import type { Facing } from './facing.ts';
import { stepped } from './plug-keys.ts';
import { isSamePosition, type Position, type Reach, turnedOver } from './position.ts';

const MOVES = [
  { label: 'Row left', sign: '← Row', step: [-1, 0] },
  { label: 'Row right', sign: 'Row →', step: [1, 0] },
  { label: 'Pair up', sign: '↑ Pair', step: [0, -1] },
  { label: 'Pair down', sign: '↓ Pair', step: [0, 1] },
] as const;

interface Props {
  readonly position: Position;
  readonly facing: Facing;
  readonly reach: Reach;
  readonly show: (position: Position) => void;
}

/** What arrow keys and R do, for those who tap. */
export const Moves = ({ position, facing, reach, show }: Props) => (
  <div className="moves">
    {MOVES.map(({ label, sign, step }) => {
      const next = stepped(position, step, facing, reach);
      return (
        <button
          key={label}
          type="button"
          aria-label={label}
          title={label}
          aria-disabled={isSamePosition(next, position)}
          onClick={() => show(next)}
        >
          {sign}
        </button>
      );
    })}
    <button type="button" title="Turn (R)" onClick={() => show(turnedOver(position))}>
      <Icon name="turn" />
      Turn
    </button>
  </div>
);
