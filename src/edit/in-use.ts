import type { Layout, Take } from '../layout/layout.ts';
import { refuse } from './change.ts';

interface OfKind {
  readonly kind: string;
}

const counted = (count: number, name: string): string => `${count} ${name}${count === 1 ? '' : 's'}`;

/** A list as it is said: "a, b and c". */
const listed = (items: readonly string[]): string =>
  [items.slice(0, -1).join(', '), ...items.slice(-1)].filter(Boolean).join(' and ');

export const namesOf = (things: readonly { readonly name: string }[]): readonly string[] =>
  things.map(({ name }) => name);

/** "drawn by Cobble and Jetty"; none where there is nobody. */
export const inWords = (how: string, names: readonly string[]): readonly string[] =>
  names.length > 0 ? [`${how} ${listed(names)}`] : [];

/** The refusal to remove what is used in some places; none where it is used nowhere. */
export const refuseForPlaces = (name: string, places: readonly string[]) =>
  places.length > 0 ? refuse(`${name} is in use: ${listed(places)}`) : undefined;

/**
 * The refusal to remove a kind that some take uses, with all the places; none where nothing is of it.
 *
 * @param partsOf - what a take has of the sort
 * @param noun - what they are: "module"
 */
export function refuseIfInUse(
  layout: Layout,
  kind: { readonly id: string; readonly name: string },
  partsOf: (take: Take) => readonly OfKind[],
  noun: string,
) {
  const places = layout.takes.flatMap((take) => {
    const count = partsOf(take).filter((part) => part.kind === kind.id).length;
    return count > 0 ? [`${counted(count, noun)} in ${take.name}`] : [];
  });
  return refuseForPlaces(kind.name, places);
}
