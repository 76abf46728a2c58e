import type { Clip } from '../layout/clip.ts';
import { GND } from '../layout/defaults.ts';
import type { Kit, Module, Ribbon, SeatedOn, Take } from '../layout/layout.ts';
import { idsOf } from './fresh.ts';

/** Ribbons that sit somewhere, and nowhere but on the modules and on one another. */
function ribbonsWithin(take: Take, modules: ReadonlySet<string>): readonly Ribbon[] {
  let within = take.ribbons.filter(({ seats }) => seats.length > 0);
  for (;;) {
    const ids = new Set(idsOf(within));
    const isWithin = (on: SeatedOn) =>
      'module' in on ? modules.has(on.module) : 'ribbon' in on && ids.has(on.ribbon);
    const kept = within.filter(({ seats }) => seats.every(({ on }) => isWithin(on)));
    if (kept.length === within.length) return kept;
    within = kept;
  }
}

interface OfKind {
  readonly kind: string;
}

/** The part of a kit that some modules and ribbons are made of: their kinds, the buses of these, and the voltages. */
export function kitOf(kit: Kit, modules: readonly OfKind[], ribbons: readonly OfKind[]): Kit {
  const moduleKinds = new Set(modules.map(({ kind }) => kind));
  const ribbonKinds = new Set(ribbons.map(({ kind }) => kind));
  const used = {
    modules: kit.modules.filter(({ id }) => moduleKinds.has(id)),
    ribbons: kit.ribbons.filter(({ id }) => ribbonKinds.has(id)),
  };
  const busIds = new Set([
    ...used.modules.flatMap(({ headers }) => headers.map(({ bus }) => bus)),
    ...used.ribbons.map(({ bus }) => bus),
  ]);
  const buses = kit.buses.filter(({ id }) => busIds.has(id));
  const lines = new Set([
    ...buses.flatMap(({ pinout }) => pinout),
    ...used.modules.flatMap(({ draws }) => Object.keys(draws)),
  ]);
  lines.delete(GND);
  return { voltages: kit.voltages.filter(({ id }) => lines.has(id)), buses, ...used };
}

/** What copying these modules of a take takes along: themselves, and the ribbons that hang on nothing else. */
export function clipOf(kit: Kit, take: Take, modules: readonly Module[]): Clip {
  const ribbons = ribbonsWithin(take, new Set(idsOf(modules)));
  const stands = new Set(modules.map(({ row }) => row));
  const rows = take.rows.map(({ id }) => stands.has(id));
  return {
    kit: kitOf(kit, modules, ribbons),
    rows: take.rows.slice(rows.indexOf(true), rows.lastIndexOf(true) + 1),
    modules,
    ribbons,
  };
}
