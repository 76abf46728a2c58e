import { adoptionOf, type ModuleKind, type Take } from '../../src/index.ts';
import { useLayout } from '../hooks.ts';
import { figure, voltageName } from '../panels/figures.ts';
import { useBench } from './use-bench.ts';

/** Kinds of which something was measured that their data do not say yet, with what adopting it would change. */
function adoptable(kinds: readonly ModuleKind[], take: Take) {
  return kinds.flatMap((kind) => {
    const { draws, isComplete } = adoptionOf(take, kind);
    const changes = draws
      .filter(({ fromMa, toMa }) => fromMa !== toMa)
      .map(({ line, fromMa, toMa }) => {
        const was = fromMa === undefined ? 'none' : fromMa === null ? 'unknown' : figure(fromMa);
        return `${voltageName(line)} ${was} → ${figure(toMa)} mA`;
      });
    const becomesKnown = draws.length > 0 && isComplete && kind.known !== 'measured';
    return changes.length > 0 || becomesKnown
      ? [{ kind, words: [...changes, ...(becomesKnown ? ['known as measured'] : [])] }]
      : [];
  });
}

/** Measured currents that can become what is known of a kind. */
export function AdoptList({ take }: { readonly take: Take }) {
  const { perform } = useBench();
  const kinds = useLayout(({ kit }) => kit.modules);
  const found = adoptable(kinds, take);
  if (found.length === 0) return null;
  return (
    <section aria-label="Measured currents">
      <h3>Measured currents</h3>
      <ul className="adoptions">
        {found.map(({ kind, words }) => (
          <li key={kind.id}>
            <span>
              <b>{kind.name}</b> <small>{words.join(', ')}</small>
            </span>
            <button
              type="button"
              className="plain"
              aria-label={`Adopt for ${kind.name}`}
              onClick={() => perform({ type: 'adopt-measured', take: take.id, kind: kind.id })}
            >
              Adopt
            </button>
          </li>
        ))}
      </ul>
      <p className="aside">
        Every module of the kind then counts with what was measured, the one that draws most.
      </p>
    </section>
  );
}
