import { expect, it } from 'vitest';
import { engineOf, type Highs } from '../../src/planner/engine.ts';

/** A HiGHS that breaks off whenever it is run with presolve, or always. */
function breaking(when: 'simplifying' | 'always'): Highs {
  let presolve: unknown;
  const model = {
    options: {
      set: (values: Readonly<Record<string, unknown>>) => {
        presolve = values.presolve ?? presolve;
      },
    },
    info: { get: () => 2 },
    passModel: () => undefined,
    changeColsCost: () => undefined,
    clearSolver: () => undefined,
    run: () => {
      if (when === 'always' || presolve !== 'off') throw new Error('run failed with HiGHS status -1');
    },
    getModelStatus: () => 7,
    getObjectiveValue: () => 1,
    getSolution: () => ({ colValue: [1] }),
    dispose: () => undefined,
  };
  return { infinity: Number.POSITIVE_INFINITY, createModel: () => model };
}

const PROGRAM = { most: [1], whole: [true], rows: [{ least: 1, most: 1, columns: [0], weights: [1] }] };

it('solves without simplifying where HiGHS breaks off with it', () => {
  const { state, values } = engineOf(breaking('simplifying'))(PROGRAM).minimise([1], 0.5);
  expect([state, values]).toEqual(['proven', [1]]);
});

it('gives up where HiGHS breaks off in any case', () => {
  const { state, values } = engineOf(breaking('always'))(PROGRAM).minimise([1], 0.5);
  expect([state, values]).toEqual(['open', undefined]);
});
