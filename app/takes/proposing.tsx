import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { Progress } from '../../src/planner.ts';
import { useEditor, useLayout, useTake } from '../hooks.ts';
import { cancelProposal, propose, type Told, takesDeskOf } from './takes-desk.ts';

const STEPS: Readonly<Record<Progress['step'], (progress: Progress) => string>> = {
  placing: ({ found, of }) => `Trying places${found ? `, ${found}${of ? ` of ${of}` : ''}` : ''}`,
  looking: ({ found }) => `Looking for ways to lay ribbons${found ? `: ${found} so far` : ''}`,
  linking: ({ found }) => `Choosing among ${found ?? 'all'} ways`,
  feeding: () => 'Choosing where each group is fed',
};

/** What a proposal comes to, what it costs and changes, and why. */
function Outcome({ told, nameOf }: { readonly told: Told; readonly nameOf: (module: string) => string }) {
  const editor = useEditor();
  const from = useLayout((layout) => layout.takes.find(({ id }) => id === told.from)?.name);
  const { score, proof, isSame, unlinked, against, changes } = told;
  const card = useRef<HTMLElement>(null);
  // Whoever waited with the keyboard goes on reading here.
  useEffect(() => {
    if (takesDeskOf(editor).getState().told === told && document.activeElement === document.body)
      card.current?.focus();
  }, [editor, told]);
  return (
    <section ref={card} className="proposal" tabIndex={-1} aria-label="What was found">
      <p>
        <strong>{isSame ? 'Nothing better was found: it stays as it is.' : `${score}.`}</strong>
      </p>
      <p>{proof}</p>
      {against.length > 0 && (
        <dl className="against" aria-label={from ? `Against “${from}”` : 'Against the take before'}>
          {against.map(({ what, mine, theirs }) => (
            <div key={what}>
              <dt>{what}</dt>
              <dd>
                {mine} <span aria-hidden="true">→</span> <span className="unseen">becomes</span>{' '}
                <b>{theirs}</b>
              </dd>
            </div>
          ))}
        </dl>
      )}
      {unlinked.length > 0 && (
        <ul className="told">
          {unlinked.map(({ module, why }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a module may be told of twice
            <li key={i}>
              <b>{nameOf(module)}</b> {why}
            </li>
          ))}
        </ul>
      )}
      {changes.length > 0 && (
        <details>
          <summary>
            What changes, and why <small>{changes.length}</small>
          </summary>
          <ul className="told">
            {changes.map(({ what, why }) => (
              <li key={what}>
                <b>{what}:</b> {why}.
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

/** The button that was pressed has gone: whoever pressed it by key stays beside it. */
const focusIfLost = (button: HTMLButtonElement | null): void => {
  if (document.activeElement === document.body) button?.focus();
};

/** What the program proposes in place of the take shown. */
export function Proposing() {
  const editor = useEditor();
  const take = useTake();
  const { running, told } = useStore(takesDeskOf(editor));
  const nameOf = (id: string): string => {
    const module = take.modules.find((each) => each.id === id);
    const { kit } = editor.layouts.layout();
    return module?.label ?? kit.modules.find(({ id: kind }) => kind === module?.kind)?.name ?? id;
  };
  const progress = running?.progress;
  return (
    <section aria-label="Propose" aria-busy={running !== null}>
      <h3>Propose</h3>
      {told && told.take === take.id && <Outcome told={told} nameOf={nameOf} />}
      {running ? (
        <>
          <p role="status">{progress ? STEPS[progress.step](progress) : 'Starting'}…</p>
          <progress
            aria-label="A proposal is being looked for"
            {...(progress?.step === 'placing' &&
              progress.of && { value: (progress.found ?? 1) - 1, max: progress.of })}
          />
          <div className="deeds">
            <button ref={focusIfLost} type="button" onClick={() => cancelProposal(editor)}>
              Cancel
            </button>
          </div>
        </>
      ) : (
        <>
          <p className="remark">
            It comes as a take of its own beside “{take.name}”. Locked ribbons and pinned modules stay.
          </p>
          <div className="deeds">
            <button type="button" onClick={() => propose(editor, false)}>
              Propose wiring
            </button>
            <button type="button" onClick={() => propose(editor, true)}>
              Propose an arrangement
            </button>
          </div>
        </>
      )}
    </section>
  );
}
