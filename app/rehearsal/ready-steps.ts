import { downward, type Facing, rightward } from './facing.ts';
import { HOME, isSamePosition, type Position, type Reach } from './position.ts';

export interface ReadyStep {
  readonly label: string;
  readonly at: Position;
  /** The drawing itself has it so. */
  readonly isDrawn: boolean;
}

/** The ways in which connectors are plugged wrongly, one tap each; and as the drawing has it, where that is another. */
export function readySteps(drawn: Position, facing: Facing, reach: Reach): ReadyStep[] {
  const rows = drawn.rows === 0 ? -rightward(facing) : drawn.rows;
  const up = -downward(facing);
  const named: [string, Position][] = [
    ['As it belongs', HOME],
    ['Turned', { ...HOME, turned: true }],
    ['One row off', { ...HOME, rows }],
  ];
  if (reach.pairs > 0) {
    named.push(['One pair up', { ...HOME, pairs: up }], ['One pair down', { ...HOME, pairs: -up }]);
  }
  if (!named.some(([, at]) => isSamePosition(at, drawn))) named.push(['As drawn', drawn]);
  return named.map(([label, at]) => ({
    label,
    at,
    isDrawn: isSamePosition(at, drawn) && !isSamePosition(drawn, HOME),
  }));
}
