import { useEffect, useRef } from 'react';
import { perform } from '../actions/action.ts';
import { useEditor, useSession } from '../hooks.ts';
import '../style/case.css';

/** Says what an edit would lose, and does it or not. Escape keeps everything. */
export function Asked() {
  const editor = useEditor();
  const asked = useSession((session) => session.asked);
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => ref.current?.showModal(), []);
  if (!asked) return null;
  const { edit, question, lines } = asked;
  const leave = (): void => editor.session.setState({ asked: null });
  const go = (): void => {
    ref.current?.close();
    perform(editor, edit);
  };
  return (
    <dialog
      ref={ref}
      className="asked"
      aria-labelledby="asked-question"
      onClose={leave}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <h2 id="asked-question">{question}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p className="aside">One undo brings all of it back.</p>
      <p className="answers">
        <button type="button" className="plain" onClick={() => ref.current?.close()}>
          Keep
        </button>
        <button type="button" className="do" onClick={go}>
          {question.startsWith('Remove') ? 'Remove' : 'Change'}
        </button>
      </p>
    </dialog>
  );
}
