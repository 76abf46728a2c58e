import type { ThemeChoice } from '../store/session.ts';
import { type Action, always } from './action.ts';

/** A setting shows as ticked where it is on. */
export interface Setting extends Action {
  isOn(...editor: Parameters<Action['enabled']>): boolean;
}

export const togglePush: Setting = {
  id: 'toggle-push',
  label: () => 'Neighbours give way',
  enabled: always,
  isOn: ({ session }) => session.getState().push,
  run: ({ session }) => session.setState(({ push }) => ({ push: !push })),
};

export const toggleHalfHp: Setting = {
  id: 'toggle-half-hp',
  label: () => 'Snap to ½ HP',
  enabled: always,
  isOn: ({ session }) => session.getState().halfHp,
  run: ({ session }) => session.setState(({ halfHp }) => ({ halfHp: !halfHp })),
};

const theme = (choice: ThemeChoice, label: string): Setting => ({
  id: `theme-${choice}`,
  label: () => label,
  enabled: always,
  isOn: ({ session }) => session.getState().theme === choice,
  run: ({ session }) => session.setState({ theme: choice }),
});

export const themes: readonly Setting[] = [
  theme('auto', 'As the system'),
  theme('light', 'Light'),
  theme('dark', 'Dark'),
  theme('dim', 'Dim, for the stage'),
];
