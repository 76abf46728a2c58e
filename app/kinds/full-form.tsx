import '../style/module-editor.css';
import { type ClipboardEvent, type DragEvent, useEffect, useMemo, useRef, useState } from 'react';
import { applyEdit, panelSizeMm, type Side, zMmOf } from '../../src/index.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import type { KindDesk } from '../store/session.ts';
import { takeOf } from '../store/shown.ts';
import { countKinds } from './count-kinds.ts';
import { DrawingTools } from './drawing-tools.tsx';
import { placeWords } from './edge-words.ts';
import { EffectsInShort, EffectsList } from './effects-list.tsx';
import { FactsToFindOut } from './facts-to-find-out.tsx';
import { Field } from './field.tsx';
import { type HeaderDraft, mmIn, newHeader, placeOf } from './header-draft.ts';
import { HeaderDrawing } from './header-drawing.tsx';
import { HeaderFields } from './header-fields.tsx';
import { reachesBeyond } from './header-shape.tsx';
import { KindForm, stepFor } from './kind-form.tsx';
import { drawnSize, headersShown, type ModuleDraft, withEdges } from './module-draft.ts';
import { ModuleFields } from './module-fields.tsx';
import { photographId } from './photograph.ts';
import { NOT_LAYING, PhotographFields } from './photograph-fields.tsx';
import { DragToFit, PhotographImage, TwoPoints } from './photograph-hands.tsx';
import { useEffects } from './use-effects.ts';
import { useHeaderHand } from './use-header-hand.ts';
import type { ModuleFormState } from './use-module-form.ts';
import { usePhotograph } from './use-photograph.ts';

const ZOOMS = [1, 1.5, 2, 3, 4] as const;

/** Where a ribbon is taken to lie while nothing is known of it, mm. */
function takenZMm({ depth }: ModuleDraft): number {
  const depthMm = mmIn(depth);
  return zMmOf(depthMm === undefined ? {} : { depthMm }, {});
}

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
  const [laying, setLaying] = useState(NOT_LAYING);
  const root = useRef<HTMLDivElement>(null);
  const photograph = usePhotograph(before ? photographId(layout, before.id) : null);

  const panel = drawnSize(draft);
  const size = panelSizeMm(panel.widthHp, panel.heightU);
  const { edges } = draft;
  const headers = useMemo(() => headersShown(kit, draft), [kit, draft]);
  const { chosen, hand, canGoBack, changeHeader } = useHeaderHand(form, headers, size, root);
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
  const uses = useMemo(() => (before && countKinds(layout).get(before.id)?.takes) ?? [], [layout, before]);

  /** Left stays left: who measures from the left edge goes on to do so on the other side. */
  const look = (from: Side): void => {
    setSide(from);
    if (edges.across === `${side}-left`)
      setDraft((now) => withEdges(now, { ...edges, across: `${from}-left` }));
  };
  const jump = (field: string): void => {
    const owner = headers.find(({ key }) => field.startsWith('header ') && field.endsWith(` ${key}`));
    if (owner) hand.choose(owner.key);
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
  const beyond = headers.filter((each) => reachesBeyond(each, edges, size, pinsOf(each.bus))).map(nameOf);
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
          <FactsToFindOut layout={typedLayout} kinds={asKind} kind={kind} onField={jump} />
        </div>

        <section className="drawn" aria-label="Its rear">
          <DrawingTools
            {...{ side, zoom, snaps, canGoBack, look, setZoom, setSnaps, hand }}
            most={ZOOMS.length - 1}
            chosen={header?.key}
            onAdd={() => hand.add(newHeader(kit, headers, edges, size))}
          />
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
                    onClick={() => hand.choose(each.key === chosen ? null : each.key)}
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
