import { copy } from '../actions/copy.ts';
import { duplicate } from '../actions/duplicate.ts';
import { measureRibbon } from '../actions/measure-ribbon.ts';
import { pin } from '../actions/pin.ts';
import { remove } from '../actions/remove.ts';
import { selectJoined } from '../actions/select-joined.ts';
import { swap } from '../actions/swap.ts';
import { useSession, useTake } from '../hooks.ts';
import { boardsIn, modulesIn, ribbonsIn, rowsIn } from '../store/selection.ts';
import { ActionButton } from './action-button.tsx';
import { BoardFields } from './case/board-fields.tsx';
import { RowFields } from './case/row-fields.tsx';
import { ModulePart } from './module-part.tsx';
import { RibbonPart } from './ribbon-part.tsx';

function SeveralParts({ count }: { readonly count: number }) {
  return (
    <>
      <h2>{count} selected</h2>
      <div className="deeds">
        <ActionButton action={pin} shows="both" />
        <ActionButton action={swap} shows="both" />
        <ActionButton action={selectJoined} shows="both" />
        <ActionButton action={measureRibbon} shows="both" />
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
