import { lazy, Suspense } from 'react';
import type { Header, Kit, ModuleKind } from '../../src/index.ts';
import { useEditor } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { ModuleDrawing } from '../panels/kind-drawing.tsx';
import type { KindDesk } from '../store/session.ts';
import { KindForm } from './kind-form.tsx';
import { REAR_EDGES, withEdges } from './module-draft.ts';
import { ModuleFields } from './module-fields.tsx';
import { type ModuleFormState, useModuleForm } from './use-module-form.ts';

const FullForm = lazy(async () => ({ default: (await import('./full-form.tsx')).FullForm }));

/** Where the headers lie, in words; the drawing shows them from the rear. */
function HeaderList({ headers, kit }: { readonly headers: readonly Header[]; readonly kit: Kit }) {
  return (
    <ul className="header-list">
      {headers.map(({ id, name, bus, role, xMm, yMm, passes }) => (
        <li key={id}>
          <b>{name ?? kit.buses.find((known) => known.id === bus)?.name ?? bus}</b>
          {role === 'host' ? ', host' : ', member'}
          {passes && ', passes on'}
          <small>
            {figure(xMm, 1)} mm from the left edge seen from the front, {figure(yMm, 1)} mm up
          </small>
        </li>
      ))}
      {headers.length === 0 && <li>No headers</li>}
    </ul>
  );
}

interface QuickProps {
  readonly title: string;
  readonly desk: KindDesk;
  readonly form: ModuleFormState;
}

/** Enough to place it, join it and feed it. */
function QuickForm({ title, desk, form }: QuickProps) {
  const { session } = useEditor();
  const { kit, made, kind, before, shown, tellAll, setDraft } = form;
  const pinsOf = (bus: string): number => kit.buses.find(({ id }) => id === bus)?.pinout.length ?? 0;
  const allFacts = (
    <button
      type="button"
      className="plain"
      onClick={() => {
        setDraft((now) => withEdges(now, REAR_EDGES));
        session.setState({ kindDesk: { ...desk, full: true } });
      }}
    >
      All facts…
    </button>
  );
  return (
    <KindForm
      {...{ title, kind, before, made, tellAll }}
      aside={allFacts}
      preview={
        <>
          {shown ? <ModuleDrawing kind={shown} pinsOf={pinsOf} /> : <p>Not yet to be drawn</p>}
          <small>seen from the rear</small>
          {shown && <HeaderList headers={shown.headers} kit={kit} />}
        </>
      }
    >
      <ModuleFields {...form} />
    </KindForm>
  );
}

interface Props {
  readonly title: string;
  readonly desk: KindDesk;
  readonly before: ModuleKind | undefined;
}

/** A kind of module, in short or with all its facts. What is not known stays so. */
export function ModuleForm({ title, desk, before }: Props) {
  const form = useModuleForm(before, desk.full === true);
  if (!desk.full) return <QuickForm {...{ title, desk, form }} />;
  return (
    <Suspense>
      <FullForm {...{ title, desk, form }} />
    </Suspense>
  );
}
