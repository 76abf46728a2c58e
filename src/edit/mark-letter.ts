import type { Bus } from '../layout/layout.ts';

/** The letter before the number on the label of a ribbon: its bus's own. */
export const markLetter = (bus: Bus | undefined): string => bus?.name.trim().charAt(0).toUpperCase() || 'R';
