import { describe, expect, it } from 'vitest';
import { applied, littleLayout, takeOf } from '../support/little-layout.ts';

const layout = littleLayout();
const accept = (more: { readonly key: string; readonly facts?: string; readonly why?: string }) =>
  ({ type: 'accept-finding', take: 'take', ...more }) as const;
const bringBack = (key: string) => ({ type: 'bring-back', take: 'take', key }) as const;

describe('accept-finding', () => {
  it('puts a finding away with its facts and a reason', () => {
    const note = { key: 'overlap/a', facts: 'sharedHp=1', why: 'sawn off' };
    expect(takeOf(applied(layout, accept(note))).accepted).toEqual([note]);
  });

  it('judges anew what was put away, keys of a newer program kept', () => {
    const before = littleLayout({
      accepted: [{ key: 'k', facts: 'x=1', why: 'old', later: 1 } as never, { key: 'other' }],
    });
    const after = takeOf(applied(before, accept({ key: 'k', facts: 'x=2' })));
    expect(after.accepted).toEqual([{ key: 'k', facts: 'x=2', later: 1 }, { key: 'other' }]);
    expect(after.accepted?.[1]).toBe(takeOf(before).accepted?.[1]);
  });

  it('changes nothing the second time', () => {
    const once = applied(layout, accept({ key: 'k', facts: 'x=1' }));
    expect(applied(once, accept({ key: 'k', facts: 'x=1' }))).toBe(once);
  });
});

describe('bring-back', () => {
  it('brings one finding back and leaves no empty list', () => {
    const both = applied(applied(layout, accept({ key: 'a' })), accept({ key: 'b' }));
    const one = applied(both, bringBack('a'));
    expect(takeOf(one).accepted).toEqual([{ key: 'b' }]);
    expect(applied(one, bringBack('b'))).toEqual(layout);
  });
});
