import type { Module } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { copy } from '../actions/copy.ts';
import { duplicate } from '../actions/duplicate.ts';
import { pin } from '../actions/pin.ts';
import { remove } from '../actions/remove.ts';
import { selectJoined } from '../actions/select-joined.ts';
import { useAnalysis, useEditor, useMoving, useTake } from '../hooks.ts';
import { ActionButton } from './action-button.tsx';
import { figure, parseHp } from './figures.ts';
import { TextField } from './text-field.tsx';

/** A module: its name, its place, and what is done with it. */
export function ModulePart({ module }: { readonly module: Module }) {
  const editor = useEditor();
  const take = useTake();
  const { derived } = useAnalysis();
  const placed = derived.places.moduleById.get(module.id);
  const atHp =
    useMoving((moving) => moving?.derived.places.moduleById.get(module.id)?.module.atHp) ?? module.atHp;
  if (!placed) return null;
  const { kind } = placed.facts;
  const move = (row: string, hp: number) =>
    perform(editor, { type: 'move-modules', take: take.id, moves: [{ module: module.id, row, atHp: hp }] });
  const moveTo = (text: string) => {
    const hp = parseHp(text);
    if (hp === null) editor.session.setState({ banner: 'A place on the rails must be a number.' });
    else move(module.row, hp);
  };
  return (
    <>
      <TextField
        className="name"
        label="Name"
        value={placed.name}
        onCommit={(label) =>
          perform(editor, { type: 'rename-module', take: take.id, module: module.id, label })
        }
      />
      <p className="kind">
        {kind.name} · {figure(kind.widthHp)} HP
        {kind.depthMm !== undefined && ` · ${figure(kind.depthMm)} mm deep`}
      </p>
      <p className="place">
        at{' '}
        <TextField
          className="hp"
          label="Place, HP from the left end seen from the front"
          decimal
          value={figure(atHp)}
          onCommit={moveTo}
        />{' '}
        HP in{' '}
        <select
          className="field"
          aria-label="Row"
          value={module.row}
          onChange={(event) => move(event.currentTarget.value, module.atHp)}
        >
          {take.rows.map(({ id, name }, i) => (
            <option key={id} value={id}>
              {name ?? `Row ${i + 1}`}
            </option>
          ))}
        </select>
      </p>
      <div className="deeds">
        <ActionButton action={pin} shows="both" />
        <ActionButton action={selectJoined} shows="both" />
        <ActionButton action={copy} shows="both" />
        <ActionButton action={duplicate} shows="both" />
        <ActionButton action={remove} shows="both" />
      </div>
    </>
  );
}
