import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyLayout } from '../../src/index.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout } from '../../src/layout/layout.ts';
import { arbitraryLayout } from '../support/arbitrary-layout.ts';
import { runs } from '../support/runs.ts';
import { Monkey } from './monkey.ts';

const draws = fc.array(fc.nat({ max: 999 }), { minLength: 40, maxLength: 40 });
const walk = fc.array(draws, { minLength: 1, maxLength: 25 });

/** Walks on until something is wrong, and says what and on which way. */
async function wentWrong(layout: Layout, steps: readonly (readonly number[])[]): Promise<string> {
  const monkey = new Monkey(layout);
  for (const step of steps) {
    try {
      await monkey.step(step);
      const trouble = monkey.trouble();
      if (trouble) return [trouble, ...monkey.trail].join('\n');
    } catch (thrown) {
      return [(thrown as Error).stack, ...monkey.trail].join('\n');
    }
  }
  return '';
}

/*
 * Whatever hands do, in whatever order: nothing throws, no gesture stays half done, the layout can always be saved
 * and opened again, notes are what they would be afresh, and undo leads all the way back. A walk that fails is
 * printed with its seed, shortened.
 */
describe('random hands', () => {
  it('do no harm to the demo', async () => {
    const property = fc.asyncProperty(walk, async (steps) => {
      expect(await wentWrong(demoLayout(), steps)).toBe('');
    });
    await fc.assert(property, runs(30));
  });

  it('do no harm to an empty case', async () => {
    const property = fc.asyncProperty(walk, async (steps) => {
      expect(await wentWrong(emptyLayout(), steps)).toBe('');
    });
    await fc.assert(property, runs(10));
  });

  it('do no harm to any layout', async () => {
    const property = fc.asyncProperty(arbitraryLayout, walk, async (layout, steps) => {
      expect(await wentWrong(layout, steps)).toBe('');
    });
    await fc.assert(property, runs(15));
  });
});
