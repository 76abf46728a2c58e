import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import {
  type Edges,
  type Guide,
  measuredFrom,
  type PanelPlace,
  panelSizeMm,
  type Side,
  snapHeader,
} from '../../src/index.ts';
import { duplicate } from '../actions/duplicate.ts';
import { remove } from '../actions/remove.ts';
import { isKeyOf } from '../actions/shortcuts.ts';
import { undo } from '../actions/undo.ts';
import { useSession } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { type Frame, frameOf } from './drawing-frame.ts';
import { placeWords } from './edge-words.ts';
import { type HeaderDraft, placeOf } from './header-draft.ts';
import { HeaderShape, halfOf } from './header-shape.tsx';
import { Panel, Rulers } from './panel-ground.tsx';
import type { HeaderHand } from './use-header-hand.ts';

interface Props {
  readonly headers: readonly HeaderDraft[];
  readonly edges: Edges;
  readonly panel: { readonly widthHp: number; readonly heightU: number };
  readonly side: Side;
  readonly zoom: number;
  readonly snaps: boolean;
  readonly chosen: string | null;
  readonly hand: HeaderHand;
  readonly pinsOf: (bus: string) => number;
  readonly nameOf: (header: HeaderDraft) => string;
  /** Under the headers. */
  readonly under?: (frame: Frame) => ReactNode;
  /** Over them, when something else is in hand. */
  readonly over?: ((frame: Frame) => ReactNode) | undefined;
}

/** A header is held to a line from so near, px and at most mm. */
const REACH_PX = 7;
const MOST_REACH_MM = 2;
/** A hand that rests on a header moves it no less than this, px. */
const SLACK_PX = 3;
/** A finger takes hold of so much, px. */
const HOLD_PX = 44;

/** Steps of the arrow keys, mm: with Alt, alone, with Shift. */
const NUDGES_MM = { fine: 0.1, plain: 0.5, pin: 2.54 } as const;

const ARROWS: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

const tidy = (mm: number, step = 0.001): number => Math.round(Math.round(mm / step) * step * 1e6) / 1e6;

/** Where an arrow key leads, in mm as the document has them; what is right depends on the side that is looked at. */
export function nudged(
  place: PanelPlace,
  side: Side,
  { key, altKey, shiftKey }: Pick<KeyboardEvent, 'key' | 'altKey' | 'shiftKey'>,
): PanelPlace | undefined {
  const arrow = ARROWS[key];
  if (!arrow) return undefined;
  const step = altKey ? NUDGES_MM.fine : shiftKey ? NUDGES_MM.pin : NUDGES_MM.plain;
  const [right, up] = arrow;
  return {
    xMm: tidy(place.xMm + (side === 'rear' ? -right : right) * step),
    yMm: tidy(place.yMm + up * step),
  };
}

interface Drag {
  readonly pointer: number;
  readonly key: string;
  readonly from: { readonly x: number; readonly y: number };
  readonly place: PanelPlace;
  isMoving: boolean;
}

/** The room that the drawing has, px; it follows the window. */
function useBox() {
  const ref = useRef<HTMLDivElement>(null);
  const [box, setBox] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const room = ref.current;
    if (!room) return;
    const measure = (): void => setBox({ width: room.clientWidth, height: room.clientHeight });
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(room);
    return () => observer.disconnect();
  }, []);
  return [ref, box] as const;
}

/**
 * What lies in the drawing to be dragged has a finger to itself; elsewhere the page scrolls. `touch-action` would say
 * so, but browsers do not heed it on parts of a drawing.
 */
function useFingers() {
  const ref = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => {
    const drawing = ref.current;
    const hold = (event: TouchEvent): void => {
      if (event.target instanceof Element && event.target.closest('.header, .hands')) event.preventDefault();
    };
    drawing?.addEventListener('touchstart', hold, { passive: false });
    return () => drawing?.removeEventListener('touchstart', hold);
  }, []);
  return ref;
}

/** Distances of the chosen header from the edges that places are measured from. */
function Dimensions({
  frame,
  edges,
  place,
}: {
  readonly frame: Frame;
  readonly edges: Edges;
  readonly place: PanelPlace;
}) {
  const { size } = frame;
  const from = frame.at({
    xMm: edges.across === 'front-left' ? 0 : size.widthMm,
    yMm: edges.up === 'bottom' ? 0 : size.heightMm,
  });
  const at = frame.at(place);
  const { xMm, yMm } = measuredFrom(edges, size, place);
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of a drawing takes no focus.
    <g className="dimensions" aria-hidden="true">
      <path d={`M${from.x} ${at.y}H${at.x}M${at.x} ${from.y}V${at.y}`} />
      <text x={(from.x + at.x) / 2} y={at.y - 5}>
        {figure(xMm, 2)}
      </text>
      <text className="upright" x={at.x + 5} y={(from.y + at.y) / 2 + 4}>
        {figure(yMm, 2)}
      </text>
    </g>
  );
}

const GuideLine = ({ frame, guide: { along, atMm } }: { readonly frame: Frame; readonly guide: Guide }) => {
  const { widthMm, heightMm } = frame.size;
  const from = frame.at(along === 'x' ? { xMm: atMm, yMm: 0 } : { xMm: 0, yMm: atMm });
  const to = frame.at(along === 'x' ? { xMm: atMm, yMm: heightMm } : { xMm: widthMm, yMm: atMm });
  const d = `M${from.x} ${from.y}L${to.x} ${to.y}`;
  return (
    <>
      <path className="guide under" d={d} />
      <path className="guide" d={d} />
    </>
  );
};

/** The panel to scale, from the rear or the front, with headers that are taken hold of, dragged and nudged. */
export function HeaderDrawing({
  headers,
  edges,
  panel,
  side,
  zoom,
  snaps,
  chosen,
  hand,
  pinsOf,
  nameOf,
  under,
  over,
}: Props) {
  const keys = useSession((session) => session.keys);
  const [room, box] = useBox();
  const drawing = useFingers();
  const [guides, setGuides] = useState<readonly Guide[]>([]);
  const drag = useRef<Drag | null>(null);
  const size = panelSizeMm(panel.widthHp, panel.heightU);
  const frame = frameOf(size, side, box, zoom);
  const placed = headers.flatMap((header) => {
    const place = placeOf(header, edges, size);
    return place ? [{ header, place }] : [];
  });
  const chosenOne = placed.find(({ header }) => header.key === chosen);

  const letGo = (): void => {
    drag.current = null;
    setGuides([]);
  };
  const onPointerDown = (event: PointerEvent<SVGGElement>, key: string, place: PanelPlace): void => {
    if (event.button !== 0 || drag.current) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.focus({ preventScroll: true });
    hand.choose(key);
    const from = { x: event.clientX, y: event.clientY };
    drag.current = { pointer: event.pointerId, key, from, place, isMoving: false };
  };
  const onPointerMove = ({ pointerId, clientX, clientY, altKey }: PointerEvent): void => {
    const held = drag.current;
    if (held?.pointer !== pointerId) return;
    const [dx, dy] = [clientX - held.from.x, clientY - held.from.y];
    if (!held.isMoving && Math.hypot(dx, dy) < SLACK_PX) return;
    if (!held.isMoving) hand.begin();
    held.isMoving = true;
    const raw = {
      xMm: held.place.xMm + (side === 'rear' ? -dx : dx) / frame.scale,
      yMm: held.place.yMm - dy / frame.scale,
    };
    if (!snaps || altKey) {
      setGuides([]);
      hand.move(held.key, { xMm: tidy(raw.xMm, 0.1), yMm: tidy(raw.yMm, 0.1) });
      return;
    }
    const others = placed.flatMap(({ header, place }) => (header.key === held.key ? [] : [place]));
    const reach = Math.min(MOST_REACH_MM, REACH_PX / frame.scale);
    const { guides: lines, ...place } = snapHeader(raw, others, size, reach);
    setGuides(lines);
    hand.move(held.key, place);
  };
  const onPointerCancel = (): void => {
    if (drag.current?.isMoving) hand.cancel();
    letGo();
  };
  const onKeyDown = (event: KeyboardEvent, key: string, place: PanelPlace): void => {
    const { ctrlKey, metaKey } = event;
    const mod = ctrlKey || metaKey;
    const to = mod ? undefined : nudged(place, side, event);
    if (event.key === 'Escape' && drag.current?.isMoving) onPointerCancel();
    else if (to) {
      hand.begin();
      hand.move(key, to);
    } else if (isKeyOf(remove, event, keys)) hand.remove(key);
    else if (isKeyOf(duplicate, event, keys)) hand.duplicate(key);
    else if (isKeyOf(undo, event, keys)) hand.stepBack();
    else if (event.key === 'Enter' || event.key === ' ') hand.choose(key);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const coarse = matchMedia('(pointer: coarse)').matches;
  const hold = coarse ? HOLD_PX : 24;
  return (
    <div className="drawing-room" ref={room}>
      {/* biome-ignore lint/a11y/useSemanticElements: a set of fields cannot be a drawing. */}
      <svg
        ref={drawing}
        className={`header-drawing ${side}`}
        role="group"
        aria-label={`The module from the ${side}, to scale`}
        width={frame.width}
        height={frame.height}
        onPointerDown={() => hand.choose(null)}
      >
        <Panel frame={frame} {...panel} />
        {under?.(frame)}
        <Rulers frame={frame} edges={edges} {...panel} />
        <path
          className="middle"
          d={`M${frame.at({ xMm: size.widthMm / 2, yMm: 0 }).x} ${frame.top}V${frame.top + size.heightMm * frame.scale}`}
        />
        {placed.map(({ header, place }) => {
          const { key } = header;
          const at = frame.at(place);
          const pins = pinsOf(header.bus);
          const half = halfOf(header, pins);
          const width = Math.max(hold, 2 * half.xMm * frame.scale + 4);
          const height = Math.max(hold, 2 * half.yMm * frame.scale + 4);
          return (
            // biome-ignore lint/a11y/useSemanticElements: a button of HTML cannot lie in a drawing.
            <g
              key={key}
              className={key === chosen ? 'header chosen' : 'header'}
              role="button"
              tabIndex={0}
              data-header={key}
              aria-pressed={key === chosen}
              aria-label={`${nameOf(header)}, ${placeWords(edges, size, place)}`}
              onPointerDown={(event) => onPointerDown(event, key, place)}
              onPointerMove={onPointerMove}
              onPointerUp={letGo}
              onPointerCancel={onPointerCancel}
              onFocus={() => hand.choose(key)}
              onKeyDown={(event) => onKeyDown(event, key, place)}
            >
              <rect
                className="hold"
                x={at.x - width / 2}
                y={at.y - height / 2}
                width={width}
                height={height}
              />
              <HeaderShape header={header} pins={pins} at={at} scale={frame.scale} side={side} />
              <text className="name" x={at.x} y={at.y - half.yMm * frame.scale - 6}>
                {nameOf(header)}
              </text>
            </g>
          );
        })}
        {chosenOne && <Dimensions frame={frame} edges={edges} place={chosenOne.place} />}
        {guides.map((guide) => (
          <GuideLine key={`${guide.along} ${guide.atMm}`} frame={frame} guide={guide} />
        ))}
        {over?.(frame)}
      </svg>
    </div>
  );
}
