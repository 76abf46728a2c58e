import {
  type Berth,
  betterKind,
  type DerivedTake,
  type Edit,
  isInStock,
  isSamePlace,
  isTaken,
  type Laying,
  layAlong,
  layLoose,
  layRibbon,
  pullRibbon,
  type RibbonKind,
  shortestLead,
  whyNotOn,
} from '../../src/index.ts';
import { nextConnector, turnStripe } from '../actions/held-keys.ts';
import { layingOverlay, reachOverlay } from '../canvas/draw/laying.ts';
import { type Moving, selectionKey } from '../canvas/model.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { figure } from '../panels/figures.ts';
import { type HintWords, NO_STARTS } from '../store/hints.ts';
import { markPrefix } from '../store/leads.ts';
import { sheetNow, toSheet } from '../store/view.ts';
import { alongRow, berthPoint, berthsNear, freeBerthAt, headerExactly, headersUnder } from './berths.ts';
import { connectorsOf, layingLines, leadLines, plain, spokenOf, trouble, whyWords } from './laying-words.ts';
import { hasWandered, type Pointer, type Tool } from './pointer.ts';

/** A ribbon held at its start, while the hand says how far it goes. */
interface Held {
  readonly start: Berth;
  readonly from: Pointer;
  /** The press has become a drag. */
  readonly drawn: boolean;
  readonly turned: boolean;
  readonly skip: number;
  /** Places over which a lead with several connectors was drawn, in order. */
  readonly passed: readonly Berth[];
}

type State =
  | { readonly at: 'idle' }
  | { readonly at: 'hovering' }
  | { readonly at: 'holding'; readonly held: Held };

/** What a ribbon would be when it is let go now, and what is said of it. */
interface Outcome {
  readonly edit: Edit | null;
  readonly laying: Laying | null;
  readonly overlay?: Moving['overlay'];
  readonly title: string;
  readonly lines: (shown: Moving | null) => HintWords['lines'];
  /** Why nothing is laid, for the voice. */
  readonly why: string;
}

export interface LayTool extends Tool {
  hover(pointer: Pointer): void;
  leave(): void;
  /** Whether a key, by its id, means something while a ribbon is held. */
  press(key: string): boolean;
}

/** What keys do while a ribbon is drawn, by the keys as they are now. */
function keyWords({ session }: Editor): string {
  const { printKeys } = session.getState();
  const [turn, next] = [turnStripe, nextConnector].map((held) => printKeys?.(held));
  return [turn && `${turn} turns the stripe`, next && `${next} next connector`, 'Esc drops']
    .filter(Boolean)
    .join(' · ');
}

const isLong = ({ connectors }: RibbonKind): boolean => connectors.length > 2;

/** The edit that lays a ribbon as it is shown. */
function editOf(editor: Editor, kind: RibbonKind, laid: Pick<Laying, 'seats' | 'stripe'>): Edit {
  const { kit } = shownAnalysis(editor).derived.kit;
  const { seats, stripe } = laid;
  return {
    type: 'add-ribbon',
    take: shownTake(editor).id,
    kind: kind.id,
    prefix: markPrefix(kind, kit),
    seats,
    ...(stripe && { stripe }),
  };
}

const noWay = (title: string, why: string): Outcome => ({
  edit: null,
  laying: null,
  title,
  lines: () => [trouble(why)],
  why,
});

/** Whether a flat ribbon is what a header is for: some kind of its bus is flat, and boards take none. */
const isForFlat = ({ kit }: DerivedTake, { on }: Berth): boolean => {
  const bus = on.type === 'header' ? on.header.bus : on.ribbon.facts.bus;
  if (on.type === 'header' && on.header.owner.type === 'board') return false;
  return [...kit.ribbons.values()].some((facts) => facts.flat && facts.bus === bus);
};

/** The nearest place that a ribbon held at its start could go to, by what a rule says of it. */
function targetOf(
  editor: Editor,
  held: Held,
  pointer: Pointer,
  fits: (end: Berth) => boolean,
): Berth | undefined {
  const { derived } = shownAnalysis(editor);
  const isOpen = (berth: Berth): boolean =>
    !isSamePlace(berth.on, held.start.on) && !isTaken(derived, berth.on) && fits(berth);
  const near = berthsNear(editor, pointer).find(isOpen);
  if (near) return near;
  return headersUnder(editor, pointer)
    .map(
      (header): Berth => ({
        on: { type: 'header', header },
        row: header.row,
        xMm: header.xMm,
        yMm: header.yMm,
      }),
    )
    .find(isOpen);
}

function flatOutcome(editor: Editor, kind: RibbonKind, held: Held, pointer: Pointer): Outcome {
  const { derived } = shownAnalysis(editor);
  const { start, turned, skip } = held;
  const header = headerExactly(editor, pointer);
  const options = { turned, skip, ...(header && { onto: header }) };
  const towards = held.drawn ? alongRow(editor, start, pointer) : start.xMm;
  if (!held.drawn && start.on.type === 'header' && !turned && skip === 0)
    return tapOutcome(editor, kind, start);
  const laid = layAlong(derived, kind.id, start, towards, options);
  if (!laid.ok) return noWay(kind.name, whyWords(laid.error, kind, derived.kit.kit));
  const other = laid.value.landings.some(({ miss }) => miss)
    ? betterKind(derived, laid.value, towards, options)
    : undefined;
  return laidOutcome(editor, laid.value, isInStock(derived.take, kind), (shown) =>
    layingLines(laid.value, shown, derived, other),
  );
}

function laidOutcome(editor: Editor, laying: Laying, inStock: boolean, lines: Outcome['lines']): Outcome {
  const { kind } = laying.facts;
  return {
    edit: editOf(editor, kind, laying),
    laying,
    overlay: layingOverlay(laying),
    title: laying.stripe ? `${kind.name} · stripe ${laying.stripe}` : kind.name,
    lines: (shown) => [
      ...lines(shown),
      ...(inStock || !laying.facts.flat ? [] : [trouble('none left in the stock')]),
    ],
    why: '',
  };
}

/** A ribbon put down with a tap lies over as many headers as land. */
function tapOutcome(editor: Editor, kind: RibbonKind, start: Berth): Outcome {
  const { derived } = shownAnalysis(editor);
  const laid = start.on.type === 'header' ? layRibbon(derived, kind.id, start.on.header) : undefined;
  if (!laid) return noWay(kind.name, 'it fits no header here');
  const n = laid.seats.length;
  return {
    edit: editOf(editor, kind, { seats: laid.seats, ...(laid.stripe && { stripe: laid.stripe }) }),
    laying: null,
    title: kind.name,
    lines: () => [
      plain(`${n} of ${kind.connectors.length} land`),
      plain(
        kind.lay === 'flat' ? 'Press and draw along the row to choose' : 'Press and draw to where it goes',
      ),
    ],
    why: '',
  };
}

/** A lead that has nowhere to go yet. */
function openOutcome(
  editor: Editor,
  held: Held,
  pointer: Pointer,
  title: string,
  lengthMm?: number,
): Outcome {
  const { derived } = shownAnalysis(editor);
  const from = berthPoint(editor, held.passed.at(-1) ?? held.start);
  const to = toSheet(editor, pointer);
  const wayMm = (Math.abs(to.x - from.x) + Math.abs(to.y - from.y)) / sheetNow(editor).scale;
  const neededMm = wayMm + derived.limits.leadAllowanceMm;
  const isShort = lengthMm !== undefined && neededMm > lengthMm;
  const has = lengthMm === undefined ? '' : `, ${figure(lengthMm, 0)} mm there`;
  return {
    edit: null,
    laying: null,
    overlay: reachOverlay(from, to),
    title,
    lines: () => [
      (isShort ? trouble : plain)(`${figure(neededMm, 0)} mm needed to here${has}`),
      plain('Let go on a free header'),
    ],
    why: 'Nothing is laid: no free header here.',
  };
}

function looseOutcome(editor: Editor, kind: RibbonKind, held: Held, pointer: Pointer): Outcome {
  const { derived } = shownAnalysis(editor);
  if (!held.drawn) return tapOutcome(editor, kind, held.start);
  const stopsTo = (end: Berth): Berth[] => [
    held.start,
    ...held.passed.filter(({ on }) => !isSamePlace(on, end.on)),
    end,
  ];
  const target = targetOf(
    editor,
    held,
    pointer,
    (end) => !(isLong(kind) && isSecondBoard(held, end)) && layLoose(derived, kind.id, stopsTo(end)).ok,
  );
  const stops = target ? stopsTo(target) : [held.start, ...held.passed];
  if (stops.length < 2) return openOutcome(editor, held, pointer, kind.name, kind.connectors.at(-1)?.atMm);
  const laid = layLoose(derived, kind.id, stops);
  if (!laid.ok) return noWay(kind.name, whyWords(laid.error, kind, derived.kit.kit));
  const lines = leadLines(laid.value, isInStock(derived.take, kind));
  return laidOutcome(editor, laid.value, true, () => lines);
}

/** With nothing taken from the stock: the lead or link between two places, the shortest that is owned and reaches. */
function leadOutcome(editor: Editor, held: Held, target: Berth): Outcome {
  const { derived } = shownAnalysis(editor);
  const lead = shortestLead(derived, held.start, target);
  if (lead.ok) {
    const lines = leadLines(lead.value.laying, lead.value.inStock);
    return laidOutcome(editor, lead.value.laying, true, () => lines);
  }
  if (lead.error.why === 'no-kind') return noWay('No lead', 'none in the stock has the right ends');
  const { neededMm, longestMm } = lead.error;
  const why = `none in the stock reaches: ${figure(neededMm, 0)} mm needed, the longest is ${figure(longestMm, 0)} mm`;
  const [from, to] = [held.start, target].map((berth) => berthPoint(editor, berth));
  return {
    ...noWay('No lead', why),
    ...(from && to && { overlay: reachOverlay(from, to) }),
  };
}

/** With nothing taken from the stock: what the place is for, and where the hand goes, say which kind is pulled. */
function pulledOutcome(editor: Editor, held: Held, pointer: Pointer): Outcome {
  const { derived } = shownAnalysis(editor);
  const canEnd = (end: Berth): boolean => {
    const lead = shortestLead(derived, held.start, end);
    return lead.ok || lead.error.why === 'too-short';
  };
  if (!isForFlat(derived, held.start)) {
    const target = targetOf(editor, held, pointer, canEnd);
    return target ? leadOutcome(editor, held, target) : openOutcome(editor, held, pointer, 'Lead');
  }
  const across = targetOf(editor, held, pointer, (end) => end.row !== held.start.row && canEnd(end));
  if (across) return leadOutcome(editor, held, across);
  const header = headerExactly(editor, pointer);
  const options = { turned: held.turned, skip: held.skip, ...(header && { onto: header }) };
  const towards = alongRow(editor, held.start, pointer);
  const pulled = pullRibbon(derived, held.start, towards, options);
  if (!pulled) return openOutcome(editor, held, pointer, 'Link');
  const { laying, inStock } = pulled;
  const isWanting = laying.landings.some(({ miss }) => miss);
  const better = isWanting ? betterKind(derived, laying, towards, options) : undefined;
  return laidOutcome(editor, laying, inStock, (shown) => layingLines(laying, shown, derived, better));
}

const isOnBoard = ({ on }: Berth): boolean => on.type === 'header' && on.header.owner.type === 'board';

/** A lead with several connectors leads from one header of a board to modules. */
const isSecondBoard = (held: Held, berth: Berth): boolean =>
  isOnBoard(berth) && [held.start, ...held.passed].some(isOnBoard);

/** Adds the place under the hand to those that a lead was drawn over; back over the one before takes it off again. */
function passOver(editor: Editor, kind: RibbonKind | null, held: Held, pointer: Pointer): Held {
  if (kind?.lay !== 'loose' || !isLong(kind) || !held.drawn) return held;
  const { derived } = shownAnalysis(editor);
  const isAt = (berth: Berth) => (other: Berth) => isSamePlace(other.on, berth.on);
  const under = freeBerthAt(editor, pointer);
  if (!under || isSamePlace(under.on, held.start.on)) return under ? { ...held, passed: [] } : held;
  const known = held.passed.findIndex(isAt(under));
  if (known >= 0) return { ...held, passed: held.passed.slice(0, known + 1) };
  if (isSecondBoard(held, under)) return held;
  const passed = [...held.passed, under];
  return layLoose(derived, kind.id, [held.start, ...passed]).ok ? { ...held, passed } : held;
}

const keyOf = ({ edit, laying }: Outcome): string =>
  JSON.stringify([edit, laying?.landings.map(({ miss, xMm }) => [xMm, miss?.dxMm, miss?.dyMm])]);

/**
 * Lays ribbons: put down with a tap over as many headers as land, or drawn from a start along the row as far
 * as the hand goes. With no kind in hand the fitting one is pulled from the stock. Everything is shown as it
 * will be before it is let go.
 *
 * @param kindInHand - taken from the stock; `null`: whatever fits
 * @param laid - called with the keys of what was laid when it is let go
 */
export function layTool(
  editor: Editor,
  kindInHand: () => RibbonKind | null,
  laid: (pointer: Pointer) => void = () => {},
): LayTool {
  const { gestures, session, hints } = editor;
  let state: State = { at: 'idle' };
  let last: Pointer | null = null;
  let shownKey = '';
  let outcome: Outcome | null = null;

  const begin = (): void => {
    if (state.at !== 'idle') return;
    const kind = kindInHand();
    gestures.begin(shownTake(editor).id, kind ? `lay ${kind.name}` : 'lay a ribbon');
    shownKey = '';
  };

  const tell = (pointer: Pointer): void => {
    if (!outcome) {
      hints.setState({ hint: null });
      return;
    }
    const { title, lines, laying } = outcome;
    const { side } = session.getState();
    const moving = gestures.get();
    const keys =
      state.at === 'holding' && laying?.facts.flat && pointer.kind === 'mouse' ? keyWords(editor) : '';
    const lean = state.at === 'holding' && pointer.x < state.held.from.x ? -1 : 1;
    const words = () => ({
      title,
      connectors: laying ? connectorsOf(laying, side) : [],
      lines: lines(moving),
      keys,
    });
    hints.setState({ hint: { at: pointer, lean, words } });
  };

  /** What moves is drawn anew only where something other than the card has changed. */
  const show = (next: Outcome | null, pointer: Pointer): void => {
    outcome = next;
    last = pointer;
    const key = next?.edit ? keyOf(next) : '';
    if (key === '' || key !== shownKey) gestures.preview(next?.edit ?? null, next?.overlay);
    shownKey = key;
    tell(pointer);
  };

  const outcomeOf = (held: Held, pointer: Pointer): Outcome => {
    const kind = kindInHand();
    if (!kind) return pulledOutcome(editor, held, pointer);
    return kind.lay === 'flat'
      ? flatOutcome(editor, kind, held, pointer)
      : looseOutcome(editor, kind, held, pointer);
  };

  /** The nearest place that the kind in hand can start on; or why it cannot on the nearest there is. */
  const startNear = (pointer: Pointer): { readonly start?: Berth; readonly why?: Outcome } => {
    const kind = kindInHand();
    const { derived } = shownAnalysis(editor);
    const near = berthsNear(editor, pointer);
    const facts = kind ? derived.kit.ribbons.get(kind.id) : undefined;
    if (!facts || !kind) {
      const start = near.find(({ on }) => !isTaken(derived, on));
      return start ? { start } : {};
    }
    const start = near.find(({ on }) => !whyNotOn(derived, facts, on));
    if (start) return { start };
    const [nearest] = near.filter(({ on }) => on.type === 'header');
    const why = nearest && whyNotOn(derived, facts, nearest.on);
    if (!nearest || !why) return {};
    const words = whyWords(why, kind, derived.kit.kit);
    const other = why === 'other-bus' ? otherFor(derived, nearest) : undefined;
    return {
      why: {
        ...noWay(kind.name, words),
        ...(other && { lines: () => [trouble(words), plain(`${other} would fit`)] }),
      },
    };
  };

  const end = (): void => {
    state = { at: 'idle' };
    outcome = null;
    last = null;
    hints.setState({ hint: null });
  };

  const hover = (pointer: Pointer): void => {
    if (state.at === 'holding') return;
    begin();
    state = { at: 'hovering' };
    const { start, why } = startNear(pointer);
    const held = start && { start, from: pointer, drawn: false, turned: false, skip: 0, passed: [] };
    show(held ? outcomeOf(held, pointer) : (why ?? null), pointer);
  };

  const drop = (): void => {
    if (state.at !== 'idle') gestures.cancel();
    end();
  };

  /** Says in words what became of it; whatever the notes say of the change comes after it. */
  const commit = (pointer: Pointer): void => {
    const before = new Set(shownTake(editor).ribbons.map(({ id }) => id));
    const done = outcome;
    const spokenBefore = session.getState().spoken;
    end();
    gestures.commit();
    const added = shownTake(editor).ribbons.filter(({ id }) => !before.has(id));
    const { spoken } = session.getState();
    const notes = spoken === spokenBefore ? '' : ` ${spoken}`;
    const [ribbon] = added;
    if (ribbon) {
      const label = ribbon.label ?? ribbon.id;
      const words = done?.laying
        ? spokenOf(done.laying, label)
        : `${label} laid on ${ribbon.seats.length} places.`;
      session.setState({
        selection: new Set(added.map(({ id }) => selectionKey('ribbon', id))),
        spoken: `${words}${notes}`,
      });
    } else session.setState({ spoken: done?.why || 'Nothing is laid.' });
    laid(pointer);
  };

  const change = (held: Held): void => {
    state = { at: 'holding', held };
    if (last) show(outcomeOf(held, last), last);
  };

  return {
    hover,
    leave: () => {
      if (state.at === 'hovering') drop();
    },
    down(pointer) {
      begin();
      const { start, why } = startNear(pointer);
      if (!start) {
        state = { at: 'hovering' };
        show(why ?? null, pointer);
        return;
      }
      const held = { start, from: pointer, drawn: false, turned: false, skip: 0, passed: [] };
      state = { at: 'holding', held };
      hints.setState({ starts: NO_STARTS });
      show(outcomeOf(held, pointer), pointer);
    },
    move(pointer) {
      if (state.at === 'hovering') hover(pointer);
      if (state.at !== 'holding') return;
      const { held } = state;
      const drawn = held.drawn || hasWandered(held.from, pointer);
      const next = passOver(editor, kindInHand(), { ...held, drawn }, pointer);
      state = { at: 'holding', held: next };
      show(outcomeOf(next, pointer), pointer);
    },
    up(pointer) {
      if (state.at === 'hovering') hover(pointer);
      if (state.at !== 'idle') commit(pointer);
    },
    cancel: drop,
    press(key) {
      if (state.at !== 'holding' || !outcome?.laying?.facts.flat) return false;
      const { held } = state;
      if (key === turnStripe.id) change({ ...held, drawn: true, turned: !held.turned });
      else if (key === nextConnector.id)
        change({ ...held, drawn: true, skip: nextSkip(held, outcome.laying) });
      else return false;
      return true;
    },
  };
}

/** The next connector on the start; after the last that leaves another to land, the first again. */
const nextSkip = ({ skip }: Held, { landings }: Laying): number =>
  skip + 2 >= landings.length ? 0 : skip + 1;

/** A kind that could start on a header. */
function otherFor(derived: DerivedTake, { on }: Berth): string | undefined {
  return [...derived.kit.ribbons.values()].find((facts) => !whyNotOn(derived, facts, on))?.kind.name;
}
