import { describe, expect, it } from 'vitest';
import { adoptionOf } from '../../src/edit/adopt-measured.ts';
import { applyEdit } from '../../src/edit/apply.ts';
import type { Edit } from '../../src/edit/edit.ts';
import type { Layout, ModuleKind, Take } from '../../src/layout/layout.ts';
import { openDocument } from '../../src/layout/open.ts';
import { takeInCase } from '../../src/layout/take-in-case.ts';
import { changed } from '../support/fixture.ts';
import { littleLayout, module, takeOf } from '../support/little-layout.ts';

const [a, b] = [module('a', 'cobble', 0), module('b', 'cobble', 10)];
const layout = littleLayout({ modules: [a, b] });
const { id: take } = takeOf(layout);

const edited = (before: Layout, ...edits: Edit[]): Layout =>
  edits.reduce((now, edit) => {
    const done = applyEdit(now, edit);
    if (!done.ok) throw new Error(done.error.message);
    return done.value;
  }, before);

const measured = (id: string, value: number | null): Edit => ({
  type: 'note-measured',
  take,
  on: 'module',
  id,
  line: '+12',
  quantity: 'ma',
  value,
});

const cobble = ({ kit }: Layout): ModuleKind => kit.modules.find(({ id }) => id === 'cobble') as ModuleKind;

describe('what was measured', () => {
  it('is noted once for each place and voltage, and leaves no record when it is cleared', () => {
    const noted = edited(layout, measured('a', 43), measured('a', 44));
    expect(takeOf(noted).built?.readings).toEqual([{ on: 'module', id: 'a', line: '+12', ma: 44 }]);
    expect(edited(noted, measured('a', null))).toEqual(layout);
  });

  it('becomes the kind’s own: the highest of its modules, known as measured, all else as it was', () => {
    const noted = edited(layout, measured('a', 43), measured('b', 47));
    expect(adoptionOf(takeOf(noted), cobble(noted))).toEqual({
      draws: [{ line: '+12', fromMa: 40, toMa: 47 }],
      isComplete: true,
    });
    const adopted = edited(noted, { type: 'adopt-measured', take, kind: 'cobble' });
    expect(cobble(adopted)).toEqual({ ...cobble(layout), draws: { '+12': 47 }, known: 'measured' });
    expect(adopted.takes).toBe(noted.takes);
  });

  it('does not make known what was not measured', () => {
    const two: Layout = {
      ...layout,
      kit: {
        ...layout.kit,
        voltages: [...layout.kit.voltages, { id: '-12', volts: -12 }],
        modules: layout.kit.modules.map((kind) =>
          kind.id === 'cobble' ? { ...kind, draws: { '+12': null, '-12': 10 } } : kind,
        ),
      },
    };
    const adopted = edited(two, measured('a', 43), { type: 'adopt-measured', take, kind: 'cobble' });
    expect(cobble(adopted).draws).toEqual({ '+12': 43, '-12': 10 });
    expect(cobble(adopted).known).toBeUndefined();
  });
});

describe('a module that is taken away', () => {
  it('takes its readings along, and undoing is not needed for those of others', () => {
    const noted = edited(layout, measured('a', 43), measured('b', 47));
    const left = edited(noted, { type: 'remove-modules', take, modules: ['a'] });
    expect(takeOf(left).built?.readings).toEqual([{ on: 'module', id: 'b', line: '+12', ma: 47 }]);
  });
});

describe('in the case', () => {
  it('is one take or none', () => {
    const two = edited(layout, { type: 'add-take', from: take });
    const [, other] = two.takes as [Take, Take];
    const first = edited(two, { type: 'mark-in-case', inCase: take });
    expect(takeInCase(first)?.id).toBe(take);
    const second = edited(first, { type: 'mark-in-case', inCase: other.id });
    expect(second.takes.filter(({ built }) => built?.inCase).map(({ id }) => id)).toEqual([other.id]);
    expect(edited(second, { type: 'mark-in-case', inCase: null })).toEqual(two);
  });
});

describe('a record', () => {
  it.each([
    [{}],
    [{ steps: [] }],
    [{ rev: 'B', ticked: ['feed-1'] }],
    [{ harnessTests: [{ ribbons: ['s1'], test: 'smell', of: 'X', later: 1 }], later: true }],
  ])('of older and newer programs opens: %j', (built) => {
    expect(openDocument(changed(['takes', 0, 'built'], built)).ok).toBe(true);
  });

  it.each([
    [{ inCase: 1 }],
    [{ harnessTests: [{}] }],
    [{ readings: [{ on: 'module', id: 'a', line: '+12', ma: -1 }] }],
  ])('that cannot be is refused: %j', (built) => {
    expect(openDocument(changed(['takes', 0, 'built'], built)).ok).toBe(false);
  });
});
