import type fc from 'fast-check';
import type { Header, Layout, RibbonKind } from '../../src/layout/layout.ts';
import { arbitraryLayout } from './arbitrary-layout.ts';

const lead = (id: string, bus: string, lengthMm: number, ways?: number): RibbonKind => ({
  id,
  name: `Lead ${id}`,
  bus,
  lay: 'loose',
  connectors: [{ atMm: 0 }, { atMm: lengthMm, ...(ways !== undefined && { ways }) }],
  owned: 1,
});

const LEADS = [
  lead('short', 'power', 150),
  lead('long', 'power', 600),
  lead('wide', 'wide', 600),
  lead('narrow', 'wide', 400, 6),
];

const POWER: Header = { id: 'feed', bus: 'power', role: 'member', xMm: 5.08, yMm: 90, pin1: 'down' };

/** Random layouts in which modules have power headers and the kit has leads. */
export const layoutWithLeads: fc.Arbitrary<Layout> = arbitraryLayout.map((layout) => ({
  ...layout,
  kit: {
    ...layout.kit,
    modules: layout.kit.modules.map((kind) => ({ ...kind, headers: [...kind.headers, POWER] })),
    ribbons: [...layout.kit.ribbons, ...LEADS],
  },
}));
