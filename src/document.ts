/** The second door of the core: files. Apart from `index.ts` so that the app can load it when it is needed. */
export { layoutJsonSchema } from './layout/json-schema.ts';
export { nearest } from './layout/nearest.ts';
export { describeFailure, type OpenFailure, openDocument, openLayout } from './layout/open.ts';
export { type ClipFailure, openClip } from './layout/open-clip.ts';
export { writeLayout } from './layout/write.ts';
