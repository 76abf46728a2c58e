import { downward, type Facing, rightward } from './facing.ts';
import { HOME, movedBy, type Position, type Reach, turnedOver } from './position.ts';

type Step = readonly [right: number, down: number];

const STEPS: ReadonlyMap<string, Step> = new Map([
  ['ArrowLeft', [-1, 0]],
  ['ArrowRight', [1, 0]],
  ['ArrowUp', [0, -1]],
  ['ArrowDown', [0, 1]],
]);

export const stepped = (from: Position, [right, down]: Step, facing: Facing, reach: Reach): Position =>
  movedBy(from, right * rightward(facing), down * downward(facing), reach);

/** Where a key takes the connector; nothing if it means nothing here. Named as `KeyboardEvent.key` names it. */
export function afterKey(key: string, from: Position, facing: Facing, reach: Reach): Position | undefined {
  if (key === ' ' || key.toLowerCase() === 'r') return turnedOver(from);
  if (key === 'Home') return HOME;
  const step = STEPS.get(key);
  return step && stepped(from, step, facing, reach);
}
