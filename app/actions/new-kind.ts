import type { KindDesk } from '../store/session.ts';
import { type Action, always } from './action.ts';

const WORDS: Readonly<Record<KindDesk['sort'], string>> = {
  module: 'New kind of module…',
  ribbon: 'New kind of ribbon…',
  lead: 'New kind of lead…',
};

const newKind = (sort: KindDesk['sort']): Action => ({
  id: `new-${sort}-kind`,
  label: () => WORDS[sort],
  icon: 'plus',
  enabled: always,
  run: ({ session }) => session.setState({ kindDesk: { sort, kind: null } }),
});

export const newModuleKind = newKind('module');
export const newRibbonKind = newKind('ribbon');
export const newLeadKind = newKind('lead');
