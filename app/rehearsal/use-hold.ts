import { type PointerEvent, useRef } from 'react';
import type { Pointer, Tool } from '../tools/pointer.ts';
import { type PlugDrag, plugDrag } from './plug-drag.ts';

const pointerOf = (event: PointerEvent): Pointer => ({
  x: event.clientX,
  y: event.clientY,
  id: event.pointerId,
  kind: event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse',
  button: event.button,
  shift: event.shiftKey,
  alt: event.altKey,
  mod: event.ctrlKey || event.metaKey,
});

/** Takes hold of the connector: whatever is pressed within `.plug` moves it until it is let go. */
export function useHold(drag: PlugDrag) {
  const held = useRef<{ readonly tool: Tool; readonly id: number } | null>(null);
  const cancel = (): void => {
    held.current?.tool.cancel();
    held.current = null;
  };
  const isOurs = ({ pointerId }: PointerEvent): boolean => held.current?.id === pointerId;
  return {
    isHeld: () => held.current !== null,
    cancel,
    handlers: {
      onPointerDown(event: PointerEvent<HTMLElement>) {
        const { target, button, pointerId, currentTarget } = event;
        if (held.current || button !== 0 || !(target instanceof Element) || !target.closest('.plug')) return;
        currentTarget.setPointerCapture(pointerId);
        held.current = { tool: plugDrag(drag), id: pointerId };
        held.current.tool.down(pointerOf(event));
      },
      onPointerMove(event: PointerEvent) {
        if (isOurs(event)) held.current?.tool.move(pointerOf(event));
      },
      onPointerUp(event: PointerEvent) {
        if (!isOurs(event)) return;
        held.current?.tool.up(pointerOf(event));
        held.current = null;
      },
      onPointerCancel: (event: PointerEvent) => isOurs(event) && cancel(),
      onLostPointerCapture: (event: PointerEvent) => isOurs(event) && cancel(),
    },
  };
}
