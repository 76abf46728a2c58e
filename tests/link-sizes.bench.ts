import { expect, it } from 'vitest';
import { demoLayout } from '../src/layout/demo.ts';
import { bigLayout } from './support/big-take.ts';
import { fortyModules } from './support/forty-modules.ts';
import { ADDRESS, linkSizes } from './support/link-sizes.ts';

/** Characters behind the address; the demo's budget is a QR code of version 25-M with an address of 60. */
const MOST_OF_DEMO = 997 - ADDRESS.length;
const SHARE = 0.6;

it('tells how long links are', () => {
  const rows = [
    { layout: 'the demo', sizes: linkSizes(demoLayout()), budget: MOST_OF_DEMO },
    { layout: '40 modules, every field', sizes: linkSizes(fortyModules()), budget: undefined },
    { layout: '150 modules', sizes: linkSizes(bigLayout(150)), budget: undefined },
  ];
  console.table(
    rows.map(({ layout, sizes: { plain, deflated, brotli, ours, ratio }, budget }) => ({
      layout,
      'plain JSON, bytes': plain,
      'deflate, letters': deflated,
      'brotli-11, letters': brotli,
      'link, letters': ours,
      'link / brotli': ratio.toFixed(2),
      'budget, letters': budget ?? Math.floor(SHARE * brotli),
    })),
  );
  expect(rows.every(({ sizes }) => sizes.ours > 0)).toBe(true);
});
