import type { DerivedTake } from '../wiring/derived-take.ts';
import type { WholeTake } from '../wiring/whole-take.ts';

/**
 * What a rule on whole takes wants to know of each part, as one list, part by part. A part is asked once: it stays
 * the same as long as nothing in it changes, and so does its answer.
 */
export function eachPart<T>(ask: (part: DerivedTake) => readonly T[]): (take: WholeTake) => T[] {
  const answers = new WeakMap<DerivedTake, readonly T[]>();
  const answerOf = (part: DerivedTake): readonly T[] => {
    const known = answers.get(part);
    if (known) return known;
    const answer = ask(part);
    answers.set(part, answer);
    return answer;
  };
  return ({ parts }) => parts.flatMap(answerOf);
}
