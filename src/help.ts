/** A door of the core: what the help tells of the checks. Apart so that the app loads it when it is asked for. */
export { catalogue } from './checks/catalogue.ts';
export { type ExamplePicture, examplePicture } from './help/example-picture.ts';
export type { Inset } from './help/inset.ts';
