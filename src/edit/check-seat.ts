import type { Layout, RibbonKind, Seat, SeatedOn, Take } from '../layout/layout.ts';
import { ok } from '../layout/result.ts';
import { type Edited, find, kindOf, refuse, ribbonKindOf, ribbonName } from './change.ts';

/** Whether a kind of ribbon has a connector; `name` is what a refusal calls the ribbon. */
export const checkConnector = (kind: RibbonKind, connector: number, name: string): Edited<unknown> =>
  kind.connectors[connector] ? ok(connector) : refuse(`${name} has no connector ${connector + 1}`);

function checkTarget(layout: Layout, take: Take, on: SeatedOn): Edited<unknown> {
  if ('module' in on) {
    const module = find(take.modules, on.module, 'module');
    return module.ok ? find(kindOf(layout.kit, module.value).headers, on.header, 'header') : module;
  }
  if ('board' in on) {
    const boards = take.supplies.flatMap((supply) => supply.boards);
    const board = find(boards, on.board, 'board');
    return board.ok ? find(board.value.headers, on.header, 'header') : board;
  }
  const ribbon = find(take.ribbons, on.ribbon, 'ribbon');
  if (!ribbon.ok) return ribbon;
  return checkConnector(ribbonKindOf(layout.kit, ribbon.value), on.connector, ribbonName(ribbon.value));
}

/**
 * Whether a seat refers to things that exist. What sits wrongly is not its business: that is a finding.
 *
 * @param name - what the ribbon is called in a refusal
 */
export function checkSeat(
  layout: Layout,
  take: Take,
  kind: RibbonKind,
  seat: Seat,
  name: string,
): Edited<unknown> {
  const connector = checkConnector(kind, seat.connector, name);
  return connector.ok ? checkTarget(layout, take, seat.on) : connector;
}
