import { useEffect, useState } from 'react';
import { catalogue, type ExamplePicture, examplePicture, type Inset } from '../../src/help.ts';

interface ShownProps {
  readonly head: string;
  readonly picture: ExamplePicture;
}

/** An address for a drawing: the page lets in no other picture than its own and such ones. */
function useAddress(svg: string): string | undefined {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return address;
}

function Picture({ svg, seen, ...look }: Inset & { readonly className?: string }) {
  return <img src={useAddress(svg)} alt={seen} {...look} />;
}

function Shown({ head, picture: { svg, seen, notes, inset } }: ShownProps) {
  return (
    <figure>
      <figcaption>
        <b>{head}</b>
        {notes.length === 0 ? (
          <p>Nothing is found here.</p>
        ) : (
          notes.slice(0, 2).map(({ key, headline, detail }) => (
            <p key={key}>
              {headline}. {detail}
            </p>
          ))
        )}
      </figcaption>
      <div>
        <Picture svg={svg} seen={seen} className={inset ? 'drawn low' : 'drawn'} />
        {inset && <Picture {...inset} />}
      </div>
    </figure>
  );
}

/** What a check finds, shown by its own examples and in its own words. */
export function CheckPage({ id }: { readonly id: string }) {
  const entry = catalogue[id];
  if (!entry) return null;
  const { about, examples } = entry;
  const bad = examplePicture(id, examples.bad());
  const remedies = [...new Set(bad.notes.map(({ remedy }) => remedy))];
  return (
    <article>
      <h3>Why it matters</h3>
      <p>{about.why}</p>
      <div className="pair">
        <Shown head="As it should be" picture={examplePicture(id, examples.good())} />
        <Shown head="As it should not be" picture={bad} />
      </div>
      <h3>What to do, here</h3>
      {remedies.slice(0, 2).map((remedy) => (
        <p key={remedy}>{remedy}</p>
      ))}
      <h3>Where the rule comes from</h3>
      <p>{about.source}</p>
    </article>
  );
}
