import { useStore } from 'zustand';
import type { Progress } from '../../src/planner.ts';
import { useEditor, useTake } from '../hooks.ts';
import { cancelProposal, propose, takesDeskOf } from './takes-desk.ts';

const STEPS: Readonly<Record<Progress['step'], (found: number | undefined) => string>> = {
  placing: (found) => `Trying places${found ? `, number ${found}` : ''}`,
  looking: (found) => `Looking for ways to lay ribbons${found ? `: ${found} so far` : ''}`,
  linking: (found) => `Choosing among ${found ?? 'all'} ways`,
  feeding: () => 'Choosing where each group is fed',
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
  return (
    <section aria-label="Propose" aria-busy={running !== null}>
      <h3>Propose</h3>
      {told && told.take === take.id && (
        <div className="proposal">
          <p>
            <strong>{told.isSame ? 'Nothing better was found: it stays as it is.' : `${told.score}.`}</strong>
          </p>
          <p>{told.proof}</p>
          {told.unlinked.length > 0 && (
            <ul className="told">
              {told.unlinked.map(({ module, why }, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a module may be told of twice
                <li key={i}>
                  <b>{nameOf(module)}</b> {why}
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
      {running ? (
        <>
          <p role="status">
            {running.progress ? STEPS[running.progress.step](running.progress.found) : 'Starting'}…
          </p>
          <progress aria-label="A proposal is being looked for" />
          <div className="deeds">
            <button type="button" onClick={() => cancelProposal(editor)}>
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
