import { useLayoutEffect, useRef, useState } from 'react';

/** How wide an element is, CSS px: drawings are made to fit, and their writing stays as large as it is. */
export function useWidth<T extends HTMLElement>(atFirst: number) {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(atFirst);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = (): void => setWidth(element.clientWidth || atFirst);
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, [atFirst]);
  return [ref, width] as const;
}
