import type { ThemeName } from '../canvas/model.ts';
import { THEMES } from '../canvas/theme.ts';

const variableOf = (name: string): string =>
  `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

/** Hands the canvas's colours to the page: one source for both. */
export function paintPage(theme: ThemeName, root: HTMLElement): void {
  root.dataset.theme = theme;
  root.style.colorScheme = theme === 'light' ? 'light' : 'dark';
  for (const [name, value] of Object.entries(THEMES[theme])) root.style.setProperty(variableOf(name), value);
}
