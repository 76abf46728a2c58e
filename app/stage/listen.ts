type Listeners = { readonly [Type in keyof WindowEventMap]?: (event: WindowEventMap[Type]) => void };

/** Listens to several kinds of events; answers with what stops it. */
export function listen(
  target: EventTarget,
  listeners: Listeners,
  options?: AddEventListenerOptions,
): () => void {
  const entries = Object.entries(listeners) as [string, EventListener][];
  for (const [type, listener] of entries) target.addEventListener(type, listener, options);
  return () => {
    for (const [type, listener] of entries) target.removeEventListener(type, listener, options);
  };
}
