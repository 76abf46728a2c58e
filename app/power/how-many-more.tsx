import { useMemo, useState } from 'react';
import { type ModuleKind, searchHowManyMore, type WholeTake } from '../../src/index.ts';
import { voltageName } from '../panels/figures.ts';
import { moreWords } from './power-words.ts';
import { useSearch } from './use-search.ts';

const drawsAny = ({ draws }: ModuleKind): boolean => Object.values(draws).some((ma) => ma !== null && ma > 0);

/** The modules at which more of a kind could draw: something that it draws arrives there. Those it could be linked to first. */
function hostsFor({ places, supplyNet }: WholeTake, { draws, headers }: ModuleKind) {
  const buses = new Set(headers.map(({ bus }) => bus));
  const reached = places.modules.filter((module) =>
    Object.keys(draws).some((line) => supplyNet.reaches(module, line)),
  );
  const isLinked = (module: (typeof reached)[number]): boolean =>
    module.headers.some(({ bus, role }) => role === 'host' && buses.has(bus.bus.id));
  return [...reached.filter(isLinked), ...reached.filter((module) => !isLinked(module))];
}

function mostPlaced({ take }: WholeTake, kinds: readonly ModuleKind[]): ModuleKind | undefined {
  const placed = (kind: ModuleKind): number =>
    take.modules.filter((module) => module.kind === kind.id).length;
  return kinds.toSorted((a, b) => placed(b) - placed(a))[0];
}

interface AnswerProps {
  readonly take: WholeTake;
  readonly kind: ModuleKind;
  readonly at: string;
}

function Answer({ take, kind, at }: AnswerProps) {
  const found = useSearch(useMemo(() => () => searchHowManyMore(take, at, kind), [take, at, kind]));
  const unknown = Object.entries(kind.draws).flatMap(([line, ma]) =>
    ma === null ? [voltageName(line)] : [],
  );
  return (
    <p role="status">
      {found ? <b>{moreWords(kind.name, found)}</b> : 'Working it out…'}
      {unknown.length > 0 && ` What it draws on ${unknown.join(' and ')} is unknown and counts for nothing.`}
    </p>
  );
}

/** How many more of a kind can be fed from where a module stands, and what breaks first. */
export function HowManyMore({ take }: { readonly take: WholeTake }) {
  const kinds = take.kit.kit.modules.filter(drawsAny);
  const [chosenKind, chooseKind] = useState('');
  const [chosenAt, chooseAt] = useState('');
  const kind = kinds.find(({ id }) => id === chosenKind) ?? mostPlaced(take, kinds);
  const hosts = kind ? hostsFor(take, kind) : [];
  const at = hosts.find(({ id }) => id === chosenAt) ?? hosts[0];
  return (
    <section className="how-many" aria-label="How many more">
      <h3>How many more</h3>
      {!kind && <p className="aside">No kind in the stock is known to draw anything.</p>}
      {kind && (
        <div className="choices">
          <label>
            <small>of</small>
            <select
              className="field"
              aria-label="Of which kind"
              value={kind.id}
              onChange={(event) => chooseKind(event.currentTarget.value)}
            >
              {kinds.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          {at && (
            <label>
              <small>drawing at</small>
              <select
                className="field"
                aria-label="Drawing at which module"
                value={at.id}
                onChange={(event) => chooseAt(event.currentTarget.value)}
              >
                {hosts.map(({ id, name }) => (
                  <option key={id} value={id}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          )}
        </div>
      )}
      {kind && at && <Answer take={take} kind={kind} at={at.id} />}
      {kind && !at && <p className="aside">Nothing that it draws arrives at any module yet.</p>}
      <p className="aside">As if they drew through the headers of that module; ribbon to them is left out.</p>
    </section>
  );
}
