import { readFileSync } from 'node:fs';

/** A real file of version 1 with every field of the contract, kept for ever. */
export const FIXTURE = readFileSync(new URL('../fixtures/version-1.json', import.meta.url), 'utf8');

export type Path = readonly (string | number)[];

/** A copy of the fixture with one place set, or left out where the value is undefined. */
export function changed(path: Path, value: unknown): unknown {
  const copy = JSON.parse(FIXTURE);
  let holder = copy;
  for (const key of path.slice(0, -1)) holder = holder[key];
  const last = path[path.length - 1] as string;
  if (value === undefined && Array.isArray(holder)) holder.splice(Number(last), 1);
  else if (value === undefined) delete holder[last];
  else holder[last] = value;
  return copy;
}
