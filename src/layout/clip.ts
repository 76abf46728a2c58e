import type { Kit, Layout, Module, Ribbon, Row } from './layout.ts';

/**
 * Modules taken out of a take as a group, with the ribbons that hang on nothing else. It brings what it needs to
 * be put into any layout; as a document it is a layout of one take without a supply.
 */
export interface Clip {
  /** The voltages, buses and kinds that the group is made of, and no others. */
  readonly kit: Kit;
  /** Those that the group stands in and those between them, top to bottom; places along them are as they were. */
  readonly rows: readonly Row[];
  readonly modules: readonly Module[];
  readonly ribbons: readonly Ribbon[];
}

/** What is put on the clipboard says that it is ours, and in which version of the layout its parts are written. */
export const CLIP_FORMAT = 'ribbonwright-clip';
const VERSION: Layout['version'] = 1;

/** A clip as the text that is put on the clipboard. Keys that this program does not know are kept. */
export const clipText = ({ kit, rows, modules, ribbons }: Clip): string =>
  JSON.stringify({ format: CLIP_FORMAT, version: VERSION, kit, rows, modules, ribbons });
