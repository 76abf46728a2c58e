import { describe, expect, it } from 'vitest';
import type { Note } from '../../src/checks/check.ts';
import { drawnChecks } from '../../src/checks/drawn-checks.ts';
import { example, kind } from '../../src/checks/example.ts';
import { judge } from '../../src/checks/judge.ts';
import { type OpenFact, openFacts, unknownFactsOf, worstFirst } from '../../src/checks/open-facts.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Layout, ModuleKind, Take } from '../../src/layout/layout.ts';
import { deriveTake } from '../../src/wiring/derive.ts';

const factsOf = (layout: Layout): readonly OpenFact[] => [...openFacts(layout)].flat();

const said = (layout: Layout) =>
  factsOf(layout).map(({ kind: { id }, fact, notes }) => ({
    kind: id,
    fact,
    notes: notes.map(({ note, modules, goes, alone }) => [note.check, modules, goes, alone]),
  }));

const notesOf = ({ kit, takes }: Layout) =>
  judge(deriveTake(kit, takes[0] as Take), drawnChecks).map(({ check }) => check);

/** The examples' kinds have a depth unless told otherwise. */
const deep = (id: string, part: Partial<ModuleKind>): ModuleKind => ({ ...kind(id, part), ...part });

describe('facts that are not known', () => {
  it('are told of a kind, with what was guessed', () => {
    const { depthMm: _, ...shallow } = kind('some', { draws: { '+12': null, '-12': 5 }, known: 'guessed' });
    expect(unknownFactsOf({ ...shallow, headers: [] })).toEqual([
      { is: 'depth' },
      { is: 'draw', voltage: '+12' },
      { is: 'guessed' },
    ]);
  });

  it('do nothing where no module of the kind stands in a take', () => {
    expect(
      said(example({ kinds: [kind('some', { draws: { '+12': null } }), kind('used', {})], modules: [] })),
    ).toEqual([]);
  });

  it('clear the note alone, where nothing else is unknown', () => {
    const layout = example({
      kinds: [deep('some', { depthMm: 20, draws: { '+12': null } })],
      modules: [
        ['a', 'some', 0],
        ['b', 'some', 20],
      ],
    });
    expect(said(layout)).toEqual([
      { kind: 'some', fact: { is: 'draw', voltage: '+12' }, notes: [['unknown-facts', 2, true, true]] },
    ]);
  });

  it('are needed together, where a note names several of one module, and leave it to others', () => {
    const layout = example({
      kinds: [
        deep('some', { depthMm: 20, draws: { '+12': null, '-12': null } }),
        deep('other', { depthMm: 20, draws: { '+12': null } }),
      ],
      modules: [
        ['a', 'some', 0],
        ['b', 'other', 20],
      ],
    });
    expect(said(layout)).toEqual([
      { kind: 'some', fact: { is: 'draw', voltage: '+12' }, notes: [['unknown-facts', 1, false, false]] },
      { kind: 'some', fact: { is: 'draw', voltage: '-12' }, notes: [['unknown-facts', 1, false, false]] },
      { kind: 'other', fact: { is: 'draw', voltage: '+12' }, notes: [['unknown-facts', 1, false, true]] },
    ]);
  });

  it('tell guessed figures by their own note', () => {
    const layout = example({
      kinds: [deep('some', { depthMm: 20, known: 'guessed' })],
      modules: [['a', 'some', 0]],
    });
    expect(said(layout)).toEqual([
      { kind: 'some', fact: { is: 'guessed' }, notes: [['guessed-data', 1, true, true]] },
    ]);
  });

  it('name pin 1 only of headers that something is seated on', () => {
    const layout = demoLayout();
    const modules = layout.kit.modules.map((each) => ({
      ...each,
      headers: each.headers.map(({ pin1: _, ...header }) => header),
    }));
    const facts = factsOf({ ...layout, takes: layout.takes.slice(0, 1), kit: { ...layout.kit, modules } });
    const pins = facts.flatMap(({ kind: { id }, fact }) =>
      fact.is === 'pin1' ? [`${id} ${fact.header}`] : [],
    );
    expect(pins).toContain('cobble shore');
    expect(pins).toContain('gull power');
    // A Cobble's own power header stays empty in the first take: its Jetty's island is fed elsewhere.
    const seated = new Set(
      layout.takes[0]?.ribbons.flatMap(({ seats }) =>
        seats.flatMap(({ on }) => ('module' in on ? [`${on.module} ${on.header}`] : [])),
      ),
    );
    for (const pin of pins) {
      const [id, header] = pin.split(' ');
      const some = layout.takes[0]?.modules.some(
        (module) => module.kind === id && seated.has(`${module.id} ${header}`),
      );
      expect(some, pin).toBe(true);
    }
  });

  it('put what rests on a fault before what is only worth knowing, and many modules before few', () => {
    const open = (id: string, levels: readonly Note['level'][], modules: number): OpenFact => ({
      kind: kind(id, {}),
      fact: { is: 'depth' },
      notes: levels.map((level) => ({
        note: { level } as Note,
        take: 'take-1',
        modules,
        goes: true,
        alone: true,
      })),
    });
    const facts = [
      open('few', ['reminder'], 1),
      open('many', ['reminder'], 3),
      open('fault', ['reminder', 'fault'], 1),
      open('damage', ['damage'], 1),
    ];
    expect(worstFirst(facts).map(({ kind: { id } }) => id)).toEqual(['damage', 'fault', 'many', 'few']);
  });

  it('asks of the demo only for the one thing that it guesses', () => {
    expect(notesOf(demoLayout())).not.toContain('unknown-facts');
    expect(factsOf(demoLayout()).map(({ kind: { id }, fact }) => [id, fact.is])).toEqual([
      ['kelp', 'guessed'],
    ]);
  });
});
