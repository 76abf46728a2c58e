import { duplicate } from '../actions/duplicate.ts';
import { pin } from '../actions/pin.ts';
import { remove } from '../actions/remove.ts';
import { swap } from '../actions/swap.ts';
import { useSession, useTake } from '../hooks.ts';
import { modulesIn, ribbonsIn } from '../store/selection.ts';
import { ActionButton } from './action-button.tsx';
import { ModulePart } from './module-part.tsx';
import { RibbonPart } from './ribbon-part.tsx';

function SeveralParts({ count }: { readonly count: number }) {
  return (
    <>
      <h2>{count} selected</h2>
      <div className="deeds">
        <ActionButton action={pin} shows="both" />
        <ActionButton action={swap} shows="both" />
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
  const count = modules.length + ribbons.length;
  const [module] = modules;
  const [ribbon] = ribbons;
  if (count === 0) return hint ? <p className="hint">{hint}</p> : null;
  return (
    <section className="part" aria-label="This part">
      {count > 1 && <SeveralParts count={count} />}
      {count === 1 && module && <ModulePart key={module.id} module={module} />}
      {count === 1 && ribbon && <RibbonPart ribbon={ribbon} />}
    </section>
  );
}
