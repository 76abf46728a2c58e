import {
  type DerivedTake,
  type Edit,
  headerPoint,
  type LaidRibbon,
  type PlacedHeader,
  seatPlaces,
} from '../../src/index.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { sheetNow, toSheet } from '../store/view.ts';
import type { Point, Pointer, Tool } from './pointer.ts';

/** A connector seated on a module. */
interface Seated {
  readonly connector: number;
  readonly header: PlacedHeader;
}

/** A seat and the header that it could be brought to, with the rest of the ribbon. */
interface Lay {
  readonly lead: Seated;
  readonly stop: PlacedHeader;
}

type State =
  | { readonly at: 'idle' }
  | {
      readonly at: 'sliding';
      readonly ribbon: LaidRibbon;
      /** Every way to lay it again, the seats nearest to the hand first. */
      readonly lays: readonly Lay[];
      readonly from: Pointer;
    };

export function seatedOnModules({ uses }: LaidRibbon): Seated[] {
  return uses.flatMap((joints, connector): Seated[] => {
    const joint = joints.find(({ on }) => on.type === 'header' && on.header.owner.type === 'module');
    return joint?.on.type === 'header' ? [{ connector, header: joint.on.header }] : [];
  });
}

/** Ways that differ by less are the same; the first one counts, px. */
const SAME_PX = 0.01;

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Every seat brought to each header that is its ribbon's own or free. */
function laysOf(take: DerivedTake, ribbon: LaidRibbon, seated: readonly Seated[]): Lay[] {
  const own = seated.map(({ header }) => header);
  return seated.flatMap((lead) => {
    const free = seatPlaces(take, ribbon, lead.connector);
    const stops = [...own, ...free.flatMap((on) => (on.type === 'header' ? [on.header] : []))];
    return stops.map((stop): Lay => ({ lead, stop }));
  });
}

/** Slides a whole ribbon from headers to headers: to where some seat lands that comes nearest to what the hand did. */
export function slideRibbonTool(editor: Editor, ribbonId: string): Tool {
  const { gestures } = editor;
  let state: State = { at: 'idle' };

  return {
    down(from) {
      const { derived } = shownAnalysis(editor);
      const ribbon = derived.wiring.ribbonById.get(ribbonId);
      if (!ribbon || ribbon.ribbon.locked) return;
      const [sheet, at] = [sheetNow(editor), toSheet(editor, from)];
      const seated = seatedOnModules(ribbon);
      if (seated.length === 0) return;
      const off = ({ header }: Seated): number => distance(headerPoint(sheet, header), at);
      const lays = laysOf(
        derived,
        ribbon,
        seated.toSorted((a, b) => off(a) - off(b)),
      );
      gestures.begin(shownTake(editor).id, `slide ${ribbon.name}`);
      state = { at: 'sliding', ribbon, lays, from };
    },
    move(pointer) {
      if (state.at !== 'sliding') return;
      const { ribbon, lays, from } = state;
      const sheet = sheetNow(editor);
      let [best, least]: [Lay | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
      for (const lay of lays) {
        const [a, b] = [headerPoint(sheet, lay.lead.header), headerPoint(sheet, lay.stop)];
        const off = distance({ x: a.x + pointer.x - from.x, y: a.y + pointer.y - from.y }, b);
        if (off < least - SAME_PX) [best, least] = [lay, off];
      }
      const isElsewhere = best && best.stop !== best.lead.header;
      gestures.preview(best && isElsewhere ? onto(shownTake(editor).id, ribbon, best) : null);
    },
    up() {
      if (state.at === 'sliding') gestures.commit();
      state = { at: 'idle' };
    },
    cancel() {
      if (state.at === 'sliding') gestures.cancel();
      state = { at: 'idle' };
    },
  };
}

const onto = (take: string, { id }: LaidRibbon, { lead, stop }: Lay): Edit => ({
  type: 'slide-ribbon',
  take,
  ribbon: id,
  to: { connector: lead.connector, on: { module: stop.owner.id, header: stop.id } },
});
