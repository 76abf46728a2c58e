import { isSamePosition, type Position } from './position.ts';
import type { ReadyStep } from './ready-steps.ts';

interface Props {
  readonly steps: readonly ReadyStep[];
  readonly position: Position;
  readonly show: (position: Position) => void;
}

/** The usual ways to plug it, one tap each. */
export const Steps = ({ steps, position, show }: Props) => (
  <fieldset className="steps">
    <legend className="unseen">Ready steps</legend>
    {steps.map(({ label, at, isDrawn }) => (
      <button key={label} type="button" aria-pressed={isSamePosition(at, position)} onClick={() => show(at)}>
        {label}
        {isDrawn && label !== 'As drawn' && <small>as drawn</small>}
      </button>
    ))}
  </fieldset>
);
