import '../style/hint.css';
import type { Editor } from '../editor.ts';
import type { Hint } from '../store/hints.ts';
import { freeStage } from '../store/view.ts';

/** Beside the pointer, and above a finger, which hides what lies under it; px. */
const OFF_PX = { mouse: { x: 22, y: 26 }, pen: { x: 26, y: 30 }, touch: { x: 0, y: 76 } } as const;

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

/** Where the card goes: near the hand and never under it, before what it draws and never off the stage. */
export function cardPlace(
  { at, lean }: Pick<Hint, 'at' | 'lean'>,
  card: Room,
  stage: Room,
): Pick<Box, 'left' | 'top'> {
  const off = OFF_PX[at.kind];
  const isFinger = at.kind === 'touch';
  const right = at.x + off.x;
  const left = at.x - off.x - card.width;
  const hasRight = right + card.width + EDGE_PX <= stage.width;
  const goesRight = hasRight && (lean > 0 || left < EDGE_PX);
  const below = at.y + off.y;
  const above = at.y - off.y - card.height;
  const x = isFinger ? at.x - card.width / 2 : goesRight ? right : left;
  const firstY = isFinger ? above : below;
  const fits = isFinger ? firstY >= EDGE_PX : firstY + card.height + EDGE_PX <= stage.height;
  const y = fits ? firstY : isFinger ? below : above;
  return {
    left: clamp(x, EDGE_PX, Math.max(EDGE_PX, stage.width - card.width - EDGE_PX)),
    top: clamp(y, EDGE_PX, Math.max(EDGE_PX, stage.height - card.height - EDGE_PX)),
  };
}

const element = (name: string, className: string, text = ''): HTMLElement => {
  const made = document.createElement(name);
  made.className = className;
  made.textContent = text;
  return made;
};

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function fill(card: HTMLElement, { title, connectors, lines, keys }: Hint): void {
  const strip = element('span', 'hint-connectors');
  strip.append(...connectors.map(({ number, shown }) => element('i', shown, String(number))));
  card.replaceChildren(
    element('b', 'hint-title', title),
    ...(connectors.length > 0 ? [strip] : []),
    ...lines.map(({ text, isTrouble }) =>
      element('span', isTrouble ? 'hint-line trouble' : 'hint-line', sentence(text)),
    ),
    ...(keys ? [element('small', 'hint-keys', keys)] : []),
  );
}

/** The card beside the hand: written to the page directly, since it changes with every move. */
export function showHints(editor: Editor, stage: HTMLElement): () => void {
  const card = element('div', 'hint-card');
  card.hidden = true;
  card.setAttribute('aria-hidden', 'true');
  stage.parentElement?.append(card);
  let written = '';
  let size: Room = { width: 0, height: 0 };
  const follow = (): void => {
    const { hint } = editor.hints.getState();
    card.hidden = hint === null;
    if (!hint) return;
    const { at, lean: _, ...words } = hint;
    const text = JSON.stringify([words, at.kind]);
    if (text !== written) {
      written = text;
      card.dataset.hand = at.kind;
      fill(card, hint);
      size = { width: card.offsetWidth, height: card.offsetHeight };
    }
    const { width, height } = editor.session.getState().stage;
    const { left, top } = cardPlace(hint, size, { width, height: height - freeStage(editor).bottom });
    card.style.transform = `translate(${left}px,${top}px)`;
  };
  const end = editor.hints.subscribe(follow);
  return () => {
    end();
    card.remove();
  };
}
