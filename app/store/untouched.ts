import type { Layout } from '../../src/index.ts';

/** Layouts that the program itself put on the screen, as it put them there: nothing in them needs keeping. */
export const untouched = new WeakSet<Layout>();
