import { createEditor } from '../../app/create-editor.ts';
import { type Editor, shownAnalysis, shownTake } from '../../app/editor.ts';
import { judging } from '../../app/store/analysis.ts';
import { labelOf } from '../../app/store/edit-label.ts';
import { sheetNow, viewportNow } from '../../app/store/view.ts';
import type { Point, Pointer } from '../../app/tools/pointer.ts';
import { createToolbox, type Toolbox } from '../../app/tools/toolbox.ts';
import { moduleBox } from '../../src/drawing/sheet.ts';
import { applyEdit, checkTake, type Module, pressingNotes, type Take, verdictOf } from '../../src/index.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import {
  fakeAddress,
  fakeClipboard,
  fakeClock,
  fakeFiles,
  fakeIds,
  fakePhotographs,
  fakePreferences,
} from './fakes.ts';

const AT_ORIGIN: Pointer = {
  x: 0,
  y: 0,
  id: 1,
  kind: 'mouse',
  button: 0,
  shift: false,
  alt: false,
  mod: false,
};

const STAGE = { width: 1440, height: 700, text: 1 };

/** Drives an editor by pointer, as a hand would: `down(…).move(…).up()`. */
export class Driver {
  readonly clock = fakeClock();
  readonly address = fakeAddress();
  readonly clipboard = fakeClipboard();
  readonly files = fakeFiles();
  readonly photographs = fakePhotographs();
  readonly editor: Editor;
  readonly toolbox: Toolbox;
  #pointer: Pointer = AT_ORIGIN;

  constructor(layout = demoLayout(), freshId = fakeIds()) {
    const platform = {
      address: async () => this.address,
      clipboard: async () => this.clipboard,
      files: async () => this.files,
      photographs: async () => this.photographs,
      preferences: fakePreferences(),
      clock: this.clock,
      freshId,
    };
    this.editor = createEditor(layout, platform);
    this.editor.layouts.equip(applyEdit, labelOf);
    judging.set({ checkTake, pressingNotes, verdictOf });
    this.editor.session.setState({ stage: STAGE });
    this.toolbox = createToolbox(this.editor);
  }

  get take(): Take {
    return shownTake(this.editor);
  }

  get selection(): string[] {
    return [...this.editor.session.getState().selection];
  }

  /** Number of steps that can be undone. */
  get steps(): number {
    return this.editor.layouts.store.getState().history.past.length;
  }

  get isMoving(): boolean {
    return this.editor.gestures.get() !== null;
  }

  module(id: string): Module {
    const found = this.take.modules.find((module) => module.id === id);
    if (!found) throw new Error(`no module ${id}`);
    return found;
  }

  place(id: string): [row: string, atHp: number] {
    const { row, atHp } = this.module(id);
    return [row, atHp];
  }

  /** Where a running gesture shows a module. */
  placeShown(id: string): [row: string, atHp: number] | undefined {
    const module = this.editor.gestures.get()?.derived.places.moduleById.get(id)?.module;
    return module && [module.row, module.atHp];
  }

  /** A point of the upper rail of a module, where no ribbon lies. */
  on(id: string): Point {
    const placed = shownAnalysis(this.editor).derived.places.moduleById.get(id);
    if (!placed) throw new Error(`no module ${id}`);
    const { left, right, top } = moduleBox(sheetNow(this.editor), placed);
    const { x, y } = viewportNow(this.editor);
    return { x: x + (left + right) / 2, y: y + top + 4 };
  }

  /** Px of so many HP on the screen, from left to right. */
  hp(count: number): number {
    return count * 5.08 * viewportNow(this.editor).scale;
  }

  /** Modifiers, kind of pointer and so on, from now on. */
  with(pointer: Partial<Pointer>): this {
    this.#pointer = { ...this.#pointer, ...pointer };
    return this;
  }

  down(at: Point): this {
    this.toolbox.down(this.#to(at.x, at.y));
    return this;
  }

  /** Moves by so many px, in a few steps as a hand does. */
  move(dx: number, dy = 0): this {
    const { x, y } = this.#pointer;
    for (const share of [0.3, 0.7, 1]) this.toolbox.move(this.#to(x + dx * share, y + dy * share));
    return this;
  }

  hover(at: Point): this {
    this.toolbox.hover(this.#to(at.x, at.y));
    return this;
  }

  up(): this {
    this.toolbox.up(this.#pointer);
    return this;
  }

  click(at: Point): this {
    return this.down(at).up();
  }

  cancel(): this {
    this.toolbox.cancel();
    return this;
  }

  #to(x: number, y: number): Pointer {
    this.#pointer = { ...this.#pointer, x, y };
    return this.#pointer;
  }
}
