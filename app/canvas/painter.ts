import type { Layer } from 'konva/lib/Layer.js';
import { type Box, layOutSheet, viewOf } from '../../src/index.ts';
import { type Cast, castOf, movesOn } from './cast.ts';
import { type Mark, marksBox, marksOf } from './draw/marks.ts';
import type { Context, Paper } from './draw/paper.ts';
import { movingBox, paintMarks, paintMoving, paintStill } from './layers.ts';
import type { Moving, MovingStore, Scene, Size, Viewport } from './model.ts';
import type { Theme } from './theme.ts';

/** What a stage shows. */
export interface Shown {
  readonly scene: Scene;
  readonly viewport: Viewport;
  readonly theme: Theme;
  readonly size: Size;
}

/** The elements and layers that a painter paints on. */
export interface Easel {
  /** Turned about its upright axis when the side changes. */
  readonly turning: HTMLElement;
  /** Moved and scaled as a picture while a gesture zooms or pans. */
  readonly picture: HTMLElement;
  readonly layers: Readonly<Record<'still' | 'moving' | 'marks', Layer>>;
}

/** A moved picture is redrawn when it has rested for so long, ms. */
const REST_MS = 100;

/** A picture moved by more than this share of the stage, or scaled by more, is redrawn at once. */
const FAR = 0.25;
const MUCH = 1.8;

/** Longer than a slow hand takes from one move to the next, ms: marks may change with each. */
const MARKS_REST_MS = 500;

/** One half of the turn from side to side, ms. */
const HALF_TURN_MS = 140;

/** The moving layer's canvas changes its size in steps: each change costs a canvas. */
const STEP_PX = 64;

const ORIGIN: Box = { left: 0, top: 0, right: 0, bottom: 0 };
const NO_FRAME: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };

const downTo = (px: number): number => Math.floor(px / STEP_PX) * STEP_PX;
const upTo = (px: number): number => Math.ceil(px / STEP_PX) * STEP_PX;

const isSame = (a: Viewport, b: Viewport): boolean => a.scale === b.scale && a.x === b.x && a.y === b.y;

/** Whether the still layer looks the same, wherever it lies. */
const isDrawnAlike = (a: Shown, b: Shown): boolean =>
  a.scene.derived === b.scene.derived &&
  a.scene.side === b.scene.side &&
  a.scene.hidden === b.scene.hidden &&
  a.scene.heat === b.scene.heat &&
  a.theme === b.theme &&
  a.size === b.size;

const wantsMotion = (): boolean => !matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Paints the layers of a stage, and repaints of them only what has changed. Knows nothing of React. */
export class Painter {
  #shown: Shown;
  readonly #moving: MovingStore;
  #easel: Easel | null = null;
  /** Where the picture is seen now; differs from what is drawn while a gesture moves it. */
  #seen: Viewport;
  #cast: Cast;
  /** What the cast was made for, when a gesture was followed last. */
  #followed: Moving | null = null;
  /** What a layer's canvas covers of the stage, CSS px; all of it where none is told. */
  readonly #frames = new Map<Layer, Box>();
  /** The marks' canvas covers marks and nothing else. */
  #hasMarksAlone = false;
  #marks: readonly Mark[] = [];
  #marksKey = '';
  #rest: ReturnType<typeof setTimeout> | undefined;
  /** What ends showing layers that rest as bitmaps. */
  #unprint: (() => void)[] = [];
  /** What to show once the case has turned so far that nothing is seen of it. */
  #next: Shown | null = null;

  constructor(shown: Shown, moving: MovingStore) {
    this.#shown = shown;
    this.#seen = shown.viewport;
    this.#moving = moving;
    this.#cast = castOf(shown.scene, moving.get());
  }

  /** Starts to paint; answers with what stops it. */
  hang(easel: Easel): () => void {
    this.#easel = easel;
    // As a property of its own a layer would draw twice at first: its making forgets that it has asked to.
    for (const layer of Object.values(easel.layers)) layer.listening(false);
    // The first picture does without.
    void import('./bitmap-print.ts').then(({ printAtRest }) => {
      if (this.#easel !== easel) return;
      const { still, marks } = easel.layers;
      this.#unprint = [printAtRest(still, 0), printAtRest(marks, MARKS_REST_MS)];
    });
    const unsubscribe = this.#moving.subscribe(() => this.#follow());
    const unwatch = watchPixelRatio((ratio) => this.#sharpen(ratio));
    this.#redraw();
    return () => {
      unsubscribe();
      unwatch();
      for (const end of this.#unprint.splice(0)) end();
      clearTimeout(this.#rest);
      this.#easel = null;
    };
  }

  /**
   * Shows something else: another side by turning the case, if motion is welcome; another viewport as a moved
   * picture, drawn anew about 100 ms after the last one.
   */
  show(shown: Shown): void {
    if (this.#next) {
      this.#next = shown;
      return;
    }
    if (this.#easel && shown.scene.side !== this.#shown.scene.side && wantsMotion()) {
      this.#next = shown;
      this.#turn(this.#easel);
      return;
    }
    const before = this.#shown;
    this.#shown = { ...shown, viewport: before.viewport };
    if (!isDrawnAlike(before, shown)) {
      this.#settle(shown.viewport);
      return;
    }
    const moving = this.#moving.get();
    const marks = this.#easel?.layers.marks;
    if (marks && (this.#countMarks(moving) || shown.scene !== before.scene)) {
      this.#fitMarks(marks, moving);
      marks.batchDraw();
    }
    this.#look(shown.viewport);
  }

  /** Shows another part of the sheet: as a moved picture, until the gesture rests. */
  #look(viewport: Viewport): void {
    if (isSame(viewport, this.#seen)) return;
    clearTimeout(this.#rest);
    if (!this.#easel || this.#isFar(viewport)) {
      this.#settle(viewport);
      return;
    }
    this.#seen = viewport;
    const drawn = this.#shown.viewport;
    const zoom = viewport.scale / drawn.scale;
    const x = viewport.x - drawn.x * zoom;
    const y = viewport.y - drawn.y * zoom;
    this.#easel.picture.style.transform = `translate(${x}px,${y}px) scale(${zoom})`;
    this.#rest = setTimeout(() => this.#settle(this.#seen), REST_MS);
  }

  readonly still = (ctx: Context): void => {
    // Konva draws a layer as it adds it, before anything is known of the others.
    if (this.#easel) paintStill(ctx, this.#paper(), this.#shown.scene, this.#cast);
  };

  readonly moving = (ctx: Context): void => {
    const moving = this.#moving.get();
    if (moving) paintMoving(ctx, this.#paper(), moving, this.#cast);
  };

  readonly marks = (ctx: Context): void =>
    paintMarks(ctx, this.#paper(), this.#shown.scene, this.#moving.get(), this.#cast, this.#marks);

  #paper(): Paper {
    const { scene, viewport, theme, size } = this.#shown;
    const { derived } = scene;
    const sheet = layOutSheet(this.#cast.instead ?? derived, scene.side, viewport.scale, derived);
    const heat = this.#moving.get() ? undefined : scene.heat;
    return { sheet, theme, view: viewOf(viewport, size), hidden: scene.hidden, ...(heat && { heat }) };
  }

  #isFar({ scale, x, y }: Viewport): boolean {
    const { viewport: drawn, size } = this.#shown;
    const zoom = scale / drawn.scale;
    if (zoom > MUCH || zoom < 1 / MUCH) return true;
    if (zoom !== 1) return false;
    return Math.abs(x - drawn.x) > FAR * size.width || Math.abs(y - drawn.y) > FAR * size.height;
  }

  #settle(viewport: Viewport): void {
    clearTimeout(this.#rest);
    this.#seen = viewport;
    this.#shown = { ...this.#shown, viewport };
    if (this.#easel) this.#easel.picture.style.transform = '';
    this.#redraw();
  }

  #redraw(): void {
    const moving = this.#moving.get();
    this.#followed = moving;
    this.#cast = castOf(this.#shown.scene, moving);
    this.#countMarks(moving);
    if (!this.#easel) return;
    this.#fitMoving(this.#easel.layers.moving, moving, false);
    this.#fitMarks(this.#easel.layers.marks, moving);
    for (const layer of Object.values(this.#easel.layers)) this.#place(layer).batchDraw();
  }

  /** Puts the sheet's origin where the viewport has it. */
  #place(layer: Layer): Layer {
    const { x, y } = this.#shown.viewport;
    const { left, top } = this.#frames.get(layer) ?? ORIGIN;
    return layer.position({ x: x - left, y: y - top });
  }

  /**
   * Makes the moving layer's canvas as large as what the gesture paints, and no larger: what a browser needs to
   * show a canvas that has changed goes with its size. Within a gesture it only grows, and without one it is nothing.
   */
  #fitMoving(layer: Layer, moving: Moving | null, grows: boolean): void {
    if (!moving) this.#fit(layer, null, false);
    const box = moving && movingBox(this.#paper(), moving, this.#cast);
    if (box) this.#fit(layer, box, grows);
  }

  /** The marks' canvas is no larger than the marks, unless other things are drawn there. */
  #fitMarks(layer: Layer, moving: Moving | null): void {
    const { selection, starts, focus, lifted, aim, overlay } = this.#shown.scene;
    const hasMore =
      selection.size > 0 ||
      (starts?.length ?? 0) > 0 ||
      (moving ? moving.target !== undefined : Boolean(focus || lifted || aim || overlay));
    const grows = moving !== null && !hasMore && this.#hasMarksAlone;
    this.#fit(layer, hasMore ? this.#paper().view : marksBox(this.#marks), grows);
    this.#hasMarksAlone = !hasMore;
  }

  /** Lets a layer's canvas cover a box of the sheet, as far as that is in sight; null where nothing is drawn. */
  #fit(layer: Layer, box: Box | null, grows: boolean): void {
    const { viewport, size } = this.#shown;
    const known = this.#frames.get(layer);
    const before = (grows && known) || NO_FRAME;
    const frame = box
      ? {
          left: Math.max(0, Math.min(downTo(viewport.x + box.left), before.left)),
          top: Math.max(0, Math.min(downTo(viewport.y + box.top), before.top)),
          right: Math.min(size.width, Math.max(upTo(viewport.x + box.right), before.right)),
          bottom: Math.min(size.height, Math.max(upTo(viewport.y + box.bottom), before.bottom)),
        }
      : ORIGIN;
    const width = Math.max(1, frame.right - frame.left);
    const height = Math.max(1, frame.bottom - frame.top);
    const canvas = layer.getCanvas();
    const ratio = canvas.getPixelRatio();
    const isAbout = (px: number, wanted: number): boolean => Math.abs(px - wanted * ratio) < 1;
    const fits = isAbout(canvas.getWidth(), width) && isAbout(canvas.getHeight(), height);
    if (fits && frame.left === (known?.left ?? 0) && frame.top === (known?.top ?? 0)) return;
    this.#frames.set(layer, frame);
    canvas.setSize(width, height);
    canvas._canvas.style.left = `${frame.left}px`;
    canvas._canvas.style.top = `${frame.top}px`;
    this.#place(layer);
  }

  /** Follows a gesture: the still layer changes only where it starts, ends or moves something else. */
  #follow(): void {
    const moving = this.#moving.get();
    const goesOn = movesOn(this.#followed, moving);
    const cast = goesOn ? this.#cast : castOf(this.#shown.scene, moving);
    const starts = this.#followed === null;
    this.#followed = moving;
    const stillChanged = cast.key !== this.#cast.key;
    this.#cast = cast;
    const marksChanged = this.#countMarks(moving);
    const layers = this.#easel?.layers;
    if (layers) this.#fitMoving(layers.moving, moving, !starts);
    if (layers && marksChanged) this.#fitMarks(layers.marks, moving);
    // Moves come once a frame already: waiting for the next frame would show each one late and cost a frame more.
    if (stillChanged) layers?.still.drawScene();
    if (marksChanged) layers?.marks.drawScene();
    layers?.moving.drawScene();
  }

  /** Whether the layer of marks looks different now. */
  #countMarks(moving: Moving | null): boolean {
    const { scene } = this.#shown;
    const { derived } = moving ?? scene;
    const notes = moving?.pressing ?? scene.notes;
    const still = notes.filter((note) => !this.#cast.concerns(note));
    this.#marks = marksOf(this.#paper().sheet, derived, still, moving ? null : scene.focus);
    const key = JSON.stringify([this.#marks, moving?.target, moving === null, this.#cast.key]);
    const changed = key !== this.#marksKey;
    this.#marksKey = key;
    return changed;
  }

  #sharpen(ratio: number): void {
    if (!this.#easel) return;
    for (const layer of Object.values(this.#easel.layers)) layer.getCanvas().setPixelRatio(ratio);
    this.#redraw();
  }

  #turn({ turning }: Easel): void {
    const { scene, viewport, size } = this.#shown;
    const { width } = layOutSheet(scene.derived, scene.side, viewport.scale);
    const middle = Math.min(size.width, Math.max(0, viewport.x + width / 2));
    turning.style.transformOrigin = `${middle}px 50%`;
    const squeeze = (frames: [number, number], easing: string): Animation =>
      turning.animate(
        frames.map((x) => ({ transform: `scaleX(${x})` })),
        { duration: HALF_TURN_MS, easing, fill: 'forwards' },
      );
    const away = squeeze([1, 0], 'ease-in');
    away.onfinish = (): void => {
      if (this.#next) {
        this.#shown = this.#next;
        this.#next = null;
        this.#settle(this.#shown.viewport);
      }
      const back = squeeze([0, 1], 'ease-out');
      back.onfinish = (): void => back.cancel();
      away.cancel();
    };
  }
}

/** Calls back when the screen's pixel ratio changes: another screen, or the browser's own zoom. */
function watchPixelRatio(changed: (ratio: number) => void): () => void {
  let query: MediaQueryList;
  const watch = (): void => {
    query = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    query.addEventListener('change', tell, { once: true });
  };
  const tell = (): void => {
    changed(devicePixelRatio);
    watch();
  };
  watch();
  return () => query.removeEventListener('change', tell);
}
