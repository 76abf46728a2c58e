import { canRehearse, type Joint, seatAt } from '../../src/index.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { chosenConnector, ribbonIn } from '../store/aim.ts';
import type { Action } from './action.ts';
import { modulesSelected } from './selected.ts';

/** Opens the rehearsal of a seat. */
export const rehearseSeat = ({ session }: Editor, { ribbon, connector }: Joint): void =>
  session.setState({ rehearsing: { ribbon: ribbon.id, connector } });

/** The seat of the connector chosen; else the first one of the ribbon, or of the module, that is selected. */
function seatMeant(editor: Editor): Joint | undefined {
  const { derived } = shownAnalysis(editor);
  const chosen = chosenConnector(editor);
  const seat = chosen && seatAt(derived, chosen.ribbon.id, chosen.connector);
  if (seat) return canRehearse(seat) ? seat : undefined;
  const ribbon = ribbonIn(derived, editor.session.getState().selection);
  if (ribbon) return ribbon.uses.flat().find(canRehearse);
  const [module] = modulesSelected(editor);
  const headers = (module && derived.places.moduleById.get(module.id)?.headers) ?? [];
  return headers.flatMap((header) => derived.wiring.seatedOn.get(header) ?? []).find(canRehearse);
}

export const rehearse: Action = {
  id: 'rehearse',
  label: () => 'Rehearse a wrong plug',
  icon: 'rehearse',
  shortcuts: [{ key: 'r', shift: true }],
  enabled: (editor) => seatMeant(editor) !== undefined,
  run(editor) {
    const seat = seatMeant(editor);
    if (seat) rehearseSeat(editor, seat);
  },
};
