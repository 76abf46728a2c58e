import type { Kit, ModuleKind, RibbonKind } from '../../src/index.ts';
import { allOf, type MyStock, type Offer, type StockDeed } from '../../src/stock.ts';
import type { Editor } from '../editor.ts';
import { counted } from './kind-words.ts';
import type { StockKeeper } from './my-stock.ts';

/** Counts what I own of a kind in my stock; nothing where nobody counts it. */
export function countDeed(
  { layout: { kit } }: MyStock,
  { sort, kept }: Offer,
  owned: number | undefined,
): StockDeed | null {
  if (!kept || sort === 'bus') return null;
  const recount = <K extends ModuleKind | RibbonKind>(kinds: readonly K[]): readonly K[] =>
    kinds.map((kind) => {
      if (kind.id !== kept.id) return kind;
      const { owned: _, ...rest } = kind;
      return { ...rest, ...(owned !== undefined && { owned }) } as K;
    });
  const from: Kit =
    sort === 'module' ? { ...kit, modules: recount(kit.modules) } : { ...kit, ribbons: recount(kit.ribbons) };
  return { do: 'keep', from, kinds: [{ sort, id: kept.id, instead: kept.id }] };
}

/** My stock as a file; answers with what went wrong. */
export async function saveStock({ platform }: Editor, { layout }: MyStock): Promise<string> {
  const [{ writeLayout }, files] = await Promise.all([import('../../src/document.ts'), platform.files()]);
  const saved = await files.save(layout.title, writeLayout(layout));
  return saved.ok ? '' : saved.error;
}

/** Brings the kinds of a file into my stock, beside what is there; answers with what came of it. */
export async function bringIntoStock({ platform }: Editor, keeper: StockKeeper): Promise<string> {
  const [{ openLayout, describeFailure }, files] = await Promise.all([
    import('../../src/document.ts'),
    platform.files(),
  ]);
  const picked = await files.pick();
  if (!picked.ok) return picked.error;
  if (picked.value === null) return '';
  const opened = openLayout(picked.value);
  if (!opened.ok) return `Not brought back: ${describeFailure(opened.error)}.`;
  const from = opened.value.kit;
  const done = await keeper.change({ do: 'keep', from, kinds: allOf(from) });
  if (!done.ok) return `Not brought back: ${done.error}.`;
  const { before, after } = done.value;
  const came = allOf(after.layout.kit).length - allOf(before.layout.kit).length;
  return `${counted(came, 'kind')} came into my stock; nothing that was there has changed.`;
}
