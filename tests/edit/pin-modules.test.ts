import { describe, expect, it } from 'vitest';
import { applied, littleLayout, module, takeOf } from '../support/little-layout.ts';

const pin = (pinned: boolean, ...modules: readonly string[]) =>
  ({ type: 'pin-modules', take: 'take', modules, pinned }) as const;

const layout = littleLayout({
  modules: [
    module('a', 'cobble', 0),
    module('b', 'cobble', 5, { pinned: true }),
    module('c', 'cobble', 10, { pinned: false }),
  ],
});

describe('pin-modules', () => {
  it('pins and lets go', () => {
    const pinned = applied(layout, pin(true, 'a', 'b'));
    expect(takeOf(pinned).modules.map((each) => each.pinned)).toEqual([true, true, false]);
    expect(takeOf(pinned).modules[1]).toBe(takeOf(layout).modules[1]);
    const free = applied(pinned, pin(false, 'a', 'b'));
    expect(takeOf(free).modules.slice(0, 2)).toEqual([module('a', 'cobble', 0), module('b', 'cobble', 5)]);
  });

  it('changes nothing where all are so already', () => {
    expect(applied(layout, pin(true, 'b'))).toBe(layout);
    expect(applied(layout, pin(false, 'a', 'c'))).toBe(layout);
  });
});
