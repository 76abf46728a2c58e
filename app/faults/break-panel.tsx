import { useEffect, useMemo, useRef, useState } from 'react';
import type { Readings, WholeTake } from '../../src/index.ts';
import { remove } from '../actions/remove.ts';
import { useSession } from '../hooks.ts';
import { PrintedKeys } from '../panels/printed-keys.tsx';
import { type BreakPlace, breakThings } from './break-things.ts';
import type { Breakage } from './breakage.ts';
import type { FaultDeskStore } from './fault-desk.ts';
import { breakageWords } from './fault-words.ts';
import { ReadingsList } from './readings-list.tsx';

interface Picked {
  readonly thing: string;
  readonly place: number;
  readonly way: number;
}

const FIRST = { place: 0, way: 0 } as const;

interface ChoiceProps {
  readonly label: string;
  readonly value: number;
  readonly options: readonly { readonly label: string }[];
  readonly onChoose: (value: number) => void;
}

const Choice = ({ label, value, options, onChoose }: ChoiceProps) => (
  <label className="measure">
    <small>{label}</small>
    <select
      className="field"
      aria-label={label}
      value={value}
      onChange={(event) => onChoose(Number(event.currentTarget.value))}
    >
      {options.map((option, i) => (
        <option key={option.label} value={i}>
          {option.label}
        </option>
      ))}
    </select>
  </label>
);

/** The place of a chosen connector among those of its ribbon. */
const placeOfConnector = (places: readonly BreakPlace[], connector: number): number =>
  Math.max(
    0,
    places.findIndex(({ label }) => label.startsWith(`Connector ${connector + 1} `)),
  );

/** What to break, and where: a thing by list or as selected on the drawing, a place on it, and what happens there. */
function BreakForm({
  take,
  onBreak,
}: {
  readonly take: WholeTake;
  readonly onBreak: (breakage: Breakage) => void;
}) {
  const things = useMemo(() => breakThings(take), [take]);
  const [picked, setPicked] = useState<Picked>({ thing: things[0]?.key ?? '', ...FIRST });
  const selection = useSession((session) => session.selection);
  const connector = useSession((session) => session.connector);
  useEffect(() => {
    const [key, ...others] = selection;
    const thing = others.length === 0 ? things.find((each) => each.key === key) : undefined;
    if (!thing) return;
    const isOn = connector && thing.key === `ribbon:${connector.ribbon}`;
    const place = isOn ? placeOfConnector(thing.places(), connector.connector) : 0;
    setPicked({ thing: thing.key, place, way: 0 });
  }, [things, selection, connector]);

  const thing = things.find(({ key }) => key === picked.thing) ?? things[0];
  if (!thing) return <p>Nothing in this take is wired yet, so nothing can break.</p>;
  const places = thing.places();
  const place = places[picked.place] ?? places[0];
  const way = place?.ways[picked.way] ?? place?.ways[0];
  return (
    <form
      className="break-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (way) onBreak(way.breakage);
      }}
    >
      <label className="measure">
        <small>Where; or select it on the drawing</small>
        <select
          className="field"
          aria-label="Where"
          value={thing.key}
          onChange={(event) => setPicked({ thing: event.currentTarget.value, ...FIRST })}
        >
          {things.map(({ key, label }) => (
            <option key={key} value={key}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <Choice
        label="At"
        value={picked.place}
        options={places}
        onChoose={(at) => setPicked({ ...picked, place: at, way: 0 })}
      />
      <Choice
        label="What"
        value={picked.way}
        options={place?.ways ?? []}
        onChoose={(at) => setPicked({ ...picked, way: at })}
      />
      <button type="submit" className="do">
        Break it
      </button>
    </form>
  );
}

interface Props {
  readonly take: WholeTake;
  readonly desk: FaultDeskStore;
  readonly broken: readonly Breakage[];
  readonly readings: Readings | undefined;
  readonly onClear: () => void;
}

/** Something is broken on purpose, and what a meter would show is told. */
export function BreakPanel({ take, desk, broken, readings, onClear }: Props) {
  const results = useRef<HTMLDivElement>(null);
  const add = (breakage: Breakage): void => {
    desk.setState({ broken: [...broken, breakage] });
    requestAnimationFrame(() => results.current?.scrollIntoView({ block: 'start' }));
  };
  const mend = (at: number): void => {
    // The button goes with its row; the panel keeps the keys.
    results.current?.closest<HTMLElement>('.faults')?.focus({ preventScroll: true });
    desk.setState({ broken: broken.filter((_, i) => i !== at) });
  };
  return (
    <>
      <BreakForm take={take} onBreak={add} />
      {broken.length > 0 && (
        <div ref={results} className="results">
          <ul className="told">
            {broken.map((breakage, i) => {
              const { place, what } = breakageWords(breakage);
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: the same thing may be broken twice, and rows hold nothing
                <li key={i}>
                  <span>
                    <b>{place}</b>: {what}
                  </span>
                  <button
                    type="button"
                    className="quiet"
                    aria-label={`Mend ${place}: ${what}`}
                    onClick={() => mend(i)}
                  >
                    Mend
                  </button>
                </li>
              );
            })}
          </ul>
          <button type="button" className="plain" onClick={onClear}>
            Mend all <PrintedKeys of={remove} />
          </button>
          {readings && <ReadingsList readings={readings} />}
        </div>
      )}
      <p className="aside">
        Nothing of the layout changes. Estimated from nominal values, steady state; supply lines only, not
        audio or control. A short counts as a dead one, and its supply lets go at once: what heats up before,
        or how often it tries again, is not told.
      </p>
    </>
  );
}
