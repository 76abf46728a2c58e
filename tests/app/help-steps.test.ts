import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthOf, keepSteps } from '../../app/help/help-steps.ts';
import type { History } from '../../app/platform/history.ts';
import { createSessionStore } from '../../app/store/session-store.ts';
import { runs } from '../support/runs.ts';
import { fakePreferences } from './fakes.ts';

/** A browser's steps: what is ahead goes with a new step, and going takes its time. */
class FakeHistory implements History {
  #steps: unknown[] = [null];
  #at = 0;
  #arrived: () => void = () => {};
  #pending: number[] = [];
  readonly state = () => this.#steps[this.#at];
  readonly push = (state: unknown) => {
    this.#steps = [...this.#steps.slice(0, this.#at + 1), state];
    this.#at++;
  };
  readonly go = (steps: number) => void this.#pending.push(steps);
  readonly listen = (arrived: () => void) => {
    this.#arrived = arrived;
  };
  get length() {
    return this.#at;
  }
  /** Lets what is under way arrive. */
  settle() {
    for (let by = this.#pending.shift(); by !== undefined; by = this.#pending.shift()) {
      const to = this.#at + by;
      if (to < 0 || to >= this.#steps.length) continue;
      this.#at = to;
      this.#arrived();
    }
  }
}

function desk() {
  const session = createSessionStore(fakePreferences());
  const history = new FakeHistory();
  keepSteps(session, history);
  const show = (help: string | null) => session.setState({ help });
  const step = (by: number) => {
    history.go(by);
    history.settle();
  };
  return { history, show, step, help: () => session.getState().help };
}

describe('pages of the help as steps of the browser', () => {
  test('Back leads from page to page and then out of the help, Forward in again', () => {
    const { history, show, step, help } = desk();
    show('contents');
    show('check/overlap');
    step(-1);
    expect(help()).toBe('contents');
    step(-1);
    expect([help(), history.length]).toEqual([null, 0]);
    step(1);
    expect(help()).toBe('contents');
  });

  test('closing leaves no step behind', () => {
    const { history, show, help } = desk();
    for (const page of ['contents', 'guide', 'glossary']) show(page);
    show(null);
    history.settle();
    expect([help(), history.length, depthOf(history)]).toEqual([null, 0, 0]);
  });

  test('a page that is opened while the way out is under way is a first step', () => {
    const { history, show, help } = desk();
    show('guide');
    show('keys');
    show(null);
    show('glossary');
    history.settle();
    expect([help(), history.length, depthOf(history)]).toEqual(['glossary', 1, 1]);
  });

  test('the list of commands is no step', () => {
    const { history, show } = desk();
    show('find');
    expect(history.length).toBe(0);
    show('guide');
    show('find');
    history.settle();
    expect(history.length).toBe(0);
  });

  test('what is shown and where the browser stands agree after anything', () => {
    const deed = fc.oneof(
      fc.constantFrom(null, 'find', 'contents', 'guide', 'keys'),
      fc.integer({ min: -2, max: 2 }),
    );
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 20 }), (deeds) => {
        const { history, show, step, help } = desk();
        for (const each of deeds) {
          if (typeof each === 'number') step(each);
          else show(each);
        }
        history.settle();
        const page = help() === 'find' ? null : help();
        expect((history.state() as { help: string } | null)?.help ?? null).toBe(page);
        expect(depthOf(history)).toBe(history.length);
      }),
      runs(100),
    );
  });
});
