import type { SelectionKey } from '../canvas/model.ts';
import type { Editor } from '../editor.ts';
import type { Toolbox } from '../tools/toolbox.ts';
import { createTrayDrag } from '../tools/tray-drag.ts';
import { listen } from './listen.ts';
import { pointerOf } from './pointer-feed.ts';

/** The card of a kind that an event came from. */
const cardOf = ({ target }: Event): HTMLElement | null =>
  target instanceof Element ? target.closest<HTMLElement>('[data-kind]') : null;

const kindOn = ({ dataset }: HTMLElement): SelectionKey => dataset.kind as SelectionKey;

/** Leads what is done to the cards in the tray, wherever it is folded to, to the hand that puts them down. */
export function listenToTray(editor: Editor, stage: HTMLElement, toolbox: Toolbox): () => void {
  const drag = createTrayDrag<PointerEvent>(
    editor,
    toolbox,
    (event) => pointerOf(event, stage.getBoundingClientRect()),
    ({ clientX, clientY }) => stage.contains(document.elementFromPoint(clientX, clientY)),
    () => stage.focus({ preventScroll: true }),
  );
  return listen(document, {
    pointerdown(event) {
      const card = cardOf(event);
      if (!card || event.button !== 0) return;
      card.setPointerCapture(event.pointerId);
      drag.down(kindOn(card), event);
    },
    pointermove: drag.move,
    pointerup: drag.up,
    pointercancel: drag.cancel,
    click(event) {
      const card = cardOf(event);
      if (card) drag.tap(kindOn(card));
    },
  });
}
