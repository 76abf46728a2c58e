import { useSyncExternalStore } from 'react';
import type { ThemeName } from '../canvas/model.ts';
import { useSession } from '../hooks.ts';

const systemIsDark = (): MediaQueryList => matchMedia('(prefers-color-scheme: dark)');

function watchSystem(changed: () => void): () => void {
  const query = systemIsDark();
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
}

/** The theme to paint in: the one chosen, or what the system asks for. */
export function useThemeName(): ThemeName {
  const choice = useSession(({ theme }) => theme);
  const dark = useSyncExternalStore(watchSystem, () => systemIsDark().matches);
  if (choice !== 'auto') return choice;
  return dark ? 'dark' : 'light';
}
