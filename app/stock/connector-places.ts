import type { ConnectorDraft } from '../kinds/ribbon-draft.ts';

/*
 * Connectors moved along a ribbon. Places count from the first connector: whatever is done, it stays at 0, and they
 * stay in order.
 */

type Connectors = readonly ConnectorDraft[];

/** Thousandths are as fine as anything is measured. */
const tidy = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;

function fromZero(connectors: Connectors): Connectors {
  const sorted = [...connectors].sort((a, b) => a.atMm - b.atMm);
  const first = sorted[0]?.atMm ?? 0;
  return sorted.map((connector) => ({ ...connector, atMm: tidy(connector.atMm - first) }));
}

/** One connector at another place; the others stay, but for the first, from which all places count. */
export const movedTo = (connectors: Connectors, index: number, atMm: number): Connectors =>
  fromZero(connectors.map((connector, i) => (i === index ? { ...connector, atMm } : connector)));

/** Another distance between a connector and the one before it; all behind it move along. */
export function spaced(connectors: Connectors, index: number, gapMm: number): Connectors {
  const shift = gapMm - gapBefore(connectors, index);
  return fromZero(
    connectors.map((connector, i) =>
      i >= index ? { ...connector, atMm: connector.atMm + shift } : connector,
    ),
  );
}

/** Distance from the connector before, mm; nothing before the first. */
export const gapBefore = (connectors: Connectors, index: number): number =>
  tidy((connectors[index]?.atMm ?? 0) - (connectors[index - 1]?.atMm ?? 0));

/** How far a connector can be dragged without passing its neighbours, bodies counted, mm. */
export function roomOf(
  connectors: Connectors,
  index: number,
  bodyMm: number,
  mostMm: number,
): readonly [leastMm: number, mostMm: number] {
  const before = connectors[index - 1];
  const after = connectors[index + 1];
  return [
    before ? before.atMm + bodyMm : -mostMm,
    after ? Math.max(after.atMm - bodyMm, before ? before.atMm + bodyMm : -mostMm) : mostMm,
  ];
}

/** One connector more behind the last, as far from it as the last from the one before it. */
export function lengthened(connectors: Connectors): Connectors {
  const last = connectors.length - 1;
  const atMm = tidy((connectors[last]?.atMm ?? 0) + gapBefore(connectors, last));
  return [...connectors, { atMm, type: 'socket', ways: '', face: 'panel', key: 'none' }];
}

export const without = (connectors: Connectors, index: number): Connectors =>
  fromZero(connectors.filter((_, i) => i !== index));
