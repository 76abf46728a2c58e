import type { Editor } from '../editor.ts';
import { toggleLayer } from '../store/layer-list.ts';
import { NOTHING } from '../store/session.ts';
import { type Action, always } from './action.ts';

const hidesLeads = ({ session }: Editor): boolean => session.getState().hidden.has('leads');

/** Leads are what most often lies over everything else. */
export const toggleLeads: Action = {
  id: 'toggle-leads',
  label: (editor) => (hidesLeads(editor) ? 'Show the leads' : 'Hide the leads'),
  shortcuts: [{ key: 'h' }],
  enabled: always,
  run: (editor) => {
    toggleLayer(editor.session, 'leads');
    editor.session.setState({ spoken: hidesLeads(editor) ? 'Leads hidden.' : 'Leads shown.' });
  },
};

export const showAllLayers: Action = {
  id: 'show-all-layers',
  label: () => 'Show all layers',
  shortcuts: [{ key: 'h', shift: true }],
  enabled: ({ session }) => session.getState().hidden.size > 0,
  run: ({ session }) => session.setState({ hidden: NOTHING, spoken: 'All layers shown.' }),
};
