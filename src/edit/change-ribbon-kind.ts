import type { Layout, Ribbon, RibbonKind, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, mapKept, withField } from './change.ts';
import { dropSeats } from './drop-seats.ts';
import { refuseRibbonKind } from './kind-faults.ts';
import { replaced } from './replaced.ts';

/**
 * Makes a kind of ribbon another one, and with it every ribbon of it in every take. The kind is told by its id;
 * everything that this program knows of it is as given, what it does not know stays. Connectors that are no longer
 * there come off what they sat on, with the plugs in them; a ribbon that now hangs loose has neither edge nor twist.
 */
export interface ChangeRibbonKind {
  readonly type: 'change-ribbon-kind';
  readonly kind: RibbonKind;
}

function refit(ribbon: Ribbon, { lay, connectors }: RibbonKind): Ribbon {
  const { twists, stripe } = ribbon;
  const isLoose = lay === 'loose';
  const isTwisted = twists?.some((halfTwists) => halfTwists > 0) === true;
  const gaps = connectors.length - 1;
  const fitting = twists && twists.length > gaps ? twists.slice(0, gaps) : twists;
  const straight = withField(ribbon, 'twists', isLoose && isTwisted ? undefined : fitting);
  return withField(straight, 'stripe', isLoose && stripe === 'up' ? undefined : stripe);
}

function refitTake(take: Take, kind: RibbonKind): Take {
  const changed = new Set(take.ribbons.filter((ribbon) => ribbon.kind === kind.id).map(({ id }) => id));
  const isLost = (ribbon: string, connector: number): boolean =>
    changed.has(ribbon) && connector >= kind.connectors.length;
  const refitted = mapKept(take.ribbons, (ribbon) => (changed.has(ribbon.id) ? refit(ribbon, kind) : ribbon));
  const ribbons = dropSeats(
    refitted,
    ({ connector, on }, ribbon) =>
      isLost(ribbon.id, connector) || ('ribbon' in on && isLost(on.ribbon, on.connector)),
  );
  return withField(take, 'ribbons', ribbons);
}

export function changeRibbonKind(layout: Layout, edit: ChangeRibbonKind): Edited<Layout> {
  const { kit, takes } = layout;
  const found = find(kit.ribbons, edit.kind.id, 'kind of ribbon');
  if (!found.ok) return found;
  const refusal = refuseRibbonKind(kit, edit.kind);
  if (refusal) return refusal;

  const kind = replaced('RibbonKind', found.value, edit.kind, 'connectors', 'Connector');
  const ribbons = mapKept(kit.ribbons, (other) => (other === found.value ? kind : other));
  const changed = withField(layout, 'kit', withField(kit, 'ribbons', ribbons));
  const refitted = mapKept(takes, (take) => refitTake(take, kind));
  return ok(withField(changed, 'takes', refitted));
}
