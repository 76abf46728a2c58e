/** The most of something that is read, and why not more. */
interface OpenLimit {
  readonly most: number;
  readonly why: string;
}

const limit = (most: number, why: string): OpenLimit => ({ most, why });

const DRAWN = 'each is drawn and listed';
const CHECKED = 'far beyond a case that can be built; checking grows with it';

/** What is read of a document: far above honest use, and too little to stop the program with. */
export const OPEN_LIMITS = {
  characters: limit(32_000_000, 'parsing takes several times the memory of the text'),
  depth: limit(64, 'walking a document goes as deep as it does; the format itself is 9 deep'),
  values: limit(4_000_000, 'each value takes memory and time, whatever it says'),
  size: limit(1e9, 'below this, arithmetic stays exact enough to a nanometre'),
  name: limit(1_000, 'names stand on the canvas, in lists and in messages'),
  note: limit(100_000, 'a note is a text for people'),
  voltages: limit(100, 'each is reckoned for every module'),
  kinds: limit(2_000, DRAWN),
  pins: limit(128, 'twice the widest connectors in use'),
  headers: limit(200, DRAWN),
  connectors: limit(200, DRAWN),
  takes: limit(100, 'each take is checked'),
  rows: limit(200, DRAWN),
  rowHp: limit(10_000, 'rails and rulers are drawn mark by mark'),
  supplies: limit(100, DRAWN),
  boards: limit(1_000, DRAWN),
  modules: limit(20_000, CHECKED),
  ribbons: limit(20_000, CHECKED),
  seats: limit(400, 'twice the connectors, for those that are seated twice'),
  clipCharacters: limit(8_000_000, 'a clip is a part of a layout'),
  clipModules: limit(2_000, 'each finds its room among those that stand'),
  clipRibbons: limit(4_000, 'each is named anew'),
  built: limit(100_000, 'more tests, steps and readings than a case has'),
  accepted: limit(100_000, 'more findings than checks give'),
} as const satisfies Readonly<Record<string, OpenLimit>>;
