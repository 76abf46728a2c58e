import { lazy, Suspense } from 'react';
import { start } from '../actions/action.ts';
import { fit } from '../actions/fit.ts';
import { showCase } from '../actions/show-case.ts';
import { showPower } from '../actions/show-power.ts';
import { turn } from '../actions/turn.ts';
import { zoomIn, zoomOut } from '../actions/zoom.ts';
import { useAction, useAnalysis, useEditor, useSession, useTake } from '../hooks.ts';
import { type Load, loadsOf } from '../store/loads.ts';
import { viewportNow } from '../store/view.ts';
import { ActionButton } from './action-button.tsx';
import { Cautions } from './cautions.tsx';
import { figure, voltageName } from './figures.ts';
import { Layers } from './layers.tsx';

/** Loaded once the first picture stands. */
const RevisionLine = lazy(async () => ({ default: (await import('./revision-line.tsx')).RevisionLine }));

/** A CSS px is a 96th of an inch. */
const MM_PER_PX = 25.4 / 96;

const amount = ({ ma, atLeast }: Load): string => `${atLeast ? '≥ ' : ''}${figure(ma, 0)}`;

const LoadCell = ({ load, unfed }: { readonly load: Load; readonly unfed: Load | undefined }) => (
  <span title="What the modules fed by this supply draw, of what it gives, mA; as their kinds say">
    <small>{voltageName(load.voltage)}, mA </small>
    <b>{amount(load)}</b>/{figure(load.rating, 0)}
    {unfed && <small> + {amount(unfed)} not fed</small>}
  </span>
);

/**
 * A line of figures for each supply, which opens the power panel; what nothing feeds yet stands with the first, which
 * may have to carry it.
 */
export function LoadLines() {
  const editor = useEditor();
  const { supplies, unfed } = loadsOf(useAnalysis().derived);
  const open = useSession(({ fold }) => fold === 'power');
  return supplies.map(({ id, name, loads }, i) => (
    <button
      key={id}
      type="button"
      className="loads"
      aria-expanded={open}
      onClick={() => start(editor, showPower)}
    >
      {supplies.length > 1 && <b>{name}</b>}
      {loads.map((load) => (
        <LoadCell
          key={load.voltage}
          load={load}
          unfed={i === 0 ? unfed.find(({ voltage }) => voltage === load.voltage) : undefined}
        />
      ))}
      {i === 0 && <b className="open-power">Power</b>}
    </button>
  ));
}

function Scale() {
  const editor = useEditor();
  useAnalysis();
  useSession(({ viewport, stage }) => viewport ?? stage);
  return <b>1 : {figure(1 / (viewportNow(editor).scale * MM_PER_PX), 1)}</b>;
}

/** Which case it is; opens it. */
function CaseLine() {
  const editor = useEditor();
  const { rows } = useTake();
  const open = useSession(({ fold }) => fold === 'case');
  const [first] = rows;
  const alike = first && rows.every(({ widthHp }) => widthHp === first.widthHp);
  return (
    <button type="button" className="case-line" aria-expanded={open} onClick={() => start(editor, showCase)}>
      <small>Case</small>
      <b>{alike ? `${rows.length} × ${figure(first.widthHp)} HP` : `${rows.length} rows`}</b>
      <span>{open ? 'Done' : 'Change'}</span>
    </button>
  );
}

/** Side, scale and load, as in the corner of a drawing; it turns the case. */
export function TitleBlock() {
  const editor = useEditor();
  const side = useSession((session) => session.side);
  const { label } = useAction(turn);
  const keys = useSession(({ printKeys }) => printKeys?.(turn));
  return (
    <section className="title-block" aria-label="Title block">
      <div className="side">
        <small>Side</small>
        <b>{side.toUpperCase()}</b>
        <button type="button" className="turn" title={label} onClick={() => start(editor, turn)}>
          Turn {keys && <kbd>{keys}</kbd>}
        </button>
      </div>
      <div className="scale">
        <small>Scale</small>
        <Scale />
        <span className="zooms">
          <ActionButton action={zoomOut} />
          <ActionButton action={fit} />
          <ActionButton action={zoomIn} />
        </span>
      </div>
      <CaseLine />
      <LoadLines />
      <Layers />
      <Suspense fallback={<p className="revision-line" />}>
        <RevisionLine />
      </Suspense>
      <Cautions />
    </section>
  );
}
