import type { Layout, Take } from '../../src/index.ts';

/** The take of that id; the first where an undo or another file took it away. */
export const takeOf = (layout: Layout, id: string): Take =>
  layout.takes.find((take) => take.id === id) ?? (layout.takes[0] as Take);
