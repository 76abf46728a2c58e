import { type Layout, type ModuleKind, unknownFactsOf } from '../../src/index.ts';
import { factName, fieldOf } from './fact-words.ts';
import { OpenFactList } from './open-fact-list.tsx';
import { useOpenFacts } from './use-open-facts.ts';

interface Props {
  /** As it would be with the kind as it is typed. */
  readonly layout: Layout;
  /** The kind in it; none where it is new, or cannot be read. */
  readonly kinds: readonly ModuleKind[];
  readonly kind: ModuleKind | null;
  readonly onField: (field: string) => void;
}

/** What is not known of the kind, first what notes rest on; each leads to its field. */
export function FactsToFindOut({ layout, kinds, kind, onField }: Props) {
  const { facts } = useOpenFacts(layout, kinds);
  const resting = new Set(facts.map(({ fact }) => fieldOf(fact)));
  const others = kind ? unknownFactsOf(kind).filter((fact) => !resting.has(fieldOf(fact))) : [];
  return (
    <section aria-label="Facts to find out">
      <h3>Facts to find out</h3>
      {!kind && <p className="aside">Told as soon as every field can be read.</p>}
      {kind && facts.length + others.length === 0 && (
        <p className="aside">All that notes could rest on is known.</p>
      )}
      <OpenFactList facts={facts} onFact={({ fact }) => onField(fieldOf(fact))} />
      {kind && others.length > 0 && (
        <p className="unrested">
          <span className="aside">Not known, and nothing rests on it yet: </span>
          {others.map((fact) => (
            <button key={fieldOf(fact)} type="button" onClick={() => onField(fieldOf(fact))}>
              {factName(fact, kind)}
            </button>
          ))}
        </p>
      )}
    </section>
  );
}
