import { isNarrow } from '../store/view.ts';
import { type Action, always } from './action.ts';

/** Opens the list of all that is in the take, or shuts it; where it opens it takes the keys. */
export const showList: Action = {
  id: 'show-list',
  label: () => 'By list',
  icon: 'list',
  shortcuts: [{ key: 'i' }],
  enabled: always,
  run: ({ session }) => {
    const { stage, fold, listOpen } = session.getState();
    if (isNarrow(stage)) session.setState({ fold: fold === 'list' ? null : 'list' });
    else {
      const isCovered = fold === 'case' || fold === 'faults';
      session.setState({ listOpen: isCovered || !listOpen, fold: isCovered ? null : fold });
    }
  },
};
