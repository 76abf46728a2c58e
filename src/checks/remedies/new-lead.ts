import type { Edit } from '../../edit/edit.ts';
import { exceeds } from '../../geometry/exceeds.ts';
import type { PlacedHeader } from '../../geometry/place.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import { type Lead, leadFor, leadWayMm } from '../../wiring/lead.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { headersUnder, isFree, layAnewEdits, toBuyWords } from './lay-anew.ts';
import { takeAfter } from './outcome.ts';
import { mend } from './remedy.ts';

/** Lays a new lead. */
export const leadEdit = (take: WholeTake, { facts, seats }: Lead): Edit => ({
  type: 'add-ribbon',
  take: take.take.id,
  kind: facts.kind.id,
  seats,
  prefix: 'L',
});

/** "header 3 of Board 1". */
export const boardHeaderName = ({ owner, name }: PlacedHeader): string => `header ${name} of ${owner.name}`;

export const leadName = ({ facts, ownedLeft }: Lead): string => `${facts.kind.name}${toBuyWords(ownedLeft)}`;

/** A ribbon that hangs between a board and one module, and nothing else. */
function endsOfLead(laid: LaidRibbon): { module: PlacedHeader; board: PlacedHeader } | undefined {
  const headers = headersUnder(laid);
  const module = headers.find(({ owner }) => owner.type === 'module');
  const board = headers.find(({ owner }) => owner.type === 'board');
  return headers.length === 2 && module && board && !laid.facts.flat ? { module, board } : undefined;
}

/** The lead that would take the place of another, as the take stands without that one. */
function leadInstead(take: WholeTake, laid: LaidRibbon, lines?: readonly string[]): Lead | undefined {
  const ends = endsOfLead(laid);
  if (!ends || !isFree(laid)) return undefined;
  const without = takeAfter(take, [{ type: 'remove-ribbons', take: take.take.id, ribbons: [laid.id] }]);
  const header = without?.places.moduleById
    .get(ends.module.owner.id)
    ?.headers.find(({ id }) => id === ends.module.id);
  const choice = without && header && leadFor(without, header, lines);
  return choice?.ok ? choice.lead : undefined;
}

/** Edits that put another lead, or another header of a board, in the place of a lead. */
function leadInsteadEdits(take: WholeTake, laid: LaidRibbon, lead: Lead): Edit[] {
  const connectors = lead.seats.map(({ connector }) => connector);
  return layAnewEdits(take, laid, [lead.to, lead.from], { kind: lead.facts.kind.id, connectors });
}

/** What changes with it: the kind, the header on a board, or both; neither where it is only turned round. */
function changeWords(laid: LaidRibbon, lead: Lead): { readonly kind?: string; readonly to?: string } {
  const board = endsOfLead(laid)?.board;
  const stays = board?.owner.id === lead.to.owner.id && board.id === lead.to.id;
  return {
    ...(lead.facts !== laid.facts && { kind: leadName(lead) }),
    ...(!stays && { to: boardHeaderName(lead.to) }),
  };
}

function changeLabel(laid: LaidRibbon, lead: Lead): string {
  const { kind, to } = changeWords(laid, lead);
  if (kind) return `Use ${kind} for ${laid.name}${to ? `, on ${to}` : ''}`;
  return to ? `Seat ${laid.name} on ${to}` : `Turn ${laid.name} end for end`;
}

/** Another lead, or another header of a board, in the place of a lead. */
export function* otherLead(take: WholeTake, laid: LaidRibbon, lines?: readonly string[]): Generator<Mend> {
  const lead = leadInstead(take, laid, lines);
  if (lead) yield mend(changeLabel(laid, lead), leadInsteadEdits(take, laid, lead));
}

/** "L8 on header 1 of Board 1", "Lead 16-way, 250 mm for L8". */
function followWords(laid: LaidRibbon, lead: Lead): string {
  const { kind, to } = changeWords(laid, lead);
  const what = kind ? `${kind} for ${laid.name}` : laid.name;
  return to || kind ? `${what}${to ? ` on ${to}` : ''}` : `${what} end for end`;
}

/**
 * Edits that give modules longer leads where edits have made theirs too short; nothing where one cannot be helped,
 * or where none is too short.
 */
export function followingLeads(take: WholeTake, edits: readonly Edit[]) {
  const after = takeAfter(take, edits);
  if (!after) return undefined;
  const { neighbours } = after;
  const tooShort = new Set<LaidRibbon>();
  for (const { lay, a, b, lengthMm, ribbons } of neighbours) {
    const [laid, ...others] = ribbons;
    if (lay !== 'loose' || !laid || others.length > 0) continue;
    if (exceeds(leadWayMm(a.on.header, b.on.header, after), lengthMm)) tooShort.add(laid);
  }
  if (tooShort.size === 0) return undefined;
  const names: string[] = [];
  const all = [...edits];
  let now: WholeTake = after;
  for (const { id } of tooShort) {
    const laid = now.wiring.ribbonById.get(id);
    const lead = laid && leadInstead(now, laid);
    if (!laid || !lead) return undefined;
    const more = leadInsteadEdits(now, laid, lead);
    const next = takeAfter(now, more);
    if (!next) return undefined;
    all.push(...more);
    names.push(followWords(laid, lead));
    now = next;
  }
  return { edits: all, names };
}
