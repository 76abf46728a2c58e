/** Whose work is in the program, and under which terms; the build writes a list of these. */
export interface Licence {
  readonly name: string;
  readonly version: string;
  /** As its package names it. */
  readonly licence: string;
  /** Its terms; empty where the package brings no file of them. */
  readonly text: string;
}
