import { isPowerBus, type Kit, type PlacedHeader } from '../../src/index.ts';
import { modulesSelected } from '../actions/selected.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import type { HeaderName } from '../store/session.ts';

export const nameOfHeader = ({ owner, id }: PlacedHeader): HeaderName => ({ module: owner.id, header: id });

/** Headers of one bus in one row: of the buses that join modules rather than feed them first, then the most. */
function largestGroup(kit: Kit, headers: readonly PlacedHeader[]): readonly PlacedHeader[] {
  const groups = new Map<string, PlacedHeader[]>();
  for (const header of headers) {
    if (header.axis !== 'vertical') continue;
    const key = `${header.row.index} ${header.bus.bus.id}`;
    groups.set(key, [...(groups.get(key) ?? []), header]);
  }
  const isLink = ([header]: readonly PlacedHeader[]): boolean =>
    header !== undefined && !isPowerBus(kit, header.bus.bus);
  const several = [...groups.values()].filter(({ length }) => length > 1);
  return several.sort((a, b) => Number(isLink(b)) - Number(isLink(a)) || b.length - a.length)[0] ?? [];
}

/** Takes the headers of the selected modules to the page where a ribbon is made for them; says so where there are none. */
export function beginMeasuring(editor: Editor): void {
  const { session, layouts } = editor;
  const { places } = shownAnalysis(editor).derived;
  const selected = modulesSelected(editor).flatMap(({ id }) => places.moduleById.get(id)?.headers ?? []);
  const headers = largestGroup(layouts.layout().kit, selected);
  if (headers.length === 0) {
    session.setState({ banner: 'These modules have no two upright headers of one bus in one row.' });
    return;
  }
  session.setState({ stockDesk: 'ribbons', ribbonsWith: { headers: headers.map(nameOfHeader) } });
}
