import type { Progress } from './choose.ts';
import type { Engine } from './engine.ts';

/** Thrown by the engine that stands in until one is needed. */
const MISSING = new Error('no engine is loaded');

const none: Engine = () => {
  throw MISSING;
};

/**
 * Runs a proposal to its end and loads an engine only if it comes to that, which most do not; then it begins again.
 *
 * @param tell - is told now and then how far it is
 */
export async function withEngine<T>(
  make: (engine: Engine) => Generator<Progress, T>,
  load: () => Promise<Engine>,
  tell: (progress: Progress) => void = () => undefined,
): Promise<T> {
  const finish = (engine: Engine): T => {
    const run = make(engine);
    for (let step = run.next(); ; step = run.next()) {
      if (step.done) return step.value;
      tell(step.value);
    }
  };
  try {
    return finish(none);
  } catch (reason) {
    if (reason !== MISSING) throw reason;
  }
  return finish(await load());
}
