import { fail, ok, type Result } from './result.ts';

/** Brings a document of one version to the next; pure, and free to throw for what it cannot understand. */
export type Migration = (data: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** Steps by the version that they start from. Version 1 is the first, so there are none yet. */
const migrations: ReadonlyMap<number, Migration> = new Map();

/**
 * Brings a document up to a version, step by step.
 * @returns the document, or the version at which a step failed
 */
export function migrate(
  data: Readonly<Record<string, unknown>>,
  from: number,
  to: number,
  steps: ReadonlyMap<number, Migration> = migrations,
): Result<Readonly<Record<string, unknown>>, { readonly at: number }> {
  let current = data;
  for (let version = from; version < to; version++) {
    const step = steps.get(version);
    if (!step) return fail({ at: version });
    try {
      current = { ...step(current), version: version + 1 };
    } catch {
      return fail({ at: version });
    }
  }
  return ok(current);
}
