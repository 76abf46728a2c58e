import { applyEdit, type Edit } from '../../src/index.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { Icon } from '../panels/icon.tsx';

interface Props {
  readonly title: string;
  /** What is there already and can be taken out of the kit; absent: it is about to be made. */
  readonly there?: {
    readonly name: string;
    readonly removal: Edit;
    /** Where it can be had twice. */
    readonly onClone?: () => void;
    readonly onGone: () => void;
  };
}

/** What is being edited, and what can be done with all of it; where it cannot be removed, why. */
export function EditorHead({ title, there }: Props) {
  const { layouts, session } = useEditor();
  const layout = useLayout((present) => present);
  const removed = there && applyEdit(layout, there.removal);
  const remove = (): void => {
    if (!there || !removed?.ok || !layouts.run(there.removal).ok) return;
    session.setState({ spoken: `${there.name} is removed.` });
    there.onGone();
  };
  return (
    <>
      <div className="head">
        <h3>{title}</h3>
        {there && (
          <div className="deeds">
            {there.onClone && (
              <button type="button" className="quiet" onClick={there.onClone}>
                <Icon name="duplicate" />
                Clone
              </button>
            )}
            <button type="button" className="quiet" aria-disabled={!removed?.ok} onClick={remove}>
              <Icon name="remove" />
              Remove
            </button>
          </div>
        )}
      </div>
      {removed && !removed.ok && <p className="aside">{removed.error.message}.</p>}
    </>
  );
}
