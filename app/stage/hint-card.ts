import '../style/hint.css';
import type { Editor } from '../editor.ts';
import type { Hint, HintWords } from '../store/hints.ts';
import { atReadingPace } from '../store/reading-pace.ts';
import { freeStage } from '../store/view.ts';
import type { Point } from '../tools/pointer.ts';
import { loupePlace } from './loupe-place.ts';

/** Beside the pointer, px. */
const OFF_PX = { mouse: { x: 22, y: 26 }, pen: { x: 26, y: 30 } } as const;

/** Below a finger, which hides what lies under it, px. */
const UNDER_FINGER_PX = 56;

/** To the edges of the stage, px. */
const EDGE_PX = 8;

const clamp = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));

interface Room {
  readonly width: number;
  readonly height: number;
}

interface Box extends Room {
  readonly left: number;
  readonly top: number;
}

const within = ({ left, top }: Pick<Box, 'left' | 'top'>, card: Room, stage: Room) => ({
  left: clamp(left, EDGE_PX, Math.max(EDGE_PX, stage.width - card.width - EDGE_PX)),
  top: clamp(top, EDGE_PX, Math.max(EDGE_PX, stage.height - card.height - EDGE_PX)),
});

/** Above the loupe that lies above the finger, or else below the finger. */
function cardPlaceAtFinger(at: Point, card: Room, stage: Room): Pick<Box, 'left' | 'top'> {
  const loupe = loupePlace(at, stage);
  const left = at.x - card.width / 2;
  const above = loupe.top - EDGE_PX - card.height;
  const below = Math.max(at.y + UNDER_FINGER_PX, loupe.bottom > at.y ? loupe.bottom + EDGE_PX : 0);
  const hasAbove = loupe.bottom < at.y && above >= EDGE_PX;
  const hasBelow = below + card.height + EDGE_PX <= stage.height;
  const isLow = at.y > stage.height / 2;
  return within({ left, top: hasAbove || (!hasBelow && isLow) ? above : below }, card, stage);
}

/** Where the card goes: near the hand and never under it, before what it draws and never off the stage. */
export function cardPlace(
  { at, lean }: Pick<Hint, 'at' | 'lean'>,
  card: Room,
  stage: Room,
): Pick<Box, 'left' | 'top'> {
  if (at.kind === 'touch') return cardPlaceAtFinger(at, card, stage);
  const off = OFF_PX[at.kind];
  const right = at.x + off.x;
  const left = at.x - off.x - card.width;
  const hasRight = right + card.width + EDGE_PX <= stage.width;
  const goesRight = hasRight && (lean > 0 || left < EDGE_PX);
  const below = at.y + off.y;
  const above = at.y - off.y - card.height;
  const fits = below + card.height + EDGE_PX <= stage.height;
  return within({ left: goesRight ? right : left, top: fits ? below : above }, card, stage);
}

const element = (name: string, className: string, text: string): HTMLElement => {
  const made = document.createElement(name);
  made.className = className;
  made.textContent = text;
  return made;
};

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

type Made = readonly [name: string, className: string, text: string];

/** Makes the children what they should be, and leaves alone what already is: a browser lays out what was touched. */
function refill(parent: HTMLElement, wanted: readonly Made[]): void {
  for (const [i, [name, className, text]] of wanted.entries()) {
    const child = parent.children[i];
    if (child?.localName !== name) {
      const fresh = element(name, className, text);
      if (child) child.replaceWith(fresh);
      else parent.append(fresh);
      continue;
    }
    if (child.className !== className) child.className = className;
    if (child.childElementCount === 0 && child.textContent !== text) child.textContent = text;
  }
  while (parent.children.length > wanted.length) parent.lastElementChild?.remove();
}

function fill(card: HTMLElement, { title, connectors, lines, keys }: HintWords): void {
  refill(card, [
    ['b', 'hint-title', title],
    ['div', 'hint-connectors', ''],
    ...lines.map(
      ({ text, isTrouble }): Made => ['span', isTrouble ? 'hint-line trouble' : 'hint-line', sentence(text)],
    ),
    ['small', 'hint-keys', keys],
  ]);
  refill(
    card.children[1] as HTMLElement,
    connectors.map(({ number, shown }): Made => ['i', shown, String(number)]),
  );
}

/** It follows at least so often, and glides from place to place: a browser lays out the page for every place it is given. */
const LONGEST_MS = 240;

/** The card beside the hand: written to the page directly, past its framework. */
export function showHints(editor: Editor, stage: HTMLElement): () => void {
  const card = element('div', 'hint-card', '');
  card.hidden = true;
  card.setAttribute('aria-hidden', 'true');
  stage.parentElement?.append(card);
  let written = '';
  let size: Room = { width: 0, height: 0 };
  const { hints, platform, session } = editor;
  const hinted = { get: (): Hint | null => hints.getState().hint, subscribe: hints.subscribe };
  const paced = atReadingPace(hinted, platform.clock, LONGEST_MS);
  const follow = (): void => {
    const hint = paced.get();
    card.hidden = hint === null;
    if (!hint) return;
    const words = hint.words();
    const text = JSON.stringify([words, hint.at.kind]);
    if (text !== written) {
      written = text;
      card.dataset.hand = hint.at.kind;
      fill(card, words);
      size = { width: card.offsetWidth, height: card.offsetHeight };
    }
    const { width, height } = session.getState().stage;
    const { left, top } = cardPlace(hint, size, { width, height: height - freeStage(editor).bottom });
    card.style.transform = `translate(${left}px,${top}px)`;
  };
  const end = paced.subscribe(follow);
  return () => {
    end();
    card.remove();
  };
}
