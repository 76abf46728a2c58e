import type { ThemeName } from './screen.ts';

/** A ground and the letter on it. */
export interface BusColour {
  readonly fill: string;
  readonly ink: string;
}

/** Colours of the canvas. Red belongs to the ribbon's stripe alone; levels of notes differ by shape. */
export interface Theme {
  readonly bench: string;
  readonly sheet: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly inkFaint: string;
  readonly line: string;
  readonly hatch: string;
  readonly brass: string;
  readonly rail: string;
  readonly panel: string;
  readonly panelEdge: string;
  readonly board: string;
  readonly boardEdge: string;
  readonly boardInk: string;
  readonly pin: string;
  readonly ribbon: string;
  readonly ribbonLine: string;
  readonly ribbonEdge: string;
  /** Separates crossing leads. */
  readonly keyline: string;
  readonly stripe: string;
  readonly connector: string;
  readonly connectorEdge: string;
  /** Connectors that miss, and dimensions over modules. */
  readonly callout: string;
  /** Damage, and the sign on it. */
  readonly mark: string;
  readonly markInk: string;
  readonly fault: string;
  readonly veil: string;
  /** What loses most, on circuit boards and on panels: what loses nothing is as they are. */
  readonly warm: string;
  readonly warmPanel: string;
  /** Told apart by colour-blind eyes too; a bus bears a letter besides. */
  readonly buses: readonly BusColour[];
}

/** From a set made for colour-blind readers (Okabe and Ito), without its reds. */
const BUSES: readonly BusColour[] = [
  { fill: '#0072b2', ink: '#ffffff' },
  { fill: '#f0e442', ink: '#16191d' },
  { fill: '#009e73', ink: '#06120d' },
  { fill: '#56b4e9', ink: '#16191d' },
  { fill: '#e69f00', ink: '#16191d' },
];

const LIGHT: Theme = {
  bench: '#eceef0',
  sheet: '#fafbfb',
  ink: '#16191d',
  inkSoft: '#4d555d',
  inkFaint: '#5f676e',
  line: '#d5d9dd',
  hatch: '#c9ced2',
  brass: '#8a5a12',
  rail: '#a5adb3',
  panel: '#d3d8db',
  panelEdge: '#f2f4f5',
  board: '#31424b',
  boardEdge: '#8fa3ad',
  boardInk: '#f1f4f5',
  pin: '#d8b25a',
  ribbon: '#dfe2e3',
  ribbonLine: '#9aa3a9',
  ribbonEdge: '#1d2226',
  keyline: '#fafbfb',
  stripe: '#d0202e',
  connector: '#1d2226',
  connectorEdge: '#7b868d',
  callout: '#ffffff',
  mark: '#16191d',
  markInk: '#ffffff',
  fault: '#8a5a12',
  veil: 'rgba(236,238,240,.72)',
  warm: '#8f5c10',
  warmPanel: '#cf9c45',
  buses: BUSES,
};

const DARK: Theme = {
  bench: '#0f1214',
  sheet: '#181c1f',
  ink: '#eef0f1',
  inkSoft: '#b4bcc2',
  inkFaint: '#8e979e',
  line: '#343b41',
  hatch: '#23292d',
  brass: '#e2b45c',
  rail: '#5d666d',
  panel: '#4a525a',
  panelEdge: '#69737b',
  board: '#223139',
  boardEdge: '#7f949f',
  boardInk: '#eef2f3',
  pin: '#e3bf6d',
  ribbon: '#b3babe',
  ribbonLine: '#7a838a',
  ribbonEdge: '#0a0c0d',
  keyline: '#0a0c0d',
  stripe: '#ff3b47',
  connector: '#0a0c0d',
  connectorEdge: '#9aa4ab',
  callout: '#ffffff',
  mark: '#ffffff',
  markInk: '#0a0c0d',
  fault: '#e2b45c',
  veil: 'rgba(15,18,20,.74)',
  warm: '#85570f',
  warmPanel: '#7a4f0c',
  buses: BUSES,
};

const DIM: Theme = {
  bench: '#040505',
  sheet: '#070808',
  ink: '#9a9d9e',
  inkSoft: '#868a8c',
  inkFaint: '#7c8082',
  line: '#1b1e20',
  hatch: '#101213',
  brass: '#9a7a3e',
  rail: '#24282a',
  panel: '#1b1e20',
  panelEdge: '#2c3032',
  board: '#0d1316',
  boardEdge: '#39444a',
  boardInk: '#989c9e',
  pin: '#75602f',
  ribbon: '#44484a',
  ribbonLine: '#2b2e30',
  ribbonEdge: '#020303',
  keyline: '#020303',
  stripe: '#b3262f',
  connector: '#020303',
  connectorEdge: '#4c5356',
  callout: '#a2a5a6',
  mark: '#a2a5a6',
  markInk: '#020303',
  fault: '#9a7a3e',
  veil: 'rgba(4,5,5,.76)',
  warm: '#3f2c08',
  warmPanel: '#3f2c08',
  buses: [
    { fill: '#003a5c', ink: '#9fb4c2' },
    { fill: '#4d4910', ink: '#c2bf95' },
    { fill: '#00402e', ink: '#9dbcb0' },
    { fill: '#1e4258', ink: '#a9bfcc' },
    { fill: '#4a3300', ink: '#c4b08a' },
  ],
};

export const THEMES: Readonly<Record<ThemeName, Theme>> = { light: LIGHT, dark: DARK, dim: DIM };

const FONT = 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "DejaVu Sans", sans-serif';

export const font = (px: number, weight = 400): string => `${weight} ${px}px ${FONT}`;
