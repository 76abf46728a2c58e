import '../style/loupe.css';
import { addCrossHairs } from '../canvas/draw/cross-hairs.ts';
import { paint } from '../canvas/draw/paper.ts';
import type { Editor } from '../editor.ts';
import { freeStage } from '../store/view.ts';
import { listen } from './listen.ts';
import { LOUPE_PX, loupePlace } from './loupe-place.ts';

/** How many times larger. */
const ZOOM = 2;

/** The arms of the cross on the finger's point, from the middle outward, px. */
const CROSS = [7, 15] as const;

/** Enlarges what the canvases of a stage show around a point of the window. */
function enlarge(loupe: HTMLCanvasElement, canvases: Iterable<HTMLCanvasElement>, x: number, y: number) {
  const context = loupe.getContext('2d');
  if (!context) return;
  const ratio = loupe.width / LOUPE_PX;
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.clearRect(0, 0, LOUPE_PX, LOUPE_PX);
  for (const canvas of canvases) {
    const { left, top, width, height } = canvas.getBoundingClientRect();
    if (width === 0 || height === 0 || canvas.width === 0 || canvas.height === 0) continue;
    const at = [(left - x) * ZOOM + LOUPE_PX / 2, (top - y) * ZOOM + LOUPE_PX / 2] as const;
    context.drawImage(canvas, ...at, width * ZOOM, height * ZOOM);
  }
  const { color, backgroundColor } = getComputedStyle(loupe);
  const middle = { x: LOUPE_PX / 2, y: LOUPE_PX / 2 };
  for (const [line, width] of [
    [backgroundColor, 3.5],
    [color, 1.25],
  ] as const)
    paint(context, { line, width }, [middle], (at) => addCrossHairs(context, at, ...CROSS));
}

/**
 * A round glass over the drawing that shows what a finger hides while something hangs at it. It copies what the canvases
 * show, so that it needs no pens of its own.
 */
export function showLoupe(editor: Editor, stage: HTMLElement): () => void {
  const around = stage.parentElement;
  if (!around) return () => {};
  const loupe = document.createElement('canvas');
  loupe.className = 'loupe';
  loupe.hidden = true;
  loupe.style.width = `${LOUPE_PX}px`;
  loupe.style.height = `${LOUPE_PX}px`;
  loupe.setAttribute('aria-hidden', 'true');
  around.append(loupe);
  let frame = 0;

  const hide = (): void => {
    cancelAnimationFrame(frame);
    frame = 0;
    loupe.hidden = true;
  };
  const isHolding = (): boolean =>
    editor.gestures.store.getState().running || editor.hints.getState().hint !== null;
  const show = (x: number, y: number): void => {
    frame = 0;
    loupe.hidden = !isHolding();
    if (loupe.hidden) return;
    const size = Math.round(LOUPE_PX * devicePixelRatio);
    if (loupe.width !== size) {
      loupe.width = size;
      loupe.height = size;
    }
    const { left, top } = around.getBoundingClientRect();
    const { width, height } = editor.session.getState().stage;
    const place = loupePlace(
      { x: x - left, y: y - top },
      { width, height: height - freeStage(editor).bottom },
    );
    loupe.style.transform = `translate(${place.left}px,${place.top}px)`;
    const shown = around.querySelectorAll<HTMLCanvasElement>('canvas:not(.loupe)');
    enlarge(loupe, shown, x, y);
  };

  const end = listen(
    window,
    {
      pointermove({ pointerType, clientX, clientY }) {
        if (pointerType !== 'touch') return;
        cancelAnimationFrame(frame);
        // In the frame in which the move is drawn, after it.
        frame = requestAnimationFrame(() => show(clientX, clientY));
      },
      pointerup: hide,
      pointercancel: hide,
      blur: hide,
    },
    { capture: true },
  );
  return () => {
    end();
    hide();
    loupe.remove();
  };
}
