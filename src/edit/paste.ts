import type { Clip } from '../layout/clip.ts';
import type { Kit, Layout, Module, Take } from '../layout/layout.ts';
import { OPEN_LIMITS } from '../layout/open-limits.ts';
import { ok } from '../layout/result.ts';
import { addCopies } from './add-copies.ts';
import { type Edited, editTake, find, kindOf, refuse, withField } from './change.ts';
import { kitOf } from './clip-of.ts';
import { findRoom, type Group, type Wish } from './find-room.ts';
import { mergeKit } from './merge-kit.ts';

/**
 * Puts a group into a take, of this layout or of another: at its own place if that is free, else where `findRoom`
 * says, or as near as can be to a place. Kinds, buses and voltages that the kit lacks come with it.
 */
export interface Paste {
  readonly type: 'paste';
  readonly take: string;
  readonly clip: Clip;
  /** Where the middle of the group should come, and which row its first one should be. */
  readonly near?: { readonly row: string; readonly atHp: number };
}

/** The group in terms of the kit that it is put into. */
function inTermsOf(kit: Kit, clip: Clip): { readonly kit: Kit; readonly clip: Clip } {
  const merged = mergeKit(kit, kitOf(clip.kit, clip.modules, clip.ribbons));
  const renamed = <T extends { readonly kind: string }>(
    list: readonly T[],
    idOf: ReadonlyMap<string, string>,
  ) => list.map((thing) => withField(thing, 'kind', idOf.get(thing.kind) ?? thing.kind));
  return {
    kit: merged.kit,
    clip: {
      ...clip,
      kit: merged.kit,
      modules: renamed(clip.modules, merged.moduleKindOf),
      ribbons: renamed(clip.ribbons, merged.ribbonKindOf),
    },
  };
}

const rightEnd = (kit: Kit, modules: readonly Module[]): number =>
  Math.max(...modules.map((module) => module.atHp + kindOf(kit, module).widthHp));

/** A group of more rows than a case has: what stood in those below comes behind what stands in the last one. */
function folded(kit: Kit, group: Group, rows: number): Group {
  const kept = group.rows.slice(0, rows);
  const last = kept.at(-1);
  let modules = group.modules.filter(({ row }) => kept.some(({ id }) => id === row));
  for (const { id } of group.rows.slice(rows)) {
    const below = group.modules.filter(({ row }) => row === id);
    if (!last || below.length === 0) continue;
    const from = Math.min(...below.map(({ atHp }) => atHp));
    const shift = modules.length > 0 ? Math.ceil(rightEnd(kit, modules) - from) : 0;
    modules = [...modules, ...below.map((each) => ({ ...each, row: last.id, atHp: each.atHp + shift }))];
  }
  return { rows: kept, modules };
}

/** The row of the take in which the group's first one is wished, as far down as leaves room for the others. */
function homeOf(take: Take, group: Group, near: Paste['near']): number {
  const wished = near?.row ?? group.rows[0]?.id;
  const row = take.rows.findIndex(({ id }) => id === wished);
  return Math.max(0, Math.min(row, take.rows.length - group.rows.length));
}

const refuseIfKitFull = ({ voltages, buses, modules, ribbons }: Kit) => {
  const most = OPEN_LIMITS.kinds.most;
  if ([buses, modules, ribbons].some(({ length }) => length > most))
    return refuse(`The kit would hold more than ${most} kinds`);
  if (voltages.length > OPEN_LIMITS.voltages.most)
    return refuse(`The kit would hold more than ${OPEN_LIMITS.voltages.most} voltages`);
  return undefined;
};

export function paste(layout: Layout, edit: Paste): Edited<Layout> {
  const { kit, clip } = inTermsOf(layout.kit, edit.clip);
  const full = refuseIfKitFull(kit);
  if (full) return full;
  const pasted = editTake(layout, edit.take, (take) => {
    if (edit.near) {
      const row = find(take.rows, edit.near.row, 'row');
      if (!row.ok) return row;
    }
    if (clip.modules.length === 0) return ok(take);
    if (take.rows.length === 0) return refuse('There is no row to paste into');
    const group = { ...folded(kit, clip, take.rows.length), ribbons: clip.ribbons };
    const wish: Wish = edit.near ? { nearHp: edit.near.atHp } : 'at their place';
    return addCopies(kit, take, group, findRoom(kit, take, group, homeOf(take, group, edit.near), wish));
  });
  if (!pasted.ok || pasted.value === layout) return pasted;
  return ok(withField(pasted.value, 'kit', kit));
}
