import { type FormEvent, Fragment, type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { Edit } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import type { Choice } from './choice.ts';
import type { Preview } from './preview.ts';

interface Props {
  readonly choice: Choice;
  readonly onDone: (edit: Edit, said: (editor: Editor) => string) => void;
  readonly onLeave: () => void;
  readonly preview: Preview;
}

/** What is typed: shown on the drawing meanwhile, Enter does it. */
export function ChoiceForm({ choice, onDone, onLeave, preview }: Props) {
  const form = useRef<HTMLFormElement>(null);
  const [wrong, setWrong] = useState('');
  useEffect(() => {
    const first = form.current?.querySelector<HTMLInputElement>('input, select');
    first?.focus();
    if (first instanceof HTMLInputElement) first.select();
  }, []);
  const { deed } = choice;
  if (deed.type !== 'fields') return null;
  const read = () =>
    deed.edit(
      Object.fromEntries(
        [...new FormData(form.current ?? undefined)].map(([key, value]) => [key, String(value)]),
      ),
    );
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const edit = read();
    if (!edit.ok) setWrong(edit.error);
    else onDone(edit.value, deed.said);
  };
  const change = (): void => {
    const edit = read();
    setWrong('');
    preview.show(edit.ok ? edit.value : null);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    event.stopPropagation();
    if (event.key !== 'Escape') return;
    event.preventDefault();
    onLeave();
  };
  return (
    <div role="dialog" aria-label={choice.label} tabIndex={-1} onKeyDown={onKeyDown}>
      <form ref={form} onSubmit={submit} onChange={change}>
        {deed.fields.map(({ name, label, value, decimal, options }) => (
          <Fragment key={name}>
            <label htmlFor={`choice-${name}`}>{label}</label>
            {options ? (
              <select id={`choice-${name}`} className="field" name={name} defaultValue={value}>
                {options.map((option) => (
                  <option key={option.value} value={option.value}>
                    {option.label}
                  </option>
                ))}
              </select>
            ) : (
              <input
                id={`choice-${name}`}
                className="field"
                name={name}
                defaultValue={value}
                inputMode={decimal ? 'decimal' : 'text'}
                autoComplete="off"
                spellCheck={false}
              />
            )}
          </Fragment>
        ))}
        <p role="alert" className="wrong">
          {wrong}
        </p>
        <p className="answers">
          <button type="button" className="plain" onClick={onLeave}>
            Back
          </button>
          <button type="submit" className="do">
            Done
          </button>
        </p>
      </form>
    </div>
  );
}
