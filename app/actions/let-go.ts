import { NOTHING } from '../store/session.ts';
import { type Action, always } from './action.ts';

/**
 * What Escape takes back when nothing is dragged: first what is in hand, then the note, the chosen connector, the
 * panel of the case or of faults, then the selection.
 */
export const letGo: Action = {
  id: 'let-go',
  label: () => 'Let go',
  shortcuts: [{ key: 'Escape' }],
  enabled: always,
  run: ({ session }) => {
    const { inHand, focus, connector, fold } = session.getState();
    if (inHand !== null) session.setState({ inHand: null });
    else if (focus !== null) session.setState({ focus: null });
    else if (connector !== null) session.setState({ connector: null });
    else if (fold === 'case' || fold === 'faults') session.setState({ fold: null });
    else session.setState({ selection: NOTHING, fold: null });
  },
};
