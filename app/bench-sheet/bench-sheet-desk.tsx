import '../style/bench-sheet.css';
import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import {
  benchSheet,
  drawingFile,
  FILE_SCALE,
  factsOf,
  PAGE_NAMES,
  type Paper,
  pagesOf,
  partsCsv,
  partsListOf,
  SHEET_PAGE_IDS,
  type SheetPageId,
  VIEWS,
  type View,
} from '../../src/sheet.ts';
import { useAnalysis, useEditor, useLayout, useTake } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import { download } from '../platform/download.ts';
import { fileNameOf } from '../platform/file-name.ts';
import { pictureOf } from '../platform/picture-of.ts';
import { printFrame, showInFrame } from '../platform/print-frame.ts';
import { barOf } from './bar.ts';

/** Dots to the inch of a saved picture. */
const DPI = 300;

const PAPER_NAMES: Readonly<Record<Paper, string>> = { a4: 'A4', letter: 'Letter' };

/** What is printed and taped into the lid: pages to choose, how they will look, and the drawings as files. */
export function BenchSheetDesk() {
  const { session } = useEditor();
  const layout = useLayout((present) => present);
  const take = useTake();
  const { derived } = useAnalysis();
  const [paper, setPaper] = useState<Paper>('a4');
  const [leftOut, setLeftOut] = useState<ReadonlySet<SheetPageId>>(new Set());
  const [barText, setBarText] = useState('100');
  const [everyPiece, setEveryPiece] = useState(false);
  const [said, setSaid] = useState('');
  const frame = useRef<HTMLDivElement>(null);
  const bar = barOf(barText);
  const barMm = bar.ok ? bar.value : undefined;

  /** Pages that this take has anything for, and how many. */
  const counts = useMemo(() => {
    const all = new Map<SheetPageId, number>();
    for (const { id } of pagesOf(factsOf(layout, take.id, { paper, ...(everyPiece && { everyPiece }) })))
      all.set(id, (all.get(id) ?? 0) + 1);
    return all;
  }, [layout, take, paper, everyPiece]);
  const ids = SHEET_PAGE_IDS.filter((id) => counts.has(id));
  const chosen = ids.filter((id) => !leftOut.has(id));
  const pages = chosen.reduce((sum, id) => sum + (counts.get(id) ?? 0), 0);
  const html = useMemo(
    () =>
      benchSheet(layout, take.id, {
        paper,
        pages: new Set(SHEET_PAGE_IDS.filter((id) => !leftOut.has(id))),
        ...(barMm !== undefined && { barMm }),
        ...(everyPiece && { everyPiece }),
      }),
    [layout, take, paper, leftOut, barMm, everyPiece],
  );
  useLayoutEffect(() => {
    const title = `The sheet as it will be printed, ${pages} ${pages === 1 ? 'page' : 'pages'}`;
    if (pages > 0 && frame.current) showInFrame(frame.current, html, title);
  }, [pages, html]);

  const close = (): void => session.setState({ showsSheet: false });
  const name = `${layout.title} ${take.name}`;
  const save = (): void => {
    download(fileNameOf(name, 'sheet'), html, 'text/html');
    setSaid('Saved.');
  };
  const saveParts = (): void => {
    download(fileNameOf(`${name} ${PAGE_NAMES.parts}`, 'table'), partsCsv(partsListOf(derived)), 'text/csv');
    setSaid('Saved.');
  };
  const saveDrawing = async (view: View, as: 'svg' | 'png'): Promise<void> => {
    const svg = drawingFile(derived, view);
    const file = `${name} ${PAGE_NAMES[view]}`;
    if (as === 'svg') {
      download(fileNameOf(file, 'svg'), svg, 'image/svg+xml');
      setSaid(`Saved at 1 : ${1 / FILE_SCALE}.`);
      return;
    }
    const picture = await pictureOf(svg, DPI);
    if (!picture.ok) return setSaid(`Not saved: ${picture.error}.`);
    download(fileNameOf(file, 'png'), picture.value.png);
    setSaid(`Saved at 1 : ${1 / FILE_SCALE} with ${picture.value.dpi} dots to the inch.`);
  };
  const toggle = (id: SheetPageId): void => {
    const next = new Set(leftOut);
    if (!next.delete(id)) next.add(id);
    setLeftOut(next);
  };

  return (
    <Dialog name="bench-sheet" title={`Bench sheet of ${take.name}`} first=".do" onClose={close}>
      <div className="body">
        <div className="sheet-choices">
          <p className="deeds">
            <button
              type="button"
              className="do"
              aria-disabled={pages === 0}
              onClick={() => pages > 0 && frame.current && printFrame(frame.current)}
            >
              Print…
            </button>
            <button
              type="button"
              className="second"
              aria-disabled={pages === 0}
              onClick={() => pages > 0 && save()}
            >
              Save as HTML
            </button>
            <button type="button" className="second" onClick={saveParts}>
              Parts as CSV
            </button>
          </p>
          <p role="status" className="said">
            {said}
          </p>
          <fieldset>
            <legend>Pages</legend>
            {ids.map((id) => (
              <label key={id} className="tick">
                <input type="checkbox" checked={!leftOut.has(id)} onChange={() => toggle(id)} />
                <span>{PAGE_NAMES[id]}</span>
                <small>{counts.get(id)}</small>
              </label>
            ))}
          </fieldset>
          <label className="tick">
            <input
              type="checkbox"
              checked={everyPiece}
              onChange={({ currentTarget: { checked } }) => setEveryPiece(checked)}
            />
            <span>Cut every piece, also those that are owned</span>
          </label>
          <fieldset className="papers">
            <legend>Paper</legend>
            {(Object.keys(PAPER_NAMES) as Paper[]).map((each) => (
              <label key={each} className="tick">
                <input type="radio" name="paper" checked={paper === each} onChange={() => setPaper(each)} />
                <span>{PAPER_NAMES[each]}</span>
              </label>
            ))}
          </fieldset>
          <div className="bar-row">
            <label htmlFor="bench-sheet-bar">The printed bar of 100 mm measures</label>
            <span className="figure">
              <input
                id="bench-sheet-bar"
                inputMode="decimal"
                value={barText}
                aria-invalid={!bar.ok}
                aria-describedby="bench-sheet-bar-says"
                onChange={({ currentTarget }) => setBarText(currentTarget.value)}
              />{' '}
              mm
            </span>
            <small id="bench-sheet-bar-says">
              {bar.ok
                ? 'Print at 100 %, measure the bar on the strips, type what it measures.'
                : `${bar.error}.`}
            </small>
          </div>
          <section aria-labelledby="bench-sheet-drawings">
            <h3 id="bench-sheet-drawings">Drawings out</h3>
            <ul className="drawings">
              {VIEWS.map((view) => (
                <li key={view}>
                  <span>{PAGE_NAMES[view]}</span>
                  {(['svg', 'png'] as const).map((as) => (
                    <button
                      key={as}
                      type="button"
                      className="second"
                      aria-label={`${PAGE_NAMES[view]} as ${as.toUpperCase()}`}
                      onClick={() => void saveDrawing(view, as)}
                    >
                      {as.toUpperCase()}
                    </button>
                  ))}
                </li>
              ))}
            </ul>
            <small>
              Half the case’s size; PNG with {DPI} dots to the inch. In the SVG, links, leads and names are
              layers of their own.
            </small>
          </section>
        </div>
        <div className="preview">
          {pages === 0 ? (
            <p className="nothing">No page is chosen.</p>
          ) : (
            <div className="paper" ref={frame} />
          )}
        </div>
      </div>
    </Dialog>
  );
}
