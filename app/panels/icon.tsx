import type { Level } from '../../src/index.ts';

/** Paths on a field of 16 by 16; lines unless they are listed as solid. */
const PATHS = {
  undo: 'M6 3 2.5 6.5 6 10M3 6.5h6.5a4 4 0 0 1 0 8H7',
  redo: 'M10 3l3.5 3.5L10 10M13 6.5H6.5a4 4 0 0 0 0 8H9',
  turn: 'M1.5 8c0-2 3-3.5 6.5-3.5S14.5 6 14.5 8c0 1.6-2 3-4.5 3.4M12 9l-2.3 2.4L12 13.8M1.5 8c0 1.3 1.3 2.4 3.2 3',
  fit: 'M2 5.5V2h3.5M10.5 2H14v3.5M14 10.5V14h-3.5M5.5 14H2v-3.5',
  plus: 'M8 2.5v11M2.5 8h11',
  minus: 'M2.5 8h11',
  menu: 'M2 4h12M2 8h12M2 12h12',
  pin: 'M5.5 2h5M6.5 2v4.5L4 9.5h8L9.5 6.5V2M8 9.5V14',
  remove: 'M3 4.5h10M6.5 4.5V2.5h3v2M4.5 4.5l.7 9h5.6l.7-9',
  copy: 'M5.5 2.5h8v8M2.5 5.5h8v8h-8z',
  joined: 'M2 5h4v6H2zM10 5h4v6h-4zM4 8h8',
  list: 'M2 3.5h3M7 3.5h7M4.5 8h2M8.5 8H14M4.5 12.5h2M8.5 12.5H14',
  layers: 'M8 2 14 5 8 8 2 5zM2.5 8 8 10.8 13.500 8M2.5 11 8 13.800 13.500 11',
  earlier: 'M3 4.5v-2m0 2h2.2M3.2 4.6A5.8 5.8 0 1 1 2.2 8M8 4.8V8l2.4 1.6',
  duplicate: 'M2.5 2.5h7v7h-7zM6.5 12v1.5h7v-7H12',
  swap: 'M2 5.5h11M10 2.5l3 3-3 3M14 10.5H3M6 7.5l-3 3 3 3',
  layouts: 'M2 2.5h5v5H2zM9 2.5h5v5H9zM2 9.500h5v4H2zM9 9.500h5v4H9z',
  open: 'M2 13V3.5h4l1.5 2H14V13z',
  save: 'M8 2v8M4.5 7 8 10.5 11.5 7M2.5 13.5h11',
  handOver: 'M2 8h8.500M7 4.500 10.500 8 7 11.500M13.500 3v10',
  print: 'M4.5 6V2h7v4M4.5 11.500H2V6h12v5.500h-2.500M4.500 9.500h7V14h-7z',
  close: 'M3.5 3.5l9 9M12.5 3.5l-9 9',
  search: 'M7 2.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 0 0 0-9M10.3 10.3 14 14',
  lock: 'M4 7.5h8v6H4zM5.5 7.5V5a2.5 2.5 0 0 1 5 0v2.5',
  front: 'M3 2.5h10M8 13.5v-8M4.500 9 8 5.500 11.500 9',
  back: 'M3 13.5h10M8 2.5v8M4.500 7 8 10.500 11.500 7',
  lift: 'M3 13.5h10M8 10V2.5M5 5.5l3-3 3 3',
  twist: 'M1.5 5h2.5c4 0 4 6 8 6h2.5M1.5 11h2.5c1.4 0 2.3-.8 3-1.7M9 6.7c.7-.9 1.6-1.7 3-1.7h2.5',
  rehearse:
    'M4.5 1.5h7v13h-7zM6.9 4.5h.01M9.1 4.5h.01M6.9 8h.01M9.1 8h.01M6.9 11.5h.01M9.1 11.5h.01M1.5 4.5v7M14.5 4.5v7',
  tick: 'M3 8.5 6.5 12 13 4.5',
  more: 'M3.2 8h.01M8 8h.01M12.8 8h.01',
  chevron: 'M4 6l4 4 4-4',
} as const;

export type IconName = keyof typeof PATHS;

/** A small drawing beside or instead of words; never the only name of a thing. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="icon" viewBox="0 0 16 16" aria-hidden="true">
      <path d={PATHS[name]} />
    </svg>
  );
}

const LEVEL_NAMES: Readonly<Record<Level, string>> = {
  damage: 'Damage',
  fault: 'Fault',
  reminder: 'Reminder',
};

/** Solid octagon, diamond, ring: the same shapes as the marks on the sheet. */
export function LevelMark({ level }: { readonly level: Level }) {
  return (
    <svg className={`level ${level}`} viewBox="0 0 16 16" role="img" aria-label={LEVEL_NAMES[level]}>
      {level === 'damage' && (
        <>
          <path className="body" d="M5 1h6l4 4v6l-4 4H5l-4-4V5z" />
          <path className="sign" d="M8 4v5M8 11v1.7" />
        </>
      )}
      {level === 'fault' && <path className="body" d="M8 .5 15.5 8 8 15.5.5 8z" />}
      {level === 'reminder' && <circle cx="8" cy="8" r="6.2" />}
    </svg>
  );
}
