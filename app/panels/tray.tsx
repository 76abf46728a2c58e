import { lazy, type ReactNode, Suspense, useMemo, useState } from 'react';
import { start } from '../actions/action.ts';
import { newLeadKind, newModuleKind, newRibbonKind } from '../actions/new-kind.ts';
import { type SelectionKey, selectionKey } from '../canvas/model.ts';
import { useAnalysis, useEditor, useLayout, useSession, useTake } from '../hooks.ts';
import type { MenuPlace } from '../kinds/kind-menu.tsx';
import { isLead } from '../store/leads.ts';
import type { TrayFilter } from '../store/session.ts';
import { figure } from './figures.ts';
import { Icon } from './icon.tsx';
import { ModuleDrawing } from './kind-drawing.tsx';

const FILTERS: readonly { readonly id: TrayFilter; readonly label: string }[] = [
  { id: 'modules', label: 'Modules' },
  { id: 'ribbons', label: 'Ribbons' },
  { id: 'leads', label: 'Leads' },
];

const NEW = { modules: newModuleKind, ribbons: newRibbonKind, leads: newLeadKind } as const;
const SORT = { modules: 'module', ribbons: 'ribbon', leads: 'lead' } as const;

/** The modules are shown first. */
const RibbonDrawing = lazy(async () => ({
  default: (await import('./ribbon-drawing.tsx')).RibbonDrawing,
}));
const KindMenu = lazy(async () => ({ default: (await import('../kinds/kind-menu.tsx')).KindMenu }));

const matches = (name: string, find: string): boolean =>
  name.toLowerCase().includes(find.trim().toLowerCase());

/** "1 of 2" placed and owned; how many are placed where it is not said how many there are. */
const countOf = (placed: number, owned: number | undefined): string =>
  owned === undefined ? `${placed} placed` : `${placed} of ${owned}`;

function useCounts(list: readonly { readonly kind: string }[]): ReadonlyMap<string, number> {
  return useMemo(() => {
    const counts = new Map<string, number>();
    for (const { kind } of list) counts.set(kind, (counts.get(kind) ?? 0) + 1);
    return counts;
  }, [list]);
}

interface CardProps {
  readonly inStock: SelectionKey;
  readonly name: string;
  /** Where it is dragged to. */
  readonly onto: string;
  readonly facts: string;
  readonly onMore: (opener: HTMLElement) => void;
  readonly children: ReactNode;
}

/** A kind to be dragged out, or tapped here and then there; `data-kind` tells the hand what it takes. */
function Card({ inStock, name, onto, facts, onMore, children }: CardProps) {
  const inHand = useSession((session) => session.inHand === inStock);
  return (
    <li
      onContextMenu={(event) => {
        event.preventDefault();
        const more = event.currentTarget.querySelector<HTMLElement>('.more');
        if (more) onMore(more);
      }}
    >
      <button
        type="button"
        className="card"
        aria-pressed={inHand}
        title={`Drag ${name} onto ${onto}, or tap here and then there`}
        data-kind={inStock}
      >
        {children}
        <b>{name}</b>
        <small>{facts}</small>
      </button>
      <button
        type="button"
        className="more"
        aria-haspopup="menu"
        aria-label={`Change or remove ${name}`}
        title="Change, duplicate, remove"
        onClick={(event) => onMore(event.currentTarget)}
      >
        <Icon name="more" />
      </button>
    </li>
  );
}

/** The stock: every kind, how many there are, and how many are in use. */
export function Tray() {
  const editor = useEditor();
  const { session } = editor;
  const kit = useLayout((layout) => layout.kit);
  const buses = useAnalysis().derived.kit.buses;
  const take = useTake();
  const filter = useSession(({ trayFilter }) => trayFilter);
  const find = useSession(({ trayFind }) => trayFind);
  const placed = useCounts(take.modules);
  const laid = useCounts(take.ribbons);
  const pinsOf = (bus: string): number => buses.get(bus)?.pins ?? 0;
  const ribbons = kit.ribbons.filter((kind) => isLead(kind, kit) === (filter === 'leads'));
  const [menu, setMenu] = useState<MenuPlace | null>(null);
  const kinds = (filter === 'modules' ? kit.modules : ribbons).filter(({ name }) => matches(name, find));
  const more =
    ({ id: kind, name }: { readonly id: string; readonly name: string }) =>
    (opener: HTMLElement) =>
      setMenu({ sort: SORT[filter], kind, name, opener });

  return (
    <section className="tray" aria-label="Stock">
      <div className="tray-nav">
        {FILTERS.map(({ id, label }) => (
          <button
            key={id}
            type="button"
            aria-pressed={id === filter}
            onClick={() => session.setState({ trayFilter: id })}
          >
            {label}
          </button>
        ))}
        <label className="find">
          <Icon name="search" />
          <input
            type="search"
            placeholder="Find in stock"
            aria-label="Find in stock"
            value={find}
            onChange={(event) => session.setState({ trayFind: event.currentTarget.value })}
          />
        </label>
      </div>
      <ul>
        {kinds.map((kind) =>
          'lay' in kind ? (
            <Card
              key={kind.id}
              inStock={selectionKey('ribbon', kind.id)}
              name={kind.name}
              onto="a header"
              onMore={more(kind)}
              facts={`${kind.connectors.length} connectors · ${countOf(laid.get(kind.id) ?? 0, kind.owned)}`}
            >
              <Suspense>
                <RibbonDrawing kind={kind} />
              </Suspense>
            </Card>
          ) : (
            <Card
              key={kind.id}
              inStock={selectionKey('module', kind.id)}
              name={kind.name}
              onto="the rails"
              onMore={more(kind)}
              facts={`${figure(kind.widthHp)} HP · ${countOf(placed.get(kind.id) ?? 0, kind.owned)}`}
            >
              <ModuleDrawing kind={kind} pinsOf={pinsOf} />
            </Card>
          ),
        )}
        {kinds.length === 0 && (
          <li className="none">{find ? 'Nothing of that name in stock.' : `No ${filter} in stock yet.`}</li>
        )}
      </ul>
      <button type="button" className="new-kind" onClick={() => start(editor, NEW[filter])}>
        <Icon name="plus" />
        {NEW[filter].label(editor)}
      </button>
      <Suspense>{menu && <KindMenu key={menu.kind} at={menu} onClose={() => setMenu(null)} />}</Suspense>
    </section>
  );
}
