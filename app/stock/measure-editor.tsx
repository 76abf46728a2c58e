import '../style/measure.css';
import '../style/ribbon-bench.css';
import { useId, useMemo, useRef, useState } from 'react';
import {
  CUT_END_MM,
  type CutFlaw,
  cutRibbon,
  type Edit,
  HP_MM,
  headersToMeasure,
  limitsOf,
  measure,
  type PlacedHeader,
  ribbonsOn,
  seatsOnMeasured,
  usualSlacks,
} from '../../src/index.ts';
import { useAnalysis, useEditor, useLayout, useTake } from '../hooks.ts';
import { RadioRow, TextRow } from '../kinds/field.tsx';
import { useTold } from '../kinds/kind-form.tsx';
import { OwnedRows } from '../kinds/owned-rows.tsx';
import { newRibbonDraft, type RibbonDraft, readRibbon, socketsAt } from '../kinds/ribbon-draft.ts';
import { unusedName } from '../kinds/typed.ts';
import { parseMeasure } from '../panels/case/parse-measure.ts';
import { figure } from '../panels/figures.ts';
import { Icon } from '../panels/icon.tsx';
import { markPrefix } from '../store/leads.ts';
import type { HeaderName } from '../store/session.ts';
import { nameOfHeader } from './begin-measuring.ts';
import { resistanceWords } from './ribbon-editor.tsx';
import { SectionDrawing } from './section-drawing.tsx';
import { StepBar } from './step-bar.tsx';

interface Props {
  /** Headers of one bus in one row; none: to be chosen. */
  readonly start: readonly HeaderName[];
  /** It is in stock. */
  readonly onMade: (kind: string) => void;
  /** It is in stock and lies on its headers. */
  readonly onLaid: () => void;
}

const FLAW_WORDS: Readonly<Record<CutFlaw, string>> = {
  'out-of-line': 'not in one line: heights differ too much',
  crowded: 'no room for two connectors side by side',
  'tight-bend': 'bends too sharply',
  'no-clearance': 'does not clear the case',
};

const BENDS = [
  { value: 'bends', label: 'May bend', means: 'with slack between its connectors: easy to plug, forgiving' },
  { value: 'fixed', label: 'Does not bend', means: 'no slack: connectors on the very pitch of the headers' },
] as const;

const keyOf = ({ module, header }: HeaderName): string => JSON.stringify([module, header]);
const headerKey = (header: PlacedHeader): string => keyOf(nameOfHeader(header));

/** A flat ribbon made for headers that are chosen: its connectors, its slack, the arches that it makes. */
export function MeasureEditor({ start, onMade, onLaid }: Props) {
  const { layouts, session } = useEditor();
  const take = useTake();
  const { derived } = useAnalysis();
  const kit = useLayout((layout) => layout.kit);
  const id = useId();
  const root = useRef<HTMLDivElement>(null);
  const [ticked, setTicked] = useState<ReadonlySet<string>>(() => new Set(start.map(keyOf)));
  /** Slack of gaps as typed, by the keys of their headers. */
  const [typedSlacks, setTypedSlacks] = useState<Readonly<Record<string, string>>>({});
  const [gapInHand, setGapInHand] = useState<number | null>(null);
  const [pullsOut, setPullsOut] = useState(true);
  const [facts, setFacts] = useState<RibbonDraft>(() => ({
    ...newRibbonDraft(kit, 'ribbon'),
    lay: 'bends',
    spacing: 'each',
  }));

  /** Rows and buses with headers enough for a ribbon, each pair once. */
  const lines = useMemo(
    () =>
      derived.places.rows.flatMap((row) =>
        [...derived.kit.buses.values()].flatMap((bus) => {
          const headers = headersToMeasure(derived, row, bus);
          return headers.length > 1 ? [{ row, bus, headers }] : [];
        }),
      ),
    [derived],
  );
  const startLine = lines.findIndex(({ headers }) => headers.some((header) => ticked.has(headerKey(header))));
  const [lineIndex, setLineIndex] = useState(Math.max(startLine, 0));
  const line = lines[Math.min(lineIndex, lines.length - 1)];
  const limits = limitsOf(kit);

  const chosen = line?.headers.filter((header) => ticked.has(headerKey(header))) ?? [];
  const measured = measure(derived, chosen);
  const bends = facts.lay === 'bends';
  const usual = measured ? usualSlacks(measured.cutCase) : [];
  const gapKey = (i: number): string =>
    measured?.headers
      .slice(i, i + 2)
      .map(headerKey)
      .sort()
      .join(' ') ?? '';
  const slackOf = (i: number): number | null => {
    const text = typedSlacks[gapKey(i)];
    if (text === undefined || text.trim() === '') return usual[i] ?? 0;
    const mm = parseMeasure(text, 'mm');
    return mm !== null && mm >= 0 && mm <= 1000 ? mm : null;
  };
  const slacks = usual.map((_, i) => slackOf(i));
  const cut = measured && cutRibbon(measured.cutCase, bends ? slacks.map((slack) => slack ?? 0) : undefined);

  const name =
    facts.name ?? unusedName(kit.ribbons, `${line?.bus.bus.name ?? 'Ribbon'} to measure, ${chosen.length}`);
  const draft: RibbonDraft = {
    ...facts,
    name,
    bus: line?.bus.bus.id ?? '',
    connectors: socketsAt(cut?.placesMm ?? []),
  };
  const { kind, problems } = readRibbon(kit, draft);
  const { told, leave, tellAll } = useTold(problems);
  const isAmiss = bends && slacks.includes(null);
  const others = measured ? ribbonsOn(derived, measured) : [];
  const make: Edit | null = kind && cut && !isAmiss ? { type: 'add-ribbon-kind', kind } : null;
  const lay: Edit | null =
    make && kind && measured
      ? {
          type: 'several',
          label: `make and lay ${kind.name}`,
          edits: [
            ...(pullsOut && others.length > 0
              ? [
                  {
                    type: 'remove-ribbons' as const,
                    take: take.id,
                    ribbons: others.map((ribbon) => ribbon.id),
                  },
                ]
              : []),
            make,
            {
              type: 'add-ribbon',
              take: take.id,
              kind: kind.id,
              seats: seatsOnMeasured(measured),
              ...(measured.stripe === 'up' && { stripe: 'up' as const }),
              prefix: markPrefix(kind, kit),
            },
          ],
        }
      : null;

  const toggle = (header: PlacedHeader): void => {
    const after = new Set(ticked);
    const key = headerKey(header);
    if (!after.delete(key)) after.add(key);
    setTicked(after);
  };
  const putInStock = (): void => {
    if (!make || !kind) {
      tellAll();
      return;
    }
    if (!layouts.run(make).ok) return;
    session.setState({ spoken: `${kind.name} is in stock.` });
    onMade(kind.id);
  };

  if (!line)
    return (
      <div className="detail">
        <h3>Made to measure</h3>
        <p>No row of this take has two upright headers of one bus. Place modules first.</p>
      </div>
    );

  return (
    <div className="detail measure-editor" ref={root}>
      <div className="head">
        <h3>Made to measure</h3>
      </div>
      <div className="measure-columns">
        <fieldset className="headers-to-measure">
          <legend>Headers</legend>
          {lines.length > 1 && (
            <select
              className="field"
              aria-label="Row and bus"
              value={lines.indexOf(line)}
              onChange={({ currentTarget: { value } }) => setLineIndex(Number(value))}
            >
              {lines.map(({ row, bus }, i) => (
                <option key={`${row.index} ${bus.bus.id}`} value={i}>
                  {row.row.name ?? `Row ${row.index + 1}`} · {bus.bus.name}
                </option>
              ))}
            </select>
          )}
          <ul>
            {[...line.headers].reverse().map((header) => {
              const held = derived.wiring.seatedOn.get(header)?.map(({ ribbon }) => ribbon.name) ?? [];
              return (
                <li key={headerKey(header)}>
                  <label className="tick">
                    <input
                      type="checkbox"
                      checked={ticked.has(headerKey(header))}
                      onChange={() => toggle(header)}
                    />
                    <span>
                      {header.owner.name}
                      <small>
                        {figure(header.xMm / HP_MM, 2)} HP{held.length > 0 && ` · holds ${held.join(', ')}`}
                      </small>
                    </span>
                  </label>
                </li>
              );
            })}
          </ul>
          <small className="aside">as seen from the rear, left to right; places from the front’s left</small>
        </fieldset>
        <div className="measured">
          <RadioRow
            label="Slack"
            value={bends ? 'bends' : 'fixed'}
            options={BENDS}
            onChoice={(lays) => setFacts({ ...facts, lay: lays })}
            className="lays"
          />
          {!measured || !cut ? (
            <p className="empty">Tick two headers or more.</p>
          ) : (
            <>
              <SectionDrawing measured={measured} cut={cut} limits={limits} chosen={gapInHand} />
              <table className="gaps">
                <caption className="unseen">The ribbon between its connectors</caption>
                <thead>
                  <tr>
                    <th scope="col">Gap</th>
                    <th scope="col">Slack</th>
                    <th scope="col">Ribbon</th>
                    <th scope="col">Arch</th>
                    <th scope="col">Radius</th>
                    <th scope="col">Left to the floor</th>
                  </tr>
                </thead>
                <tbody>
                  {cut.gaps.map((gap, i) => {
                    const { arch, distanceMm, lengthMm, clearanceMm, flaws } = gap;
                    const [a, b] = measured.headers.slice(i, i + 2);
                    const wrong = bends && slacks[i] === null;
                    return (
                      <tr key={gapKey(i)} className={flaws.length > 0 ? 'flawed' : undefined}>
                        <th scope="row">
                          <span className="tag">{i + 1}</span>
                          <span>
                            {a?.owner.name} – {b?.owner.name}
                            <small>{figure(distanceMm, 2)} mm apart</small>
                            {flaws.map((flaw) => (
                              <small key={flaw} className="flaw">
                                <svg viewBox="0 0 16 16" aria-hidden="true">
                                  <path d="M8 .5 15.5 8 8 15.5.5 8z" />
                                </svg>
                                {FLAW_WORDS[flaw]}
                              </small>
                            ))}
                          </span>
                        </th>
                        <td data-label="Slack">
                          {bends ? (
                            <input
                              className="field"
                              aria-label={`Slack of gap ${i + 1}, mm`}
                              aria-invalid={wrong || undefined}
                              aria-describedby={wrong ? `${id}-slack` : undefined}
                              size={4}
                              inputMode="decimal"
                              autoComplete="off"
                              placeholder={figure(usual[i] ?? 0, 1)}
                              value={typedSlacks[gapKey(i)] ?? figure(usual[i] ?? 0, 1)}
                              onFocus={() => setGapInHand(i)}
                              onBlur={() => setGapInHand(null)}
                              onChange={({ currentTarget: { value } }) =>
                                setTypedSlacks({ ...typedSlacks, [gapKey(i)]: value })
                              }
                            />
                          ) : (
                            'none'
                          )}
                        </td>
                        <td data-label="Ribbon">{figure(lengthMm, 1)}</td>
                        <td data-label="Arch">{arch ? figure(arch.heightMm, 1) : 'straight'}</td>
                        <td data-label="Radius">
                          {arch ? (arch.kind === 'arch' ? figure(arch.radiusMm, 1) : 'folds') : '–'}
                        </td>
                        <td data-label="Left to the floor">{figure(clearanceMm, 1)}</td>
                      </tr>
                    );
                  })}
                </tbody>
              </table>
              {isAmiss && <p id={`${id}-slack`}>Slack is a number of mm from 0.</p>}
              <p className="aside">
                In mm. Cut {figure(cut.lengthMm, 1)} mm: {figure(cut.placesMm.at(-1) ?? 0, 1)} mm between the
                outer connectors and {CUT_END_MM} mm at each end. Connectors at{' '}
                {cut.placesMm.map((mm) => figure(mm, 1)).join(', ')}. Arches are those of an ideal elastic
                ribbon; a real one keeps some of its old bends.
                {bends && Object.keys(typedSlacks).length > 0 && (
                  <button type="button" className="quiet" onClick={() => setTypedSlacks({})}>
                    <Icon name="undo" />
                    Usual slack
                  </button>
                )}
              </p>
            </>
          )}
          <div className="fields">
            <TextRow
              label="Name"
              value={name}
              problem={told('name')}
              selects
              onText={(text) => setFacts({ ...facts, name: text })}
              onLeave={leave('name')}
            />
            <TextRow
              label="Gauge"
              unit="AWG"
              decimal
              size={4}
              placeholder="28"
              value={facts.gauge}
              problem={told('gauge')}
              hint={resistanceWords(facts.gauge, limits.ambientC, cut?.placesMm.at(-1) ?? 0)}
              onText={(gauge) => setFacts({ ...facts, gauge })}
              onLeave={leave('gauge')}
            />
            <OwnedRows
              owned={facts.owned}
              price={facts.price}
              problems={{ owned: told('owned'), price: told('price') }}
              onChange={(part) => setFacts({ ...facts, ...part })}
              onLeave={(field) => leave(field)()}
            />
            {others.length > 0 && (
              <label className="tick">
                <input type="checkbox" checked={pullsOut} onChange={() => setPullsOut(!pullsOut)} />
                Pull out {others.map((ribbon) => ribbon.name).join(', ')} first, which{' '}
                {others.length === 1 ? 'sits' : 'sit'} on these headers
              </label>
            )}
          </div>
        </div>
      </div>
      <StepBar
        step={lay}
        label="Put in stock and lay it"
        said={kind ? `${kind.name} is in stock and lies on ${chosen.length} headers.` : ''}
        isIdle={!measured}
        onAmiss={() => {
          tellAll();
          root.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus();
        }}
        onDone={onLaid}
      >
        <button type="button" className="plain" aria-disabled={!measured} onClick={putInStock}>
          Only put in stock
        </button>
      </StepBar>
    </div>
  );
}
