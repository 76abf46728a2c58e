import { useEffect, useMemo } from 'react';
import { deriveTake, type Layout, type Take } from '../../src/index.ts';
import { type FigureLine, sideBySide } from '../../src/planner.ts';
import { useAnalysis, useEditor, useLayout, useTake } from '../hooks.ts';
import { shadowOf } from './shadow.ts';

interface Props {
  readonly other: Take;
  /** The layout that it is in, if that is a bandmate's. */
  readonly linked: Layout | null;
  readonly hasShadow: boolean;
}

function FigureRow({ figure }: { readonly figure: FigureLine }) {
  const { what, mine, theirs, better } = figure;
  const cell = (text: string, isBetter: boolean) => (
    <td className={isBetter ? 'better' : undefined}>
      {text}
      {isBetter && <span className="unseen"> (better)</span>}
    </td>
  );
  return (
    <tr>
      <th scope="row">{what}</th>
      {cell(mine, better === 'mine')}
      {cell(theirs, better === 'theirs')}
    </tr>
  );
}

function Told({ heading, lines }: { readonly heading: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section aria-label={heading}>
      <h3>
        {heading} <small>{lines.length}</small>
      </h3>
      <ul className="told">
        {lines.map((line, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two lines may say the same
          <li key={i}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

/** The take shown beside another one: figures, what differs, and which notes come and go. */
export function Compared({ other, linked, hasShadow }: Props) {
  const editor = useEditor();
  const kit = useLayout((layout) => layout.kit);
  const take = useTake();
  const { derived } = useAnalysis();
  const theirKit = linked?.kit ?? kit;
  const beside = useMemo(
    () => sideBySide({ kit, take }, { kit: theirKit, take: other }),
    [kit, take, theirKit, other],
  );
  useEffect(() => {
    if (!hasShadow) return;
    editor.hints.setState({ overlay: shadowOf(derived, deriveTake(theirKit, other)) });
    return () => editor.hints.setState({ overlay: null });
  }, [editor, derived, theirKit, other, hasShadow]);
  const of = (...sorts: readonly string[]) =>
    beside.differences.filter(({ sort }) => sorts.includes(sort)).map(({ words }) => words);
  const { came, gone, grew, shrank } = beside.notes;
  const headlines = (notes: readonly { readonly headline: string }[]) =>
    notes.map(({ headline }) => headline);
  return (
    <>
      <table className="beside">
        <thead>
          <tr>
            <td />
            <th scope="col">{take.name}</th>
            <th scope="col">{other.name}</th>
          </tr>
        </thead>
        <tbody>
          {beside.figures.map((figure) => (
            <FigureRow key={figure.what} figure={figure} />
          ))}
        </tbody>
      </table>
      <p className="remark">
        What one finds in “{other.name}” that is not so in “{take.name}”:
      </p>
      <Told heading="Modules elsewhere" lines={of('module')} />
      <Told heading="Ribbons and leads" lines={of('ribbon')} />
      <Told heading="Case" lines={of('row', 'supply', 'take', 'layout', 'kind')} />
      <Told heading="Notes it has besides" lines={headlines([...came, ...grew])} />
      <Told heading="Notes it has not" lines={headlines([...gone, ...shrank])} />
      {beside.differences.length === 0 && <p>Both are wired and placed alike.</p>}
    </>
  );
}
