import { shownAnalysis } from '../../../app/editor.ts';
import { selectionOf } from '../../../app/store/selection.ts';
import { sheetNow, viewportNow } from '../../../app/store/view.ts';
import type { Point } from '../../../app/tools/pointer.ts';
import { runOf } from '../../../src/drawing/runs.ts';
import { headerPoint } from '../../../src/drawing/sheet.ts';
import { demoLayout } from '../../../src/layout/demo.ts';
import type { Layout, SeatedOn } from '../../../src/layout/layout.ts';
import { Driver } from '../driver.ts';

/** The demo's first take without some of its ribbons. */
export function demoWithout(...ribbons: string[]): Layout {
  const demo = demoLayout();
  const takes = demo.takes.map((take) => ({
    ...take,
    ribbons: take.ribbons.filter(({ id }) => !ribbons.includes(id)),
  }));
  return { ...demo, takes };
}

/** An editor with one ribbon selected, and where its parts are on the stage. */
export function withRibbon(id: string, layout = demoLayout()) {
  const driver = new Driver(layout);
  const { editor } = driver;
  editor.session.setState({ selection: selectionOf('ribbon', [id]) });
  const onStage = ({ x, y }: Point): Point => {
    const viewport = viewportNow(editor);
    return { x: viewport.x + x, y: viewport.y + y };
  };
  const knots = () => {
    const { derived } = shownAnalysis(editor);
    const ribbon = derived.wiring.ribbonById.get(id);
    const run = ribbon && runOf(sheetNow(editor), derived, ribbon);
    if (!run) throw new Error(`${id} is not drawn`);
    return run.knots;
  };
  return {
    driver,
    editor,
    spoken: () => editor.session.getState().spoken,
    chosen: () => editor.session.getState().connector,
    /** The middle of a connector. */
    connector(connector: number): Point {
      const knot = knots().find((one) => one.connector === connector);
      if (!knot) throw new Error(`no connector ${connector}`);
      return onStage(knot);
    },
    /** A place on the band half way between two connectors. */
    band(a: number, b: number): Point {
      const [p, q] = [this.connector(a), this.connector(b)];
      return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
    },
    header(module: string, header: string): Point {
      const { moduleById } = shownAnalysis(editor).derived.places;
      const found = moduleById.get(module)?.headers.find((one) => one.id === header);
      if (!found) throw new Error(`no header ${module} ${header}`);
      return onStage(headerPoint(sheetNow(editor), found));
    },
    /** What each connector sits on in the document, or as a running gesture shows it. */
    seats(isShown = false): Record<number, SeatedOn> {
      const take = (isShown && editor.gestures.get()?.derived.take) || driver.take;
      const ribbon = take.ribbons.find((one) => one.id === id);
      return Object.fromEntries(ribbon?.seats.map(({ connector, on }) => [connector, on]) ?? []);
    },
  };
}

export const on = (module: string, header = 'shore'): SeatedOn => ({ module, header });
