import { isTyping } from '../platform/keyboard.ts';
import type { Toolbox } from '../tools/toolbox.ts';
import { listen } from './listen.ts';
import { createFrameFeed, pointerOf } from './pointer-feed.ts';

/** A wheel that counts in lines: height of one, px. */
const LINE_PX = 18;

/** Leads everything that pointers do on the stage to the tools; calls off what is under way when the window is left. */
export function listenToPointers(stage: HTMLElement, toolbox: Toolbox): () => void {
  const pressed = new Set<number>();
  // Asking for it at every move would have the browser lay the page out each time.
  let bounds = stage.getBoundingClientRect();
  const measure = (): void => {
    bounds = stage.getBoundingClientRect();
  };
  const read = (event: PointerEvent) => pointerOf(event, bounds);
  const feed = createFrameFeed((pointer) => {
    if (pressed.has(pointer.id)) {
      toolbox.move(pointer);
      return;
    }
    toolbox.hover(pointer);
    if (pressed.size === 0) stage.style.cursor = toolbox.cursorAt(pointer);
  });
  /*
   * While something is held down, moves are taken before they go on their way through the page: nothing on it
   * listens to them, but its framework would look for listeners from the root to the stage at each.
   */
  let endHold: (() => void) | null = null;
  const hold = (): void => {
    endHold ??= listen(
      window,
      {
        pointermove(event) {
          event.stopPropagation();
          feed.push(read(event), event.timeStamp);
        },
        mousemove: (event) => event.stopPropagation(),
      },
      { capture: true },
    );
  };
  const letGo = (): void => {
    endHold?.();
    endHold = null;
  };
  const cancel = (): void => {
    letGo();
    feed.drop();
    pressed.clear();
    toolbox.cancel();
  };

  const endStage = listen(
    stage,
    {
      pointerdown(event) {
        if (event.button === 1) event.preventDefault();
        // What is being typed counts first: left later, it would change the layout under the hand.
        if (isTyping(document.activeElement)) stage.focus({ preventScroll: true });
        stage.setPointerCapture(event.pointerId);
        measure();
        feed.flush();
        pressed.add(event.pointerId);
        hold();
        toolbox.down(read(event));
      },
      pointerenter: measure,
      pointermove: (event) => feed.push(read(event), event.timeStamp),
      pointerup(event) {
        feed.flush();
        if (pressed.delete(event.pointerId)) toolbox.up(read(event));
        if (pressed.size === 0) letGo();
      },
      pointercancel: cancel,
      pointerleave() {
        feed.flush();
        if (pressed.size === 0) toolbox.leave();
      },
      wheel(event) {
        event.preventDefault();
        const { left, top } = stage.getBoundingClientRect();
        const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE_PX : 1;
        toolbox.wheel({
          x: event.clientX - left,
          y: event.clientY - top,
          dx: event.deltaX * unit,
          dy: event.deltaY * unit,
          shift: event.shiftKey,
          mod: event.ctrlKey || event.metaKey,
        });
      },
      contextmenu(event) {
        event.preventDefault();
        // A finger that rests is the tools' own; keys have no place.
        const { pointerType } = event as PointerEvent;
        if (pointerType === 'mouse') toolbox.ask(read(event as PointerEvent));
        else if (!pointerType) toolbox.ask(null);
      },
    },
    { passive: false },
  );
  const endWindow = listen(window, { blur: cancel });
  return () => {
    endStage();
    endWindow();
    letGo();
    feed.drop();
  };
}
