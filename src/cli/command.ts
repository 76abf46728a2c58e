import { nearest } from '../document.ts';
import type { Layout, Take } from '../layout/layout.ts';

/** What a command leaves behind: text for standard output, and the exit status. */
export interface Outcome {
  readonly text: string;
  readonly exit: 0 | 1;
}

/** Unusable input or wrong usage: one line for standard error, exit status 2. */
export class Refusal extends Error {}

interface Described {
  /** After the command's name, as in the help. */
  readonly usage: string;
  readonly says: string;
}

/** A command of the command line. */
export interface Command extends Described {
  run(args: readonly string[]): Outcome;
}

/** A command that may have to load something first. */
export interface LateCommand extends Described {
  runLate(args: readonly string[]): Promise<Outcome>;
}

export const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** The take of that id, or all of them. */
export function takesOf(layout: Layout, id: string | undefined): readonly Take[] {
  if (id === undefined) return layout.takes;
  return [pick(layout.takes, id, 'take')];
}

/** The thing of that id; a refusal that names the nearest where there is none. */
export function pick<T extends { readonly id: string }>(things: readonly T[], id: string, noun: string): T {
  const found = things.find((thing) => thing.id === id);
  if (found) return found;
  const ids = things.map((thing) => thing.id);
  throw new Refusal(`no ${noun} ${JSON.stringify(id)}${didYouMean(id, ids)}`);
}

function didYouMean(id: string, ids: readonly string[]): string {
  const near = nearest(id, ids);
  return near === undefined ? '' : `; did you mean ${JSON.stringify(near)}?`;
}
