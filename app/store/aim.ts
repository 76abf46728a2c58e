import { type DerivedTake, type JointTarget, type LaidRibbon, seatPlaces } from '../../src/index.ts';
import type { Aim } from '../canvas/model.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { type Selection, selectedAlone } from './selection.ts';
import type { ChosenConnector } from './session.ts';

/** A connector of a ribbon in its take. */
export interface RibbonEnd {
  readonly ribbon: LaidRibbon;
  readonly connector: number;
}

/** The ribbon that alone is selected. */
export function ribbonIn({ take, wiring }: DerivedTake, selection: Selection): LaidRibbon | undefined {
  const id = selectedAlone(take, selection)?.id;
  return id === undefined ? undefined : wiring.ribbonById.get(id);
}

/** The connector chosen, as long as its ribbon alone is selected. */
function chosenIn(
  take: DerivedTake,
  selection: Selection,
  chosen: ChosenConnector | null,
): RibbonEnd | undefined {
  const ribbon = chosen && ribbonIn(take, selection);
  if (!ribbon || ribbon.id !== chosen.ribbon || !ribbon.uses[chosen.connector]) return undefined;
  return { ribbon, connector: chosen.connector };
}

export function chosenConnector(editor: Editor): RibbonEnd | undefined {
  const { selection, connector } = editor.session.getState();
  return chosenIn(shownAnalysis(editor).derived, selection, connector);
}

/** What a connector itself sits on: the first, where it is seated twice. */
export const ownSeat = ({ ribbon, connector }: RibbonEnd): JointTarget | undefined =>
  ribbon.uses[connector]?.find((joint) => joint.ribbon === ribbon && joint.connector === connector)?.on;

/** The plug of another ribbon that sits in this socket: whoever pulls there pulls the plug. */
export function plugIn({ ribbon, connector }: RibbonEnd): RibbonEnd | undefined {
  const joint = ribbon.uses[connector]?.find((other) => other.ribbon !== ribbon);
  return joint && { ribbon: joint.ribbon, connector: joint.connector };
}

/** Everything that a connector could sit on, where it sits now first. */
export function placesFor(take: DerivedTake, end: RibbonEnd): readonly JointTarget[] {
  if (plugIn(end)) return [];
  const own = ownSeat(end);
  const free = seatPlaces(take, end.ribbon, end.connector);
  return own ? [own, ...free] : free;
}

function aimOf(take: DerivedTake, end: RibbonEnd): Aim {
  const { ribbon, connector } = end;
  const places = ribbon.ribbon.locked || plugIn(end) ? [] : seatPlaces(take, ribbon, connector);
  return { ribbon: ribbon.id, connector, places };
}

/** Keeps the session's aim up with the connector chosen and the take. */
export function startAiming(editor: Editor): () => void {
  const { session, layouts } = editor;
  let [take, end]: [DerivedTake | null, RibbonEnd | undefined] = [null, undefined];

  const follow = (): void => {
    if (session.getState().connector === null && session.getState().aim === null) return;
    const { derived } = shownAnalysis(editor);
    const chosen = chosenConnector(editor);
    const isSame = derived === take && chosen?.ribbon === end?.ribbon && chosen?.connector === end?.connector;
    if (isSame) return;
    [take, end] = [derived, chosen];
    session.setState({ aim: chosen ? aimOf(derived, chosen) : null });
  };

  const ends = [session.subscribe(follow), layouts.store.subscribe(follow)];
  return () => {
    for (const stop of ends) stop();
  };
}
