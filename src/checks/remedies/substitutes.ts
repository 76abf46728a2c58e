import type { Edit } from '../../edit/edit.ts';
import { resolve } from '../../layout/kit-index.ts';
import { fittingRibbons } from '../../wiring/fitting.ts';
import type { LaidRibbon } from '../../wiring/laid-ribbon.ts';
import { ownedLeft } from '../../wiring/stock.ts';
import type { WholeTake } from '../../wiring/whole-take.ts';
import type { Mend } from '../check.ts';
import { headersUnder, isFree, layAnewEdits } from './lay-anew.ts';
import { freshNotes, harmOf, notesOf, takeAfter } from './outcome.ts';
import { editsOf, mend } from './remedy.ts';

/** Substitutes offered for one kind that is short. */
const MOST_OFFERED = 3;

/** Exchanges tried for one kind: each costs a derived and checked take. */
const MOST_TRIED = 24;

interface Candidate {
  readonly kind: string;
  readonly mend: Mend;
}

const candidate = (take: WholeTake, laid: LaidRibbon, kind: string, edits: readonly Edit[]): Candidate => ({
  kind,
  mend: mend(`Use ${resolve(take.kit.ribbons, kind).kind.name} for ${laid.name}`, edits),
});

/** Kinds of which one is owned and not in this take yet. */
const isAtHand = (take: WholeTake, kind: string): boolean =>
  (ownedLeft(take.take, resolve(take.kit.ribbons, kind).kind) ?? 0) > 0;

/** A ribbon that others hang on keeps its connectors; one on headers is laid over them anew. */
function* candidatesFor(take: WholeTake, laid: LaidRibbon): Generator<Candidate> {
  const own = laid.facts.kind.id;
  const headers = headersUnder(laid);
  if (isFree(laid) && headers.length > 1) {
    for (const fitting of fittingRibbons(take, headers)) {
      if (fitting.kind === own || !isAtHand(take, fitting.kind)) continue;
      yield candidate(take, laid, fitting.kind, layAnewEdits(take, laid, headers, fitting));
    }
    return;
  }
  for (const { kind, bus } of take.kit.ribbons.values()) {
    if (kind.id === own || bus !== laid.facts.bus || !isAtHand(take, kind.id)) continue;
    const edit: Edit = { type: 'exchange-ribbon', take: take.take.id, ribbon: laid.id, kind: kind.id };
    yield candidate(take, laid, kind.id, [edit]);
  }
}

function* candidatesOf(take: WholeTake, kind: string): Generator<Candidate> {
  for (const laid of take.wiring.ribbons) {
    if (laid.facts.kind.id === kind && !laid.ribbon.locked) yield* candidatesFor(take, laid);
  }
}

interface Tried {
  readonly mend: Mend;
  /** Reminders that it brings: a connector narrower than its header, and the like. */
  readonly reminders: number;
}

/**
 * Owned ribbons that could lie in the place of one of a kind that is short, each tried on a copy: none is offered that
 * brings damage or a fault, and those that bring no reminder come first. Stops after each trial, so that whoever asks
 * can do other things in between.
 */
export function* searchSubstitutes(take: WholeTake, kind: string): Generator<undefined, readonly Mend[]> {
  const good = new Map<string, Tried>();
  let tried = 0;
  for (const { kind: other, mend: exchange } of candidatesOf(take, kind)) {
    if (good.has(other)) continue;
    if (++tried > MOST_TRIED) break;
    const after = takeAfter(take, editsOf(exchange));
    const harm = after && harmOf(take, after);
    if (after && harm?.damage === 0 && harm.faults === 0) {
      const fresh = freshNotes(notesOf(take), notesOf(after));
      good.set(other, { mend: exchange, reminders: fresh.length });
    }
    const clean = [...good.values()].filter(({ reminders }) => reminders === 0);
    if (clean.length >= MOST_OFFERED) break;
    yield;
  }
  return [...good.values()]
    .sort((a, b) => a.reminders - b.reminders)
    .slice(0, MOST_OFFERED)
    .map(({ mend: exchange }) => exchange);
}
