import { connectorAt, type JointTarget, type LaidRibbon, runOf } from '../../src/index.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { chosenConnector, ownSeat, placesFor, type RibbonEnd, ribbonIn } from '../store/aim.ts';
import { type Arrow, alongOf } from '../store/arrows.ts';
import { seatEdit } from '../store/seat-edit.ts';
import { connectorWords, placeWords } from '../store/seat-words.ts';
import { sheetNow } from '../store/view.ts';
import { aimAt } from './aim-at.ts';
import { placePoint } from './grip.ts';
import type { Point } from './pointer.ts';
import { endOf, seatLabel } from './seat-tool.ts';
import { seatedOnModules } from './slide-ribbon-tool.ts';

type State =
  | { readonly at: 'idle' }
  | {
      readonly at: 'carrying a connector';
      readonly end: RibbonEnd;
      readonly places: readonly JointTarget[];
      readonly here: Point | undefined;
      readonly on: JointTarget | undefined;
    }
  | { readonly at: 'sliding'; readonly ribbon: LaidRibbon; readonly headers: number };

/**
 * Keys for the one ribbon that is selected: arrows go from connector to connector, Enter picks the connector up
 * and arrows carry it from header to header; with no connector chosen Enter picks up the ribbon as a whole. Enter
 * puts down, Escape puts back.
 */
export interface RibbonKeys {
  isCarrying(): boolean;
  /** Whether the arrow meant something to the selected ribbon. */
  choose(arrow: Arrow): boolean;
  pick(): boolean;
  step(arrow: Arrow): void;
  drop(): void;
  cancel(): void;
}

const isForward = (arrow: Arrow): boolean => arrow === 'right' || arrow === 'down';
const isAcross = (arrow: Arrow): boolean => arrow === 'left' || arrow === 'right';

/** Places of one height count as one line, px. */
const LINE_PX = 6;

/** The next place on that side of the screen; across, along the line before any other. From nowhere, the nearest. */
function nextPlace(
  editor: Editor,
  places: readonly JointTarget[],
  here: Point | undefined,
  arrow: Arrow,
): { readonly on: JointTarget; readonly at: Point } | undefined {
  const forward = isForward(arrow) ? 1 : -1;
  const stops = places.flatMap((on) => {
    const at = placePoint(editor, on);
    if (!at) return [];
    const [dx, dy] = here ? [at.x - here.x, at.y - here.y] : [0, 0];
    const [ahead, aside] = isAcross(arrow) ? [dx, dy] : [dy, dx];
    const isAhead = !here || ahead * forward > LINE_PX / 2;
    const isInLine = Math.abs(aside) <= LINE_PX;
    return isAhead ? [{ on, at, isInLine, off: Math.abs(ahead) + Math.abs(aside) }] : [];
  });
  return stops.sort((a, b) => Number(b.isInLine) - Number(a.isInLine) || a.off - b.off)[0];
}

export function createRibbonKeys(editor: Editor): RibbonKeys {
  const { gestures, session } = editor;
  let state: State = { at: 'idle' };

  const say = (spoken: string): void => session.setState({ spoken });
  const derivedNow = () => shownAnalysis(editor).derived;
  const selected = (): LaidRibbon | undefined => ribbonIn(derivedNow(), session.getState().selection);

  /** Connectors as they lie on the screen, left to right. */
  const connectorsAcross = (ribbon: LaidRibbon): number[] => {
    const run = runOf(sheetNow(editor), derivedNow(), ribbon);
    if (!run) return ribbon.uses.map((_, order) => connectorAt(ribbon, order));
    return [...run.knots].sort((a, b) => a.x - b.x).map(({ connector }) => connector);
  };

  const pickConnector = (chosen: RibbonEnd) => {
    const end = endOf(editor, chosen.ribbon.id, chosen.connector);
    if (!end) return;
    if (end.ribbon.ribbon.locked) return say(`${end.ribbon.name} is locked.`);
    const knot = runOf(sheetNow(editor), derivedNow(), end.ribbon)?.knots.find(
      ({ connector }) => connector === end.connector,
    );
    const places = placesFor(derivedNow(), end);
    gestures.begin(shownTake(editor).id, seatLabel(end));
    const on = ownSeat(end);
    state = { at: 'carrying a connector', end, places, here: on && knot, on };
    gestures.preview(null, aimAt(end, places));
    say(
      `Connector ${end.connector + 1} of ${end.ribbon.name} picked up; ${places.length} places fit. Arrow keys carry it, Enter puts it down, Escape puts it back.`,
    );
  };

  const pickRibbon = (ribbon: LaidRibbon) => {
    if (ribbon.ribbon.locked) return say(`${ribbon.name} is locked.`);
    if (!ribbon.facts.flat || seatedOnModules(ribbon).length === 0)
      return say(`${ribbon.name} does not slide. Arrow keys choose a connector.`);
    gestures.begin(shownTake(editor).id, `slide ${ribbon.name}`);
    state = { at: 'sliding', ribbon, headers: 0 };
    say(`${ribbon.name} picked up. Left and right slide it, Enter puts it down, Escape puts it back.`);
  };

  const carryTo = (carried: Extract<State, { at: 'carrying a connector' }>, arrow: Arrow) => {
    const { end, places } = carried;
    const next = nextPlace(editor, places, carried.here, arrow);
    if (!next) return say('No place there.');
    gestures.preview(seatEdit(editor, end, next.on), aimAt(end, places));
    state = { ...carried, here: next.at, on: next.on };
    const shown = gestures.get()?.derived;
    const ribbon = shown?.wiring.ribbonById.get(end.ribbon.id);
    say(`${shown && ribbon ? connectorWords(shown, ribbon, end.connector) : placeWords(next.on)}.`);
  };

  const slide = (ribbon: LaidRibbon, headers: number): boolean => {
    const take = shownTake(editor).id;
    const edit = { type: 'slide-ribbon', take, ribbon: ribbon.id, to: { headers } } as const;
    gestures.preview(headers === 0 ? null : edit);
    return headers === 0 || gestures.get() !== null;
  };

  const slideOn = (ribbon: LaidRibbon, before: number, arrow: Arrow) => {
    if (!isAcross(arrow)) return;
    const headers = before + alongOf(editor, arrow);
    if (!slide(ribbon, headers)) {
      slide(ribbon, before);
      return say('No header there.');
    }
    state = { at: 'sliding', ribbon, headers };
    const shown = gestures.get()?.derived.wiring.ribbonById.get(ribbon.id) ?? ribbon;
    const on = seatedOnModules(shown).map(({ header }) => header.owner.name);
    say(`${ribbon.name} on ${on.join(', ')}; ${on.length} of ${ribbon.uses.length} connectors seated.`);
  };

  return {
    isCarrying: () => state.at !== 'idle',
    choose(arrow) {
      const ribbon = selected();
      if (!ribbon) return false;
      const across = connectorsAcross(ribbon);
      const at = across.indexOf(chosenConnector(editor)?.connector ?? -1);
      const first = isForward(arrow) ? 0 : across.length - 1;
      const next = at < 0 ? first : at + (isForward(arrow) ? 1 : -1);
      const connector = across[Math.min(across.length - 1, Math.max(0, next))];
      if (connector === undefined) return true;
      session.setState({ connector: { ribbon: ribbon.id, connector } });
      const words = connectorWords(derivedNow(), ribbon, connector);
      say(`${ribbon.name}, ${words}.`);
      return true;
    },
    pick() {
      const ribbon = selected();
      if (!ribbon) return false;
      const chosen = chosenConnector(editor);
      if (chosen) pickConnector(chosen);
      else pickRibbon(ribbon);
      return true;
    },
    step(arrow) {
      if (state.at === 'carrying a connector') carryTo(state, arrow);
      else if (state.at === 'sliding') slideOn(state.ribbon, state.headers, arrow);
    },
    drop() {
      if (state.at === 'idle') return;
      state = { at: 'idle' };
      gestures.commit();
    },
    cancel() {
      if (state.at === 'idle') return;
      state = { at: 'idle' };
      gestures.cancel();
      say('Put back.');
    },
  };
}
