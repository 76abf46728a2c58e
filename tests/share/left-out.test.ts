import { describe, expect, it } from 'vitest';
import { openDocument } from '../../src/layout/open.ts';
import { leaveOut } from '../../src/share/left-out.ts';
import { FIXTURE } from '../support/fixture.ts';

const layout = JSON.parse(FIXTURE);

describe('what need not be told', () => {
  it.each([
    [{ prices: true }, ['price']],
    [{ owned: true }, ['owned']],
    [{ notes: true }, ['notes', 'why']],
    [{ prices: true, owned: true, notes: true }, ['price', 'owned', 'notes', 'why']],
  ] as const)('%j', (choice, keys) => {
    const left = leaveOut(layout, choice);
    const text = JSON.stringify(left);
    for (const key of ['price', 'owned', 'notes', 'why']) {
      expect(JSON.stringify(layout)).toContain(`"${key}":`);
      expect(text.includes(`"${key}":`)).toBe(!(keys as readonly string[]).includes(key));
    }
    expect(openDocument(JSON.parse(text)).ok).toBe(true);
    expect(text).toContain('"later":');
  });

  it('is nothing unless asked for: the very layout', () => {
    expect(leaveOut(layout, {})).toBe(layout);
  });
});
