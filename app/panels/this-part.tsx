import type { Module, Ribbon } from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { copy } from '../actions/copy.ts';
import { duplicate } from '../actions/duplicate.ts';
import { pin } from '../actions/pin.ts';
import { remove } from '../actions/remove.ts';
import { selectJoined } from '../actions/select-joined.ts';
import { swap } from '../actions/swap.ts';
import { useAnalysis, useEditor, useMoving, useSession, useTake } from '../hooks.ts';
import { boardsIn, modulesIn, ribbonsIn, rowsIn } from '../store/selection.ts';
import { ActionButton } from './action-button.tsx';
import { BoardFields } from './case/board-fields.tsx';
import { RowFields } from './case/row-fields.tsx';
import { figure, parseHp } from './figures.ts';
import { TextField } from './text-field.tsx';

function ModulePart({ module }: { readonly module: Module }) {
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

function RibbonPart({ ribbon }: { readonly ribbon: Ribbon }) {
  const editor = useEditor();
  const take = useTake();
  const { kit } = useAnalysis().derived;
  const facts = kit.ribbons.get(ribbon.kind);
  if (!facts) return null;
  const seated = new Set(ribbon.seats.map(({ connector }) => connector)).size;
  const turnOver = () =>
    perform(editor, {
      type: 'turn-ribbon',
      take: take.id,
      ribbon: ribbon.id,
      seats: facts.symmetric ? 'mirror' : 'keep',
    });
  return (
    <>
      <h2>{ribbon.label ?? ribbon.id}</h2>
      <p className="kind">
        {facts.kind.name} · {seated} of {facts.connectors.length} connectors seated
        {facts.flat && ` · stripe ${ribbon.stripe ?? 'down'}`}
      </p>
      <div className="deeds">
        {facts.flat && (
          <button type="button" className="quiet label" onClick={turnOver}>
            Turn by 180°
          </button>
        )}
        <ActionButton action={selectJoined} shows="both" />
        <ActionButton action={remove} shows="both" />
      </div>
    </>
  );
}

function SeveralParts({ count }: { readonly count: number }) {
  return (
    <>
      <h2>{count} selected</h2>
      <div className="deeds">
        <ActionButton action={pin} shows="both" />
        <ActionButton action={swap} shows="both" />
        <ActionButton action={selectJoined} shows="both" />
        <ActionButton action={copy} shows="both" />
        <ActionButton action={duplicate} shows="both" />
        <ActionButton action={remove} shows="both" />
      </div>
    </>
  );
}

/** What is selected, by name and number. */
export function ThisPart({ hint }: { readonly hint?: string }) {
  const selection = useSession((session) => session.selection);
  const take = useTake();
  const modules = modulesIn(take, selection);
  const ribbons = ribbonsIn(take, selection);
  const boards = boardsIn(take, selection);
  const rows = rowsIn(take, selection);
  const count = modules.length + ribbons.length + boards.length + rows.length;
  const [module] = modules;
  const [ribbon] = ribbons;
  const [board] = boards;
  const [row] = rows;
  if (count === 0) return hint ? <p className="hint">{hint}</p> : null;
  return (
    <section className="part" aria-label="This part">
      {count > 1 && <SeveralParts count={count} />}
      {count === 1 && module && <ModulePart key={module.id} module={module} />}
      {count === 1 && board && <BoardFields key={board.id} board={board} />}
      {count === 1 && row && <RowFields key={row.id} row={row} />}
      {count === 1 && ribbon && <RibbonPart ribbon={ribbon} />}
    </section>
  );
}
