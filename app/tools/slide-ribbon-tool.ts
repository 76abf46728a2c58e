import { type Edit, type LaidRibbon, type PlacedHeader, seatPlaces } from '../../src/index.ts';
import { headerPoint } from '../canvas/sheet.ts';
import { type Editor, shownAnalysis, shownTake } from '../editor.ts';
import { sheetNow, toSheet } from '../store/view.ts';
import type { Point, Pointer, Tool } from './pointer.ts';

/** A connector seated on a module. */
interface Seated {
  readonly connector: number;
  readonly header: PlacedHeader;
}

type State =
  | { readonly at: 'idle' }
  | {
      readonly at: 'sliding';
      readonly ribbon: LaidRibbon;
      readonly lead: Seated;
      readonly stops: readonly PlacedHeader[];
      readonly from: Pointer;
    };

export function seatedOnModules({ uses }: LaidRibbon): Seated[] {
  return uses.flatMap((joints, connector): Seated[] => {
    const joint = joints.find(({ on }) => on.type === 'header' && on.header.owner.type === 'module');
    return joint?.on.type === 'header' ? [{ connector, header: joint.on.header }] : [];
  });
}

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

function nearest<T>(things: readonly T[], offOf: (thing: T) => number): T | undefined {
  const offs = things.map((thing) => ({ thing, off: offOf(thing) }));
  return offs.sort((a, b) => a.off - b.off)[0]?.thing;
}

/** Slides a whole ribbon from headers to headers: the seat nearest to where it is held leads. */
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
      const lead = nearest(seated, ({ header }) => distance(headerPoint(sheet, header), at));
      if (!lead) return;
      const free = seatPlaces(derived, ribbon, lead.connector);
      const stops = [
        ...seated.map(({ header }) => header),
        ...free.flatMap((on) => (on.type === 'header' ? [on.header] : [])),
      ];
      gestures.begin(shownTake(editor).id, `slide ${ribbon.name}`);
      state = { at: 'sliding', ribbon, lead, stops, from };
    },
    move(pointer) {
      if (state.at !== 'sliding') return;
      const { ribbon, lead, stops, from } = state;
      const sheet = sheetNow(editor);
      const start = headerPoint(sheet, lead.header);
      const wanted = { x: start.x + pointer.x - from.x, y: start.y + pointer.y - from.y };
      const stop = nearest(stops, (header) => distance(headerPoint(sheet, header), wanted));
      gestures.preview(stop && stop !== lead.header ? onto(shownTake(editor).id, ribbon, lead, stop) : null);
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

const onto = (take: string, { id }: LaidRibbon, { connector }: Seated, stop: PlacedHeader): Edit => ({
  type: 'slide-ribbon',
  take,
  ribbon: id,
  to: { connector, on: { module: stop.owner.id, header: stop.id } },
});
