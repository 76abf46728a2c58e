import '../style/kind-desk.css';
import '../style/stock-pages.css';
import { useEffect, useState } from 'react';
import type { RibbonKind } from '../../src/index.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { Icon } from '../panels/icon.tsx';
import { RibbonDrawing } from '../panels/ribbon-drawing.tsx';
import { isLead } from '../store/leads.ts';
import type { HeaderName } from '../store/session.ts';
import { MeasureEditor } from './measure-editor.tsx';
import { RibbonEditor } from './ribbon-editor.tsx';
import { TwoPanes } from './two-panes.tsx';

/** What is open beside the list. */
type Chosen =
  | { readonly open: 'kind'; readonly id: string }
  | { readonly open: 'new'; readonly sort: 'ribbon' | 'lead' }
  | { readonly open: 'measure'; readonly headers: readonly HeaderName[] }
  | null;

const lengthWords = ({ connectors }: RibbonKind): string =>
  `${connectors.length} connectors on ${figure(connectors.at(-1)?.atMm ?? 0, 1)} mm`;

/** Kinds of ribbon and of lead, and the making of one to measure. */
export function RibbonsPage() {
  const { session } = useEditor();
  const kit = useLayout((layout) => layout.kit);
  const [chosen, setChosen] = useState<Chosen>(() => {
    const { ribbonsWith } = session.getState();
    if (!ribbonsWith) return null;
    return 'kind' in ribbonsWith
      ? { open: 'kind', id: ribbonsWith.kind }
      : { open: 'measure', headers: ribbonsWith.headers };
  });
  useEffect(() => session.setState({ ribbonsWith: null }), [session]);
  const kind = chosen?.open === 'kind' ? kit.ribbons.find(({ id }) => id === chosen.id) : undefined;
  const shown = chosen?.open === 'kind' && !kind ? null : chosen;
  const show = (id: string | null): void => setChosen(id === null ? null : { open: 'kind', id });
  const ribbons = kit.ribbons.filter((each) => !isLead(each, kit));
  const leads = kit.ribbons.filter((each) => isLead(each, kit));
  const list = (kinds: readonly RibbonKind[]) => (
    <ul>
      {kinds.map((each) => (
        <li key={each.id}>
          <button
            type="button"
            className="with-drawing"
            aria-current={each === kind ? 'true' : undefined}
            onClick={() => show(each.id)}
          >
            <span>
              <b>{each.name}</b>
              <small>{lengthWords(each)}</small>
            </span>
            <RibbonDrawing kind={each} />
          </button>
        </li>
      ))}
    </ul>
  );
  const add = (label: string, to: Chosen) => (
    <button type="button" className="quiet add" onClick={() => setChosen(to)}>
      <Icon name="plus" />
      {label}
    </button>
  );

  return (
    <TwoPanes
      chosen={shown && JSON.stringify(shown)}
      onBack={() => setChosen(null)}
      list={
        <>
          {add('Make one to measure', { open: 'measure', headers: [] })}
          <h3>Ribbons</h3>
          {list(ribbons)}
          {add('New ribbon', { open: 'new', sort: 'ribbon' })}
          <h3>Leads</h3>
          {list(leads)}
          {add('New lead', { open: 'new', sort: 'lead' })}
        </>
      }
      detail={
        shown === null ? (
          <p className="empty">Choose a ribbon, or make a new one.</p>
        ) : shown.open === 'measure' ? (
          <MeasureEditor
            start={shown.headers}
            onMade={show}
            onLaid={() => session.setState({ stockDesk: null })}
          />
        ) : (
          <RibbonEditor
            key={JSON.stringify([shown, kind])}
            before={kind}
            sort={shown.open === 'new' ? shown.sort : 'ribbon'}
            onShow={show}
          />
        )
      }
    />
  );
}
