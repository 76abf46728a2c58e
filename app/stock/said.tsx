import { useEffect, useRef } from 'react';

/** What was just done, said where it is read; it takes the keys when the button that did it is gone. */
export function Said({ words }: { readonly words: string }) {
  const ref = useRef<HTMLParagraphElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each new word may have taken a button away
  useEffect(() => {
    const { activeElement } = document;
    if (activeElement === document.body || activeElement === null) ref.current?.focus();
  }, [words]);
  return (
    <p ref={ref} className="stock-said" role="status" tabIndex={-1}>
      {words}
    </p>
  );
}
