import type { Layout, Take } from './layout.ts';

/** The take that stands in the case, if one is marked so. */
export const takeInCase = ({ takes }: Pick<Layout, 'takes'>): Take | undefined =>
  takes.find(({ built }) => built?.inCase);
