import { isDeepStrictEqual } from 'node:util';
import { vi } from 'vitest';
import { start } from '../../app/actions/action.ts';
import { actions } from '../../app/actions/index.ts';
import { showTake } from '../../app/actions/show-take.ts';
import { castOf } from '../../app/canvas/cast.ts';
import { headerBox } from '../../app/canvas/draw/headers.ts';
import { marksOf } from '../../app/canvas/draw/marks.ts';
import type { Paper } from '../../app/canvas/draw/paper.ts';
import { paintMarks, paintMoving, paintStill } from '../../app/canvas/layers.ts';
import { type Scene, selectionKey } from '../../app/canvas/model.ts';
import { THEMES } from '../../app/canvas/theme.ts';
import { shownAnalysis } from '../../app/editor.ts';
import { startAiming } from '../../app/store/aim.ts';
import { startAnnouncer } from '../../app/store/announcer.ts';
import { layersOf, toggleLayer } from '../../app/store/layer-list.ts';
import { sheetNow, viewportNow } from '../../app/store/view.ts';
import { berthPoint, berthsThat } from '../../app/tools/berths.ts';
import { createListKeys } from '../../app/tools/list-keys.ts';
import { markStarts } from '../../app/tools/mark-starts.ts';
import type { Point, Pointer } from '../../app/tools/pointer.ts';
import { createTrayDrag } from '../../app/tools/tray-drag.ts';
import { runOf } from '../../src/drawing/runs.ts';
import { boardBox, layOutSheet, moduleBox, viewOf } from '../../src/drawing/sheet.ts';
import { checkTake, deriveTake, type History, isTaken, type Layout, mendsOf, undo } from '../../src/index.ts';
import { openDocument } from '../../src/layout/open.ts';
import { editFrom } from '../edit/any-edit.ts';
import { fakeContext } from './canvas/fake-context.ts';
import { Driver } from './driver.ts';

/** Numbers that one step makes its choices from, each below 1,000. */
export type Draws = readonly number[];

const KINDS = ['mouse', 'touch', 'pen'] as const;
const ARROWS = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'] as const;
const LIST_KEYS = [...ARROWS, ...ARROWS, 'Enter', 'Enter', ' ', 'Escape'] as const;

/** What is wrong with an editor that rests, in words; nothing where all is well. */
export type Trouble = string | undefined;

/**
 * Does at random what hands do: presses, drags, taps, keys, the tray, actions, remedies, and whatever comes between. Each
 * step follows from its draws alone, so that a walk can be walked again.
 */
export class Monkey {
  readonly driver: Driver;
  readonly first: Layout;
  /** What was done, in words. */
  readonly trail: string[] = [];
  readonly #keys;
  readonly #tray;
  #draws: Draws = [];
  #at = 0;

  constructor(layout: Layout) {
    this.driver = new Driver(layout);
    const { editor, toolbox } = this.driver;
    this.first = editor.layouts.layout();
    this.#keys = createListKeys(editor);
    startAnnouncer(editor);
    startAiming(editor);
    markStarts(editor);
    this.#tray = createTrayDrag<Pointer>(
      editor,
      toolbox,
      (pointer) => pointer,
      ({ y }) => y < editor.session.getState().stage.height,
      () => {},
    );
  }

  /** One thing that a user does from beginning to end. */
  async step(draws: Draws): Promise<void> {
    this.#draws = draws;
    this.#at = 0;
    const deeds = [
      () => this.#gesture(),
      () => this.#gesture(),
      () => this.#gesture(),
      () => this.#tap(),
      () => this.#tap(),
      () => this.#pressKeys(),
      () => this.#fromTray(),
      () => this.#act(),
      () => this.#act(),
      () => this.#mend(),
      () => this.#editPanel(),
      () => this.#hide(),
      () => this.#look(),
    ];
    (deeds[this.#below(deeds.length)] as () => void)();
    await this.#settle();
  }

  /** Everything that must hold whenever the hands are off. */
  trouble(): Trouble {
    const { editor } = this.driver;
    const { history } = editor.layouts.store.getState();
    const { present } = history;
    const isHeld = editor.session.getState().inHand !== null;
    if (!isHeld && (history.gesture || editor.gestures.store.getState().running)) return 'a gesture goes on';
    if (!isHeld && editor.hints.getState().hint) return 'a card stands beside the hand';
    const opened = openDocument(structuredClone(present));
    if (!opened.ok) return `the layout cannot be opened again: ${JSON.stringify(opened.error)}`;
    const { derived, notes } = shownAnalysis(editor);
    const fresh = structuredClone({ kit: present.kit, take: derived.take });
    if (!isDeepStrictEqual(notes, checkTake(deriveTake(fresh.kit, fresh.take))))
      return 'notes differ from those of the same document read afresh';
    this.#paint();
    if (undoAll(history) !== this.first) return 'undo of everything does not lead back';
    return undefined;
  }

  /** A number below a bound. */
  #below(bound: number): number {
    const draw = this.#draws[this.#at++ % this.#draws.length] ?? 0;
    return (draw + 7 * Math.floor(this.#at / this.#draws.length)) % bound;
  }

  #of<T>(list: readonly T[]): T | undefined {
    return list[this.#below(Math.max(1, list.length))];
  }

  #note(words: string): void {
    this.trail.push(words);
  }

  /** A point of the stage, mostly on something that can be taken hold of. */
  #point(): Point {
    const { editor } = this.driver;
    const { derived, notes } = shownAnalysis(editor);
    const sheet = sheetNow(editor);
    const { x, y } = viewportNow(editor);
    const middle = (box: { left: number; right: number; top: number; bottom: number } | undefined) =>
      box && { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
    const spots = [
      () => this.#of(derived.places.modules.map((placed) => moduleBox(sheet, placed))),
      () =>
        this.#of(
          derived.places.modules.flatMap(({ headers }) => headers).map((header) => headerBox(sheet, header)),
        ),
      () =>
        this.#of(
          derived.places.boards.flatMap(({ headers }) => headers).map((header) => headerBox(sheet, header)),
        ),
      () => this.#of(derived.places.boards.map((board) => boardBox(sheet, board))),
    ];
    const knot = (): Point | undefined => {
      const ribbon = this.#of(derived.wiring.ribbons);
      const run = ribbon && runOf(sheet, derived, ribbon);
      return run && this.#of(run.knots);
    };
    const ends = (): Point | undefined => {
      const row = this.#of(sheet.rows);
      const mm = row ? row.placed.widthMm : 0;
      return row && { x: row.originX + row.stepX * mm, y: (row.top + row.bottom) / 2 };
    };
    const mark = (): Point | undefined => this.#of(marksOf(sheet, derived, notes, null));
    const anywhere = (): Point => ({ x: 1.5 * this.#below(1000) - x, y: this.#below(1000) - y });
    const make = this.#of([
      ...spots.map((spot) => () => middle(spot())),
      knot,
      knot,
      ends,
      mark,
      anywhere,
    ] as const);
    const found = make?.() ?? anywhere();
    const off = { x: this.#below(13) - 6, y: this.#below(13) - 6 };
    return { x: x + found.x + off.x, y: y + found.y + off.y };
  }

  /** A place on something that must be selected or free before it can be taken hold of. */
  #grip(): Point | undefined {
    const { editor } = this.driver;
    const { session } = editor;
    const onStage = (point: Point | undefined): Point | undefined => {
      const { x, y } = viewportNow(editor);
      return point && { x: x + point.x, y: y + point.y };
    };
    const { derived } = shownAnalysis(editor);
    const grips = [
      (): Point | undefined => {
        const ribbon = this.#of(derived.wiring.ribbons);
        if (!ribbon) return undefined;
        session.setState({
          side: 'rear',
          selection: new Set([selectionKey('ribbon', ribbon.id)]),
          connector: null,
        });
        const knots = runOf(sheetNow(editor), derived, ribbon)?.knots ?? [];
        const [a, b] = [this.#of(knots), this.#of(knots)];
        return a && b && onStage({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
      },
      (): Point | undefined => {
        session.setState({ side: 'rear' });
        const free = this.#of(berthsThat(editor, ({ on }) => !isTaken(derived, on)));
        return free && onStage(berthPoint(editor, free));
      },
      (): Point | undefined => {
        const board = this.#of(derived.places.boards);
        if (!board) return undefined;
        session.setState({ side: 'rear', selection: new Set([selectionKey('board', board.id)]) });
        const { left, top } = boardBox(sheetNow(editor), board);
        return onStage({ x: left + 6, y: top + 6 });
      },
    ];
    const at = this.#below(2 * grips.length);
    return grips[at]?.();
  }

  #hand(): Partial<Pointer> {
    const kind = this.#of(KINDS) ?? 'mouse';
    const mood = this.#below(8);
    return {
      id: 1 + this.#below(2),
      kind,
      button: mood === 7 && kind === 'mouse' ? 1 : 0,
      shift: mood === 1,
      alt: mood === 2,
      mod: mood === 3,
    };
  }

  #tap(): void {
    const at = this.#point();
    const hand = this.#hand();
    this.#note(`tap ${JSON.stringify(at)} ${JSON.stringify(hand)}`);
    this.driver.with(hand).hover(at).click(at);
    if (this.#below(3) === 0) this.driver.click(at);
    if (this.#below(3) === 0) this.driver.clock.pass(1000);
  }

  /** A press that goes on over other things, in the middle of which anything may happen. */
  #gesture(): void {
    const { driver } = this;
    const hand = this.#hand();
    const from = this.#grip() ?? this.#point();
    this.#note(`press ${JSON.stringify(from)} ${JSON.stringify(hand)}`);
    driver.with(hand).hover(from).down(from);
    if (hand.kind === 'touch' && this.#below(2) === 0) driver.clock.pass(500);
    let at = from;
    for (let leg = this.#below(4); leg >= 0; leg--) {
      const to = this.#below(4) === 0 ? { x: at.x + this.#below(60) - 30, y: at.y } : this.#point();
      driver.move(to.x - at.x, to.y - at.y);
      at = to;
      this.#note(`to ${JSON.stringify(to)}`);
      this.#paint();
      if (this.#below(5) === 0) this.#disturb(at);
    }
    if (this.#below(6) === 0) {
      this.#note('cancel');
      driver.cancel();
    }
    this.#note('let go');
    driver.up();
    driver.with({ id: 1 });
    driver.toolbox.leave();
  }

  /** What comes between a press and its end. */
  #disturb(at: Point): void {
    const { editor, toolbox } = this.driver;
    const of = (id: string) => actions.find((action) => action.id === id);
    const deeds: Readonly<Record<string, () => void>> = {
      cancel: () => toolbox.cancel(),
      leave: () => toolbox.leave(),
      'press s': () => toolbox.press('s'),
      'press c': () => toolbox.press('c'),
      'another finger': () => {
        const finger = { id: 9, kind: 'touch', button: 0, shift: false, alt: false, mod: false } as const;
        toolbox.down({ ...finger, x: at.x + 90, y: at.y });
        toolbox.move({ ...finger, x: at.x + 140, y: at.y + 20 });
        toolbox.up({ ...finger, x: at.x + 140, y: at.y + 20 });
      },
      // By key or button, and past every guard: by another finger, or by a voice.
      undo: () => start(editor, of('undo') as (typeof actions)[number]),
      'undo regardless': () => editor.layouts.undo(),
      'redo regardless': () => editor.layouts.redo(),
      turn: () => of('turn')?.run(editor),
      remove: () => start(editor, of('remove') as (typeof actions)[number]),
      'next take': () => this.#nextTake(),
      edit: () => this.#editPanel(),
      resize: () => this.#resize(),
      wheel: () => toolbox.wheel({ ...at, dx: 0, dy: 120, shift: false, mod: true }),
      'time passes': () => this.driver.clock.pass(600),
    };
    const [name, deed] = this.#of(Object.entries(deeds)) ?? ['', () => {}];
    this.#note(`meanwhile ${name}`);
    deed();
  }

  #nextTake(): void {
    const { editor } = this.driver;
    const { takes } = editor.layouts.layout();
    const take = this.#of(takes);
    if (take) showTake(editor, take.id);
  }

  #resize(): void {
    const { session } = this.driver.editor;
    session.setState({
      stage: { width: 320 + this.#below(1000), height: 300 + this.#below(700), text: 1 + this.#below(2) },
    });
  }

  #pressKeys(): void {
    const { editor } = this.driver;
    const { modules } = editor.layouts.layout().takes.find(({ id }) => id === this.driver.take.id) ?? {};
    const module = this.#of(modules ?? []);
    const ribbon = this.#of(this.driver.take.ribbons);
    if (this.#below(2) === 0 && module) editor.session.setState({ cursor: module.id });
    else if (ribbon)
      editor.session.setState({ selection: new Set([selectionKey('ribbon', ribbon.id)]), connector: null });
    for (let n = this.#below(8); n >= 0; n--) {
      const key = this.#of(LIST_KEYS) ?? 'Enter';
      this.#note(`key ${key}`);
      this.#keys.press({ key, shiftKey: this.#below(6) === 0, altKey: this.#below(6) === 0 });
      this.#paint();
      if (this.#below(9) === 0) this.#disturb({ x: 300, y: 300 });
    }
    this.#keys.leave();
  }

  /** A kind from the stock: dragged over, or put down with a tap, or two. */
  #fromTray(): void {
    const { editor, toolbox } = this.driver;
    const { modules, ribbons } = editor.layouts.layout().kit;
    const key = this.#of([
      ...modules.map(({ id }) => selectionKey('module', id)),
      ...ribbons.map(({ id }) => selectionKey('ribbon', id)),
      ...ribbons.map(({ id }) => selectionKey('ribbon', id)),
    ]);
    if (!key) return;
    const pointer = { x: 300, y: 5000, id: 1, kind: 'mouse', button: 0, shift: false, alt: false } as const;
    const hand = { ...pointer, mod: this.#below(5) === 0 };
    const to = this.#point();
    if (this.#below(2) === 0) {
      this.#note(`drag ${key} from the tray to ${JSON.stringify(to)}`);
      this.#tray.down(key, hand);
      this.#tray.move({ ...hand, y: 4900 });
      this.#tray.move({ ...hand, ...this.#point() });
      if (this.#below(6) === 0) this.#disturb(to);
      this.#tray.move({ ...hand, ...to });
      this.#paint();
      if (this.#below(6) === 0) this.#tray.cancel();
      this.#tray.up({ ...hand, ...to });
      this.#tray.tap(key);
    } else {
      this.#note(`take ${key} and put it at ${JSON.stringify(to)}`);
      this.#tray.tap(key);
      this.driver.with({ ...hand, kind: this.#of(KINDS) ?? 'mouse' }).hover(to);
      this.#paint();
      if (this.#below(6) === 0) this.#disturb(to);
      this.driver.down(to);
      const on = this.#point();
      if (this.#below(2) === 0) this.driver.move(on.x - to.x, on.y - to.y);
      this.#paint();
      this.driver.up();
    }
    toolbox.leave();
    if (this.#below(2) === 0) toolbox.cancel();
  }

  #act(): void {
    const action = this.#of(actions);
    if (!action) return;
    this.#note(`action ${action.id}`);
    start(this.driver.editor, action, this.#below(4) === 0);
    const { session, layouts } = this.driver.editor;
    const { asked } = session.getState();
    if (!asked) return;
    session.setState({ asked: null });
    if (this.#below(2) === 0) layouts.run(asked.edit);
  }

  #mend(): void {
    const { editor } = this.driver;
    const { derived, notes } = shownAnalysis(editor);
    const note = this.#of(notes.filter(({ level }) => level !== 'reminder'));
    const mend = note && this.#of(mendsOf(derived, note));
    if (!mend) return;
    this.#note(`mend: ${mend.label}`);
    editor.layouts.run(mend.edit);
  }

  /** Any edit of the panels and forms, most of them nonsense. */
  #editPanel(): void {
    const { layouts } = this.driver.editor;
    const edit = editFrom(
      layouts.layout(),
      Array.from({ length: 12 }, () => this.#below(120)),
    );
    this.#note(`edit ${JSON.stringify(edit)}`);
    layouts.run(edit);
  }

  #hide(): void {
    const { editor } = this.driver;
    const layer = this.#of(layersOf(shownAnalysis(editor).derived));
    if (!layer) return;
    this.#note(`layer ${layer.key}`);
    toggleLayer(editor.session, layer.key);
  }

  #look(): void {
    const { editor, toolbox } = this.driver;
    const at = this.#point();
    this.#note('look elsewhere');
    const deed = this.#below(5);
    if (deed === 0) this.#resize();
    else if (deed === 1) this.#nextTake();
    else if (deed === 2) editor.session.setState({ viewport: null });
    else toolbox.wheel({ ...at, dx: 40, dy: this.#below(600) - 300, shift: false, mod: deed === 3 });
  }

  /** Paints as the stage would, into nothing: a picture that cannot be painted is a crash of the page. */
  #paint(): void {
    const { editor } = this.driver;
    const { derived, notes } = shownAnalysis(editor);
    const { side, selection, focus, hidden, lifted, aim, stage } = editor.session.getState();
    const { starts } = editor.hints.getState();
    const moving = editor.gestures.get();
    const scene: Scene = { derived, notes, side, selection, focus, hidden, lifted, aim, starts };
    const cast = castOf(scene, moving);
    const viewport = viewportNow(editor);
    const shown = cast.instead ?? derived;
    const sheet = layOutSheet(shown, side, viewport.scale);
    const paper: Paper = { sheet, theme: THEMES.light, view: viewOf(viewport, stage), hidden };
    const { ctx } = fakeContext();
    paintStill(ctx, paper, scene, cast);
    if (moving) paintMoving(ctx, paper, moving, cast);
    paintMarks(ctx, paper, scene, moving, cast, marksOf(sheet, shown, notes, focus));
  }

  async #settle(): Promise<void> {
    await vi.dynamicImportSettled();
    await Promise.resolve();
  }
}

function undoAll(history: History): Layout {
  let now = history;
  for (let before: History | null = null; now !== before; ) {
    before = now;
    now = undo(now);
  }
  return now.present;
}
