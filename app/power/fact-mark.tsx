import type { Ground } from './module-rows.ts';

/** How far a figure can be trusted, by shape: the words stand beside it. */
export function FactMark({ known }: { readonly known: Ground }) {
  return (
    <svg className="fact" viewBox="0 0 12 12" aria-hidden="true">
      {known === 'measured' && <path className="full" d="M1.500 1.500h9v9h-9z" />}
      {known === 'published' && (
        <>
          <path d="M1.500 1.500h9v9h-9z" />
          <path className="full" d="M1.500 10.500v-9h4.500v9z" />
        </>
      )}
      {known === 'guessed' && <path d="M1.500 1.500h9v9h-9z" strokeDasharray="2 2" />}
      {known === 'not said' && <path d="M2.500 2.500l7 7M9.500 2.500l-7 7" />}
    </svg>
  );
}
