import { copyOfKind, type Edit, type Kit, type ModuleKind, type RibbonKind } from '../../src/index.ts';
import type { Editor } from '../editor.ts';
import type { KindDesk } from '../store/session.ts';
import { perform } from './action.ts';

/** A kind in stock, as the tray names it. */
export interface InStock {
  readonly sort: KindDesk['sort'];
  readonly kind: string;
}

export const moduleKindIn = ({ modules }: Kit, { sort, kind }: KindDesk): ModuleKind | undefined =>
  sort === 'module' ? modules.find(({ id }) => id === kind) : undefined;

export const ribbonKindIn = ({ ribbons }: Kit, { sort, kind }: KindDesk): RibbonKind | undefined =>
  sort === 'module' ? undefined : ribbons.find(({ id }) => id === kind);

/** Opens the form for a kind. */
export const changeKind = ({ session }: Editor, { sort, kind }: InStock): void =>
  session.setState({ kindDesk: { sort, kind } });

/** Adds a copy right behind the kind; gives its name. */
export function duplicateKind(editor: Editor, inStock: InStock): string | undefined {
  const { kit } = editor.layouts.layout();
  const module = moduleKindIn(kit, inStock);
  const ribbon = ribbonKindIn(kit, inStock);
  const after = inStock.kind;
  if (module) {
    const kind = copyOfKind(kit.modules, module);
    perform(editor, { type: 'add-module-kind', kind, after });
    return kind.name;
  }
  if (!ribbon) return undefined;
  const kind = copyOfKind(kit.ribbons, ribbon);
  perform(editor, { type: 'add-ribbon-kind', kind, after });
  return kind.name;
}

export const removalOf = ({ sort, kind }: InStock): Edit =>
  sort === 'module' ? { type: 'remove-module-kind', kind } : { type: 'remove-ribbon-kind', kind };
