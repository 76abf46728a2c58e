export type ThemeName = 'light' | 'dark' | 'dim';

/** Where the sheet lies on the screen: CSS px per mm of rack, and the sheet's origin in CSS px. */
export interface Viewport {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}
