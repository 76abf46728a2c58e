import { UnionFind } from './union-find.ts';

/** Lines of both sides that contacts make one. */
export interface JoinedLines {
  readonly ribbon: readonly string[];
  readonly module: readonly string[];
}

/** A line of the ribbon that touches one of the module. */
export interface Link {
  readonly ribbon: string;
  readonly module: string;
}

/** What touches what, by name, each pair once; open pins and contacts are left out. */
export function linksOf(
  contacts: readonly string[],
  pins: readonly string[],
  map: readonly (number | undefined)[],
): Link[] {
  const links = new Map<string, Link>();
  contacts.forEach((ribbon, contact) => {
    const pin = map[contact];
    const module = pin === undefined ? '' : (pins[pin] as string);
    if (ribbon !== '' && module !== '') links.set(JSON.stringify([ribbon, module]), { ribbon, module });
  });
  return [...links.values()];
}

/** Names lines by number, ribbon's first; open pins get none, as they join nothing. */
function numberLines(lines: readonly string[], from: number): Map<string, number> {
  const numbers = new Map<string, number>();
  for (const line of lines) if (line !== '' && !numbers.has(line)) numbers.set(line, from + numbers.size);
  return numbers;
}

/**
 * Every line of a ribbon with all that it is joined to, through the module's lines and its own.
 * @param contacts - lines by contact
 * @param pins - lines by pin
 * @param map - which pin each contact touches
 */
export function joinLines(
  contacts: readonly string[],
  pins: readonly string[],
  map: readonly (number | undefined)[],
): JoinedLines[] {
  const ribbonLines = numberLines(contacts, 0);
  const moduleLines = numberLines(pins, ribbonLines.size);
  const joined = new UnionFind(ribbonLines.size + moduleLines.size);
  contacts.forEach((line, contact) => {
    const pin = map[contact];
    const a = ribbonLines.get(line);
    const b = pin === undefined ? undefined : moduleLines.get(pins[pin] as string);
    if (a !== undefined && b !== undefined) joined.join(a, b);
  });
  const sets = new Map<number, { ribbon: string[]; module: string[] }>();
  for (const [line, number] of ribbonLines) {
    const root = joined.find(number);
    const set = sets.get(root);
    if (set) set.ribbon.push(line);
    else sets.set(root, { ribbon: [line], module: [] });
  }
  for (const [line, number] of moduleLines) sets.get(joined.find(number))?.module.push(line);
  return [...sets.values()];
}
