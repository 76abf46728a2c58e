import { useEffect, useRef, useState } from 'react';
import {
  type FaultTest,
  linesAt,
  type Observation,
  type PlacedModule,
  type Search,
  type Suspect,
  type WholeTake,
} from '../../src/index.ts';
import { remove } from '../actions/remove.ts';
import { useSession } from '../hooks.ts';
import { PrintedKeys } from '../panels/printed-keys.tsx';
import { modulesIn } from '../store/selection.ts';
import type { Answer, FaultDeskStore } from './fault-desk.ts';
import { lineName, listWords, seenWords, suspectWords, testWords } from './fault-words.ts';

/** What can be said of a module at first sight. */
const WORKS = 'works';
const DEAD = 'dead';

function observationOf(module: PlacedModule, what: string): Observation {
  if (what === WORKS || what === DEAD) return { test: { type: 'look', module }, isThere: what === WORKS };
  return { test: { type: 'measure', at: module, line: what }, isThere: false };
}

/** What is wrong at which module; the one that is selected on the drawing is taken. */
function SymptomForm({
  take,
  onSee,
}: {
  readonly take: WholeTake;
  readonly onSee: (seen: Observation) => void;
}) {
  const { modules } = take.places;
  const selected = useSession(({ selection }) => modulesIn(take.take, selection)[0]?.id);
  const [chosen, setChosen] = useState(selected ?? modules[0]?.id ?? '');
  const [what, setWhat] = useState(DEAD);
  useEffect(() => {
    if (selected !== undefined) setChosen(selected);
  }, [selected]);
  const module = modules.find(({ id }) => id === chosen) ?? modules[0];
  if (!module) return <p>No module stands on the rails yet.</p>;
  const lines = linesAt(module, take);
  const told = what === WORKS || what === DEAD || lines.includes(what) ? what : DEAD;
  return (
    <form
      className="symptom-form"
      onSubmit={(event) => {
        event.preventDefault();
        onSee(observationOf(module, told));
      }}
    >
      <label className="measure">
        <small>Module; or select it on the drawing</small>
        <select
          className="field"
          aria-label="Module"
          value={module.id}
          onChange={(event) => setChosen(event.currentTarget.value)}
        >
          {modules.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label className="measure">
        <small>How it is</small>
        <select
          className="field"
          aria-label="How it is"
          value={told}
          onChange={(event) => setWhat(event.currentTarget.value)}
        >
          <option value={DEAD}>is dead</option>
          {lines.map((line) => (
            <option key={line} value={line}>
              has no {lineName(line)}
            </option>
          ))}
          <option value={WORKS}>works</option>
        </select>
      </label>
      <button type="submit" className="plain">
        Add
      </button>
    </form>
  );
}

const MOST_LISTED = 40;

function Suspects({ suspects, isOpen }: { readonly suspects: readonly Suspect[]; readonly isOpen: boolean }) {
  const listed = suspects.slice(0, MOST_LISTED).map(suspectWords);
  const items = (
    <ul className="suspects">
      {listed.map(({ place, what }) => (
        <li key={`${place} ${what}`}>
          <b>{place}</b>: {what}
        </li>
      ))}
      {suspects.length > MOST_LISTED && <li>and {suspects.length - MOST_LISTED} more</li>}
    </ul>
  );
  if (isOpen) return items;
  return (
    <details>
      <summary>Which they are</summary>
      {items}
    </details>
  );
}

interface StepProps {
  readonly take: WholeTake;
  readonly test: FaultTest;
  readonly number: number;
  readonly mayBeShort: boolean;
  readonly onAnswer: (isThere: boolean | null) => void;
}

/** One step at the bench, with big buttons for its answers. */
function Step({ take, test, number, mayBeShort, onAnswer }: StepProps) {
  const { unplug, question, yes, no } = testWords(test, take);
  return (
    <section className="step" aria-label={`Step ${number}`}>
      <h3>Step {number}</h3>
      {unplug && (
        <>
          <p className="caution">Switch off, unplug the supply, wait half a minute.</p>
          <p>{unplug}</p>
        </>
      )}
      <p>
        <b>{question}</b>
      </p>
      <p className="caution">
        Extra-low voltage only, and only here; the probe must not bridge two pins.
        {unplug && ' Then off and unplugged again, and plug it back: stripe, pin 1, every pin seated.'}
        {mayBeShort && ' If anything smells or gets warm, off at once.'}
      </p>
      <div className="fault-answers">
        <button type="button" className="do" onClick={() => onAnswer(true)}>
          {yes}
        </button>
        <button type="button" className="do" onClick={() => onAnswer(false)}>
          {no}
        </button>
        <button type="button" className="plain" onClick={() => onAnswer(null)}>
          I cannot tell
        </button>
      </div>
    </section>
  );
}

/** What to do with what is left. */
function advice(suspects: readonly Suspect[]): string {
  const ribbons = suspects.map((suspect) => {
    if (suspect.type === 'short') return suspect.place.type === 'ribbon' ? suspect.place.ribbon : undefined;
    if (suspect.type === 'inside') return undefined;
    const { link } = suspect;
    if (link.type === 'seat') return link.joint.ribbon;
    return link.type === 'span' ? link.ribbon : undefined;
  });
  const [ribbon] = ribbons;
  if (ribbon && ribbons.every((each) => each === ribbon))
    return `Unplugged from everything, look at ${ribbon.name} and its seats, ring it out from end to end, or put one that is known to be good in its place.`;
  if (suspects.every(({ type }) => type === 'inside'))
    return 'All that it needs arrives at its header. Leave it out and ask its maker, or a bench.';
  if (suspects.every(({ type }) => type === 'short'))
    return 'Leave it unplugged. Look for a crushed wire, a whisker or a screw across pins before power comes back.';
  return 'Look at each of them with everything unplugged. Inside a mains supply a qualified person looks.';
}

interface EndProps {
  readonly suspects: readonly Suspect[];
  readonly hasSkipped: boolean;
  readonly onShow: (suspect: Suspect) => void;
}

function End({ suspects, hasSkipped, onShow }: EndProps) {
  const [only, ...others] = suspects;
  if (!only)
    return (
      <section className="step" aria-label="The end of the search">
        <h3>No single fault explains all this</h3>
        <p>
          Two things may be broken, or an answer was mistaken. Take the last answer back, or begin again with
          one symptom.
        </p>
      </section>
    );
  return (
    <section className="step" aria-label="The end of the search">
      <h3>{others.length === 0 ? 'It is this' : 'These cannot be told apart by measuring'}</h3>
      {others.length > 0 && hasSkipped && <p>At least not without the steps that could not be done.</p>}
      <Suspects suspects={suspects} isOpen />
      <p>{advice(suspects)}</p>
      {only.type !== 'inside' && (
        <button type="button" className="plain" onClick={() => onShow(only)}>
          Show what {others.length > 0 ? 'the first' : 'it'} would do
        </button>
      )}
    </section>
  );
}

interface Props {
  readonly take: WholeTake;
  readonly desk: FaultDeskStore;
  readonly symptoms: readonly Observation[];
  readonly answers: readonly Answer[];
  readonly search: Search | undefined;
  readonly onClear: () => void;
}

/** From what is wrong to what is broken: each step halves what it can be. */
export function FindPanel({ take, desk, symptoms, answers, search, onClear }: Props) {
  const guide = useRef<HTMLDivElement>(null);
  const isWrong = symptoms.some(({ isThere }) => !isThere);
  const suspects = search?.suspects ?? [];
  const undrawn = search?.undrawn ?? [];
  // The next step takes the keys where the last one was answered.
  const look = (): void => {
    guide.current?.focus({ preventScroll: true });
    requestAnimationFrame(() => guide.current?.scrollIntoView({ block: 'start' }));
  };
  const answer = (test: FaultTest, isThere: boolean | null): void => {
    desk.setState({ answers: [...answers, { test, isThere }] });
    look();
  };
  const form = (
    <SymptomForm
      take={take}
      onSee={(seen) => {
        desk.setState({ symptoms: [...symptoms, seen], answers: [] });
        look();
      }}
    />
  );
  return (
    <>
      {symptoms.length === 0 ? (
        form
      ) : (
        <details>
          <summary>Add what else is wrong, or what works</summary>
          {form}
        </details>
      )}
      {symptoms.length > 0 && (
        <ul className="told">
          {symptoms.map(({ test, isThere }, i) => {
            const words = seenWords(test, isThere);
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: the same thing may be said twice, and rows hold nothing
              <li key={i}>
                <span>{words}</span>
                <button
                  type="button"
                  className="quiet"
                  aria-label={`Forget: ${words}`}
                  onClick={() => {
                    desk.setState({ symptoms: symptoms.filter((_, k) => k !== i), answers: [] });
                    guide.current?.closest<HTMLElement>('.faults')?.focus({ preventScroll: true });
                  }}
                >
                  Forget
                </button>
              </li>
            );
          })}
        </ul>
      )}
      <div ref={guide} tabIndex={-1} className="guide">
        {undrawn.length > 0 && (
          <p className="found">
            The drawing brings no such thing there:{' '}
            {listWords(undrawn.map(({ test }) => seenWords(test, false)))}. See the notes first.
          </p>
        )}
        {isWrong && undrawn.length < symptoms.length && (
          <>
            <p role="status" className="found">
              <b>
                {suspects.length} {suspects.length === 1 ? 'thing' : 'things'}
              </b>{' '}
              could be it, if one thing alone is broken.
              {answers.length === 0 &&
                symptoms.every(({ isThere }) => !isThere) &&
                ' Add what still works: it rules out most.'}
            </p>
            {search?.next ? (
              <>
                <Suspects suspects={suspects} isOpen={false} />
                <Step
                  take={take}
                  test={search.next}
                  number={answers.filter(({ isThere }) => isThere !== null).length + 1}
                  mayBeShort={suspects.some(({ type }) => type === 'short')}
                  onAnswer={(isThere) => search.next && answer(search.next, isThere)}
                />
              </>
            ) : (
              <End
                suspects={suspects}
                hasSkipped={answers.some(({ isThere }) => isThere === null)}
                onShow={(suspect) => desk.setState({ way: 'break', broken: [suspect] })}
              />
            )}
          </>
        )}
        {answers.length > 0 && (
          <>
            <h3>So far</h3>
            <ol className="so-far">
              {answers.map(({ test, isThere }, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: answers are only ever added and taken off at the end
                <li key={i}>{isThere === null ? 'left out' : seenWords(test, isThere)}</li>
              ))}
            </ol>
            <button
              type="button"
              className="plain"
              onClick={() => {
                desk.setState({ answers: answers.slice(0, -1) });
                look();
              }}
            >
              Take the last answer back
            </button>
          </>
        )}
      </div>
      {symptoms.length > 0 ? (
        <button type="button" className="plain" onClick={onClear}>
          Begin again <PrintedKeys of={remove} />
        </button>
      ) : (
        <p className="aside">
          Say what is wrong, and what is known to work; each step then halves what it can be. Smell or heat:
          off at once, and no search with power on.
        </p>
      )}
      <p className="aside">
        The search knows the drawing, and takes it that the case is wired so. Measure at extra-low voltage
        only; mains parts are for a qualified person.
      </p>
    </>
  );
}
