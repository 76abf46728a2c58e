import '../style/module-editor.css';
import { type ClipboardEvent, type DragEvent, useEffect, useMemo, useRef, useState } from 'react';
import { applyEdit, type OpenFact, panelSizeMm, type Side, unknownFactsOf } from '../../src/index.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { Icon } from '../panels/icon.tsx';
import type { KindDesk } from '../store/session.ts';
import { takeOf } from '../store/shown.ts';
import { countKinds } from './count-kinds.ts';
import { placeWords } from './edge-words.ts';
import { EffectsInShort, EffectsList } from './effects-list.tsx';
import { factName, fieldOf } from './fact-words.ts';
import { Field } from './field.tsx';
import { type HeaderDraft, headerLike, newHeader, placedAt, placeOf } from './header-draft.ts';
import { HeaderDrawing, type HeaderHand } from './header-drawing.tsx';
import { HeaderFields } from './header-fields.tsx';
import { halfOf } from './header-shape.tsx';
import { KindForm, stepFor } from './kind-form.tsx';
import { drawnSize, headersShown, type ModuleDraft, withEdges, withHeaders } from './module-draft.ts';
import { ModuleFields } from './module-fields.tsx';
import { OpenFactList } from './open-fact-list.tsx';
import { photographId } from './photograph.ts';
import { NOT_LAYING, PhotographFields } from './photograph-fields.tsx';
import { DragToFit, PhotographImage, TwoPoints } from './photograph-hands.tsx';
import { useEffects } from './use-effects.ts';
import type { ModuleFormState } from './use-module-form.ts';
import { useOpenFacts } from './use-open-facts.ts';
import { usePhotograph } from './use-photograph.ts';

/** So many steps with headers can be taken back. */
const MOST_STEPS = 100;

const ZOOMS = [1, 1.5, 2, 3, 4] as const;

/** Where a ribbon is taken to lie while nothing is known of it, mm: the rule of the document. */
const takenZMm = ({ depth }: ModuleDraft): number => {
  const mm = Number(depth.replace(/\s*mm\s*$/i, '').replace(',', '.'));
  return depth.trim() !== '' && Number.isFinite(mm) ? mm : 30;
};

/** Where there is little room the drawing comes first, and no keyboard is to cover it. */
const drawingFirst = (): boolean => matchMedia('(max-width: 1000px)').matches;

/** A picture among what is dropped or pasted. */
const pictureIn = (files: FileList | undefined): File | undefined =>
  [...(files ?? [])].find(({ type }) => type.startsWith('image/'));

/** What is drawn beyond the panel, in words; nothing where all is on it. */
function beyondWords(names: readonly string[]): string | undefined {
  if (names.length === 0) return undefined;
  return `${names.join(', ')} ${names.length === 1 ? 'reaches' : 'reach'} beyond the panel`;
}

/** What headers were, to go back to; with the draft that they stood in. */
function useSteps(draft: ModuleDraft, setDraft: (next: ModuleDraft) => void) {
  const past = useRef<ModuleDraft[]>([]);
  const [count, setCount] = useState(0);
  const note = (): void => {
    past.current = [...past.current.slice(1 - MOST_STEPS), draft];
    setCount(past.current.length);
  };
  const back = (): void => {
    const before = past.current.pop();
    setCount(past.current.length);
    if (!before) return;
    // What was typed since about the kind as a whole stays.
    setDraft(
      withEdges(
        { ...draft, template: before.template, headers: before.headers, edges: before.edges },
        draft.edges,
      ),
    );
  };
  return { note, back, canGoBack: count > 0 };
}

interface Props {
  readonly title: string;
  readonly desk: KindDesk;
  readonly form: ModuleFormState;
}

/** All facts of a kind, with a drawing of its rear, and what a change would do to the layout. */
export function FullForm({ title, desk, form }: Props) {
  const { session } = useEditor();
  const layout = useLayout((present) => present);
  const shownTake = takeOf(layout, session.getState().take);
  const { kit, made, draft, setDraft, kind, before, told, leave, tellAll, addBus } = form;
  const [side, setSide] = useState<Side>('rear');
  const [zoom, setZoom] = useState(0);
  const [snaps, setSnaps] = useState(true);
  const [chosen, setChosen] = useState<string | null>(null);
  const [laying, setLaying] = useState(NOT_LAYING);
  const steps = useSteps(draft, setDraft);
  const root = useRef<HTMLDivElement>(null);
  const photograph = usePhotograph(before ? photographId(layout, before.id) : null);

  const panel = drawnSize(draft);
  const size = panelSizeMm(panel.widthHp, panel.heightU);
  const { edges } = draft;
  const headers = useMemo(() => headersShown(kit, draft), [kit, draft]);
  const header = headers.find(({ key }) => key === chosen);
  const pinsOf = (bus: string): number => kit.buses.find(({ id }) => id === bus)?.pinout.length ?? 10;
  /** By its name, else by its bus, and by its id where the bus has several. */
  const nameOf = ({ key, id, name, bus }: HeaderDraft): string => {
    const known = kit.buses.find((other) => other.id === bus)?.name ?? id;
    const isAlone = !headers.some((other) => other.key !== key && other.bus === bus && !other.name.trim());
    return name.trim() || (isAlone ? known : `${known} ${id}`);
  };

  const step = useMemo(() => (kind ? stepFor(kind, before === undefined, made) : null), [kind, before, made]);
  const { effects, pending } = useEffects(layout, before ? step : null, shownTake.id);
  /** The layout as it would be, and the kind in it: what rests on its facts as they are typed. */
  const [typedLayout, asKind] = useMemo(() => {
    const done = before && step && applyEdit(layout, step);
    if (!done?.ok) return [layout, []] as const;
    return [done.value, done.value.kit.modules.filter(({ id }) => id === before?.id)] as const;
  }, [layout, before, step]);
  const open = useOpenFacts(typedLayout, asKind);
  const unknown = kind ? unknownFactsOf(kind) : [];
  const unrested = unknown.filter(
    (fact) => !open.facts.some((other) => JSON.stringify(other.fact) === JSON.stringify(fact)),
  );
  const uses = useMemo(() => (before && countKinds(layout).get(before.id)?.takes) ?? [], [layout, before]);

  const setHeaders = (next: readonly HeaderDraft[]): void => setDraft((now) => withHeaders(now, next));
  const changeHeader = (key: string, change: (header: HeaderDraft) => HeaderDraft): void =>
    setHeaders(headers.map((other) => (other.key === key ? change(other) : other)));
  const focusHeader = (key: string | null): void => {
    requestAnimationFrame(() => {
      const wanted =
        key === null ? null : root.current?.querySelector<SVGElement>(`[data-header="${CSS.escape(key)}"]`);
      (wanted ?? root.current?.querySelector<HTMLElement>('.add-header'))?.focus();
    });
  };
  const add = (next: HeaderDraft): void => {
    steps.note();
    setHeaders([...headers, next]);
    setChosen(next.key);
    focusHeader(next.key);
  };
  const hand: HeaderHand = {
    choose: setChosen,
    begin: steps.note,
    move: (key, place) => changeHeader(key, (other) => placedAt(other, edges, size, place)),
    cancel: steps.back,
    duplicate(key) {
      const like = headers.find((other) => other.key === key);
      if (like) add(headerLike(like, headers, edges, size));
    },
    remove(key) {
      steps.note();
      const at = headers.findIndex((other) => other.key === key);
      const left = headers.filter((other) => other.key !== key);
      const next = left[Math.min(at, left.length - 1)]?.key ?? null;
      setHeaders(left);
      setChosen(next);
      focusHeader(next);
    },
    stepBack: steps.back,
  };

  /** Left stays left: who measures from the left edge goes on to do so on the other side. */
  const look = (from: Side): void => {
    setSide(from);
    if (edges.across === `${side}-left`)
      setDraft((now) => withEdges(now, { ...edges, across: `${from}-left` }));
  };
  const jump = (field: string): void => {
    const owner = headers.find(({ key }) => field.startsWith('header ') && field.endsWith(` ${key}`));
    if (owner) setChosen(owner.key);
    requestAnimationFrame(() =>
      root.current
        ?.querySelector<HTMLElement>(
          `[data-field="${CSS.escape(field)}"] :is(input:not([type="radio"]), select, textarea)`,
        )
        ?.focus(),
    );
  };
  const showEffects = (): void =>
    root.current?.querySelector('.effects')?.scrollIntoView({ block: 'nearest' });
  // biome-ignore lint/correctness/useExhaustiveDependencies: led there once, when the form opens.
  useEffect(() => {
    if (desk.at) jump(desk.at);
    else root.current?.querySelector<HTMLElement>(drawingFirst() ? '.sides button' : '.facts input')?.focus();
  }, []);

  const bringPicture = (
    event: ClipboardEvent | DragEvent,
    data: Pick<DataTransfer, 'files'> | null,
  ): void => {
    const file = pictureIn(data?.files);
    if (!file) return;
    event.preventDefault();
    event.stopPropagation();
    void photograph.read(size, file);
  };
  const beyond = headers.flatMap((each) => {
    const place = placeOf(each, edges, size);
    if (!place) return [];
    const half = halfOf(each, pinsOf(each.bus));
    const fits =
      place.xMm - half.xMm >= 0 &&
      place.xMm + half.xMm <= size.widthMm &&
      place.yMm - half.yMm >= 0 &&
      place.yMm + half.yMm <= size.heightMm;
    return fits ? [] : [nameOf(each)];
  });
  const place = header && placeOf(header, edges, size);
  const { photo, address } = photograph;

  return (
    <KindForm
      {...{ title, kind, before, made, tellAll }}
      unsaved={form.isTouched || photograph.isTouched}
      aside={before && <EffectsInShort effects={effects} onShow={showEffects} />}
      onKept={(id) => void photograph.keep(photographId(layout, id))}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a picture may be dropped or pasted anywhere; there is a button besides. */}
      <div
        className="columns-in"
        ref={root}
        onPaste={(event) => bringPicture(event, event.clipboardData)}
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => bringPicture(event, event.dataTransfer)}
      >
        <div className="whole">
          <section className="facts" aria-label="The module">
            <h3>The module</h3>
            <ModuleFields {...form}>
              <Field label="Colour" problem={told('color')}>
                {(control) => (
                  <>
                    <input
                      {...control}
                      className="field"
                      size={12}
                      placeholder="none"
                      spellCheck={false}
                      autoComplete="off"
                      value={draft.color}
                      onChange={({ currentTarget: { value } }) => form.change({ color: value })}
                      onBlur={leave('color')}
                    />
                    {draft.color.trim() && <span className="swatch" style={{ background: draft.color }} />}
                  </>
                )}
              </Field>
              <Field label="Notes" problem={told('notes')}>
                {(control) => (
                  <textarea
                    {...control}
                    className="field"
                    rows={3}
                    value={draft.notes}
                    onChange={({ currentTarget: { value } }) => form.change({ notes: value })}
                    onBlur={leave('notes')}
                  />
                )}
              </Field>
            </ModuleFields>
          </section>
          {before && <EffectsList effects={effects} pending={pending} uses={uses} />}
          <section aria-label="Facts to find out">
            <h3>Facts to find out</h3>
            {!kind && <p className="aside">Told as soon as every field can be read.</p>}
            {unknown.length === 0 && kind && <p className="aside">All that notes rest on is known.</p>}
            <OpenFactList facts={open.facts} onFact={({ fact }: OpenFact) => jump(fieldOf(fact))} />
            {unrested.length > 0 && kind && (
              <p className="unrested">
                <span className="aside">Not known, and nothing rests on it yet: </span>
                {unrested.map((fact) => (
                  <button key={fieldOf(fact)} type="button" onClick={() => jump(fieldOf(fact))}>
                    {factName(fact, kind)}
                  </button>
                ))}
              </p>
            )}
          </section>
        </div>

        <section className="drawn" aria-label="Its rear">
          <div className="tools">
            <fieldset className="sides">
              <legend className="unseen">Seen from</legend>
              {(['rear', 'front'] as const).map((each) => (
                <button key={each} type="button" aria-pressed={side === each} onClick={() => look(each)}>
                  {each === 'rear' ? 'Rear' : 'Front'}
                </button>
              ))}
            </fieldset>
            <button
              type="button"
              className="quiet add-header"
              onClick={() => add(newHeader(kit, headers, edges, size))}
            >
              <Icon name="plus" />
              Header
            </button>
            <button
              type="button"
              className="quiet icon"
              aria-label="Duplicate the header"
              title="Duplicate the header (Ctrl+D)"
              aria-disabled={!header}
              onClick={() => header && hand.duplicate(header.key)}
            >
              <Icon name="duplicate" />
            </button>
            <button
              type="button"
              className="quiet icon"
              aria-label="Remove the header"
              title="Remove the header (Delete)"
              aria-disabled={!header}
              onClick={() => header && hand.remove(header.key)}
            >
              <Icon name="remove" />
            </button>
            <button
              type="button"
              className="quiet icon"
              aria-label="Take back the last step with headers"
              title="Take back the last step with headers (Ctrl+Z on the drawing)"
              aria-disabled={!steps.canGoBack}
              onClick={steps.back}
            >
              <Icon name="undo" />
            </button>
            <label
              className="tick"
              title="Catches on the centre line, on other headers, and on a grid of half pins, 1.27 mm"
            >
              <input
                type="checkbox"
                checked={snaps}
                onChange={({ currentTarget: { checked } }) => setSnaps(checked)}
              />
              Snap
            </label>
            <span className="zooms">
              <button
                type="button"
                className="quiet icon"
                aria-label="Smaller"
                aria-disabled={zoom === 0}
                onClick={() => setZoom(Math.max(0, zoom - 1))}
              >
                <Icon name="minus" />
              </button>
              <button
                type="button"
                className="quiet icon"
                aria-label="Larger"
                aria-disabled={zoom === ZOOMS.length - 1}
                onClick={() => setZoom(Math.min(ZOOMS.length - 1, zoom + 1))}
              >
                <Icon name="plus" />
              </button>
            </span>
          </div>
          <HeaderDrawing
            {...{ headers, edges, panel, side, snaps, chosen, hand, pinsOf, nameOf }}
            zoom={ZOOMS[zoom] ?? 1}
            under={(frame) =>
              photo && address && <PhotographImage frame={frame} photo={photo} address={address} />
            }
            over={
              photo && laying.inHand !== 'headers'
                ? (frame) =>
                    laying.inHand === 'points' ? (
                      <TwoPoints
                        {...{ frame, photo }}
                        onPhoto={photograph.change}
                        points={laying.points}
                        onPoints={(points) => setLaying({ ...laying, points })}
                      />
                    ) : (
                      <DragToFit
                        {...{ frame, photo, panel }}
                        onPhoto={photograph.change}
                        anchor={laying.anchor}
                        onAnchor={(anchor) => setLaying({ ...laying, anchor })}
                      />
                    )
                : undefined
            }
          />
          <p className="said" aria-live="polite">
            {header && place
              ? `${nameOf(header)}: ${placeWords(edges, size, place)}`
              : `Seen from the ${side}; ${figure(panel.widthHp)} HP are ${figure(size.widthMm, 2)} mm`}
            {beyondWords(beyond) && <b>. {beyondWords(beyond)}.</b>}
          </p>
          <p className="aside keys">
            Drag a header, or press the arrow keys: 0.5 mm, with Alt 0.1, with Shift 2.54. Alt drags without
            snapping.
          </p>
        </section>

        <div className="beside">
          <section aria-label="Header" className="header-facts">
            <h3>{header ? 'This header' : 'Headers'}</h3>
            <ul className="header-tabs">
              {headers.map((each) => (
                <li key={each.key}>
                  <button
                    type="button"
                    aria-pressed={each.key === chosen}
                    onClick={() => setChosen(each.key === chosen ? null : each.key)}
                  >
                    {nameOf(each)}
                  </button>
                </li>
              ))}
            </ul>
            {headers.length === 0 && (
              <p className="aside">It has none. “Header” above the drawing adds one.</p>
            )}
            {headers.length > 0 && !header && <p className="aside">Choose one, here or on the drawing.</p>}
            {header && (
              <HeaderFields
                {...{ kit, header, edges, addBus, told, leave }}
                takenZMm={takenZMm(draft)}
                change={(part) => changeHeader(header.key, (other) => ({ ...other, ...part }))}
                onEdges={(next) => setDraft((now) => withEdges(now, next))}
              />
            )}
          </section>

          <section aria-label="Photograph">
            <h3>Photograph</h3>
            <PhotographFields state={photograph} size={size} laying={laying} onLaying={setLaying} />
          </section>
        </div>
      </div>
    </KindForm>
  );
}
