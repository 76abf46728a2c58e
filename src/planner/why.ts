import type { WholeTake } from '../wiring/whole-take.ts';
import type { Group } from './groups.ts';
import type { Task } from './task.ts';

/** A module that a proposal leaves unlinked or without power, and what stands in the way. */
export interface Unlinked {
  readonly module: string;
  readonly why: string;
}

export function whyUnlinked(task: Task, derived: WholeTake, groups: readonly Group[]): Unlinked[] {
  void groups;
  const out: Unlinked[] = [];
  for (const { module, bus } of task.wishes) {
    const placed = derived.places.moduleById.get(module.id);
    const seated = placed?.headers.some(
      (header) => header.role === 'member' && header.bus.bus.id === bus.bus.id && derived.wiring.seatedOn.has(header),
    );
    if (!seated) out.push({ module: module.id, why: '' });
  }
  return out;
}
