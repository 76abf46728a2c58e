import type { Header, Kit, Layout, ModuleKind, Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import { type Check, LEVELS, type Note } from './check.ts';
import { drawnChecks } from './drawn-checks.ts';
import { judge } from './judge.ts';

/** Something that is not known of a kind of module, or was guessed. */
export type Fact =
  | { readonly is: 'depth' }
  | { readonly is: 'draw'; readonly voltage: string }
  | { readonly is: 'pin1'; readonly header: string }
  | { readonly is: 'guessed' };

/** A note that would let go of the kind's modules if a fact were known. */
export interface RestingNote {
  readonly note: Note;
  /** Name of its take. */
  readonly take: string;
  /** How many of the kind's modules it names. */
  readonly modules: number;
  /** The note would go as a whole: it names nothing else. */
  readonly goes: boolean;
  /** This fact alone would do; else others of the kind are needed too. */
  readonly alone: boolean;
}

/** A fact to be found out, and what rests on it. */
export interface OpenFact {
  readonly kind: ModuleKind;
  readonly fact: Fact;
  readonly notes: readonly RestingNote[];
}

/** More unknown facts of one kind are not tried one by one. */
const MOST_TRIED = 60;

/** All that is not known of a kind. */
export const unknownFactsOf = ({ depthMm, draws, headers, known }: ModuleKind): readonly Fact[] => [
  ...(depthMm === undefined ? [{ is: 'depth' } as const] : []),
  ...Object.entries(draws).flatMap(([voltage, ma]) =>
    ma === null ? [{ is: 'draw', voltage } as const] : [],
  ),
  ...headers.flatMap(({ id, pin1 }) => (pin1 === undefined ? [{ is: 'pin1', header: id } as const] : [])),
  ...(known === 'guessed' ? [{ is: 'guessed' } as const] : []),
];

const withPin1 = (header: Header): Header => ({
  ...header,
  pin1: header.axis === 'horizontal' ? 'left' : 'down',
});

/** Enough to be a draw, so that a module that lacks power still does, and too little to matter, mA. */
const SLIGHT_MA = 1;

/** The kind with a fact filled in so that nothing new is wrong with it for that, and nothing is mended but by knowing. */
function filled(kind: ModuleKind, fact: Fact): ModuleKind {
  switch (fact.is) {
    case 'depth':
      return { ...kind, depthMm: 0 };
    case 'draw':
      return { ...kind, draws: { ...kind.draws, [fact.voltage]: SLIGHT_MA } };
    case 'pin1': {
      const headers = kind.headers.map((header) => (header.id === fact.header ? withPin1(header) : header));
      return { ...kind, headers };
    }
    case 'guessed':
      return { ...kind, known: 'measured' };
  }
}

/** What a note is about besides its subjects, such as a voltage; see `keyOf`. */
const partOf = ({ key }: Note): string | undefined => key.split('/')[2];

const isAlike = (note: Note, other: Note): boolean =>
  note.check === other.check && note.level === other.level && partOf(note) === partOf(other);

/** The kind's modules in a take, and which of them a note names. */
class Members {
  readonly #ids: ReadonlySet<string>;

  constructor({ modules }: Take, { id }: ModuleKind) {
    this.#ids = new Set(modules.filter(({ kind }) => kind === id).map((module) => module.id));
  }

  get some(): boolean {
    return this.#ids.size > 0;
  }

  in({ subjects }: Note): readonly string[] {
    return subjects.filter(({ type, id }) => type === 'module' && this.#ids.has(id)).map(({ id }) => id);
  }

  /** Whether none of these notes says of the kind's modules what that one says of them. */
  letGo(note: Note, notes: readonly Note[]): boolean {
    const named = new Set(this.in(note));
    return !notes.some((other) => isAlike(note, other) && this.in(other).some((id) => named.has(id)));
  }
}

function withKind(kit: Kit, kind: ModuleKind): Kit {
  return { ...kit, modules: kit.modules.map((other) => (other.id === kind.id ? kind : other)) };
}

interface Judged {
  readonly take: Take;
  readonly notes: readonly Note[];
}

/** For each fact, the notes that rest on it. */
function restingOn(
  kit: Kit,
  { take, notes: known }: Judged,
  kind: ModuleKind,
  facts: readonly Fact[],
  checks: readonly Check[],
): readonly (readonly RestingNote[])[] {
  const members = new Members(take, kind);
  if (!members.some) return facts.map(() => []);
  const notesWith = (some: readonly Fact[]): readonly Note[] =>
    judge(deriveTake(withKind(kit, some.reduce(filled, kind)), take), checks);
  const before = known.filter((note) => members.in(note).length > 0);
  const all = notesWith(facts);
  const resting = before.filter((note) => members.letGo(note, all));
  if (resting.length === 0) return facts.map(() => []);
  const needed = facts.map((fact) => {
    const others = facts.filter((other) => other !== fact);
    const without = others.length > 0 ? notesWith(others) : before;
    return resting.filter((note) => !members.letGo(note, without));
  });
  return needed.map((notes) =>
    notes.map((note) => ({
      note,
      take: take.name,
      modules: members.in(note).length,
      goes: !all.some((other) => isAlike(note, other)),
      alone: needed.filter((other) => other.includes(note)).length === 1,
    })),
  );
}

const badnessOf = ({ notes }: OpenFact): number =>
  Math.min(...notes.map(({ note }) => LEVELS.indexOf(note.level)));

const modulesOf = ({ notes }: OpenFact): number => notes.reduce((sum, { modules }) => sum + modules, 0);

/** Worst first: the level of what rests on a fact, then how many modules it concerns. */
export const worstFirst = (facts: readonly OpenFact[]): readonly OpenFact[] =>
  [...facts].sort((a, b) => badnessOf(a) - badnessOf(b) || modulesOf(b) - modulesOf(a));

/**
 * The unknown facts of each kind in turn on which a note rests, found by trying: with a harmless value in place of all
 * that is unknown, the note lets go of the kind's modules, and without this one it does not. One step for each kind, so
 * that whoever asks can rest between them.
 *
 * @param kinds - those of the kit that are asked about
 */
export function* openFacts(
  { kit, takes }: Layout,
  checks: readonly Check[] = drawnChecks,
  kinds: readonly ModuleKind[] = kit.modules,
): Generator<readonly OpenFact[]> {
  const judged = takes.map((take) => ({ take, notes: judge(deriveTake(kit, take), checks) }));
  for (const kind of kinds) {
    const facts = unknownFactsOf(kind).slice(0, MOST_TRIED);
    if (facts.length === 0) continue;
    const inTakes = judged.map((take) => restingOn(kit, take, kind, facts, checks));
    yield facts.flatMap((fact, i) => {
      const notes = inTakes.flatMap((perFact) => perFact[i] ?? []);
      return notes.length > 0 ? [{ kind, fact, notes }] : [];
    });
  }
}
