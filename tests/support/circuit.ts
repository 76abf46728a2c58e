import { spawnSync } from 'node:child_process';
import { index, lusolve, type Matrix, matrix, sparse } from 'mathjs';
import { Grid } from '../../src/electrical/grid.ts';
import { Reduction } from '../../src/electrical/solve.ts';

/** A circuit as a netlist has it. Node 0 is ground. Volts, ohms and amperes. */
export interface Circuit {
  readonly nodes: number;
  /** Nodes held at a voltage; node 0 is held at 0 besides. */
  readonly held: readonly (readonly [node: number, volts: number])[];
  readonly resistors: readonly (readonly [a: number, b: number, ohm: number])[];
  /** Constant currents out of one node and into another. */
  readonly loads: readonly (readonly [from: number, to: number, amperes: number])[];
}

export interface Answer {
  readonly volts: readonly number[];
  /** From the first node of each resistor to the second. */
  readonly amperes: readonly number[];
}

const held = (circuit: Circuit): [number, number][] => [
  [0, 0],
  ...circuit.held.map(([node, volts]): [number, number] => [node, volts]),
];

export function reductionOf({ nodes, resistors, loads }: Circuit, ends: readonly number[]): Reduction {
  const grid = new Grid(nodes);
  for (const [a, b, ohm] of resistors) grid.join(a, b, ohm);
  const injected = new Array<number>(nodes).fill(0);
  for (const [from, to, amperes] of loads) {
    injected[from] = (injected[from] ?? 0) - amperes * 1000;
    injected[to] = (injected[to] ?? 0) + amperes * 1000;
  }
  return new Reduction(grid, ends, injected);
}

/** By the program. */
export function solved(circuit: Circuit): Answer {
  const sources = held(circuit);
  const reduction = reductionOf(
    circuit,
    sources.map(([node]) => node),
  );
  const { mv, ma } = reduction.flow(sources.map(([, volts]) => volts * 1000));
  return { volts: mv.map((value) => value / 1000), amperes: ma.map((value) => value / 1000) };
}

/** The nodal equations of the nodes that are not held, as they stand in every textbook. */
export function nodalEquations(circuit: Circuit) {
  const fixed = new Map(held(circuit));
  const free = Array.from({ length: circuit.nodes }, (_, node) => node).filter((node) => !fixed.has(node));
  const row = new Map(free.map((node, i) => [node, i]));
  const entries = new Map<string, { i: number; j: number; value: number }>();
  const right = free.map(() => 0);
  const add = (i: number, j: number, value: number): void => {
    const entry = entries.get(`${i} ${j}`) ?? { i, j, value: 0 };
    entry.value += value;
    entries.set(`${i} ${j}`, entry);
  };
  for (const [a, b, ohm] of circuit.resistors) {
    for (const [own, other] of [
      [a, b],
      [b, a],
    ] as const) {
      const i = row.get(own);
      if (i === undefined) continue;
      add(i, i, 1 / ohm);
      const j = row.get(other);
      if (j === undefined) right[i] = (right[i] ?? 0) + (fixed.get(other) ?? 0) / ohm;
      else add(i, j, -1 / ohm);
    }
  }
  for (const [from, to, amperes] of circuit.loads) {
    const [i, j] = [row.get(from), row.get(to)];
    if (i !== undefined) right[i] = (right[i] ?? 0) - amperes;
    if (j !== undefined) right[j] = (right[j] ?? 0) + amperes;
  }
  return { free, entries: [...entries.values()], right };
}

/** By the dense LU of mathjs 15.2.0. */
export function byLibrary(circuit: Circuit): Answer {
  const { free, entries, right } = nodalEquations(circuit);
  const volts = new Array<number>(circuit.nodes).fill(Number.NaN);
  for (const [node, value] of held(circuit)) volts[node] = value;
  if (free.length > 0) {
    const dense = free.map(() => free.map(() => 0));
    for (const { i, j, value } of entries) (dense[i] as number[])[j] = value;
    const answer = lusolve(matrix(dense), matrix(right)) as Matrix;
    free.forEach((node, i) => {
      volts[node] = answer.subset(index(i, 0)) as unknown as number;
    });
  }
  return { volts, amperes: amperesOf(circuit, volts) };
}

/** The nodal equations as a sparse matrix of mathjs. */
export function sparseMatrix({ free, entries }: ReturnType<typeof nodalEquations>): Matrix {
  const made = sparse();
  made.resize([free.length, free.length], 0);
  for (const { i, j, value } of entries.toSorted((a, b) => a.j - b.j || a.i - b.i)) made.set([i, j], value);
  return made;
}

const amperesOf = ({ resistors }: Circuit, volts: readonly number[]): number[] =>
  resistors.map(([a, b, ohm]) => ((volts[a] as number) - (volts[b] as number)) / ohm);

export const hasSpice = spawnSync('ngspice', ['--version']).status === 0;

/** By ngspice, to 12 digits. */
export function bySpice(circuit: Circuit): readonly number[] {
  const lines = [
    'circuit',
    ...circuit.held.map(([node, volts], i) => `V${i} ${node} 0 ${volts}`),
    ...circuit.resistors.map(([a, b, ohm], i) => `R${i} ${a} ${b} ${ohm}`),
    ...circuit.loads.map(([from, to, amperes], i) => `I${i} ${from} ${to} ${amperes}`),
    '.options reltol=1e-12 abstol=1e-15 vntol=1e-14',
    '.control',
    'set numdgt=14',
    'op',
    ...Array.from({ length: circuit.nodes - 1 }, (_, i) => `print v(${i + 1})`),
    '.endc',
    '.end',
  ];
  const { stdout } = spawnSync('ngspice', ['-b'], { input: `${lines.join('\n')}\n`, encoding: 'utf8' });
  const volts = [0];
  for (const [, node, value] of stdout.matchAll(/^v\((\d+)\) = (\S+)/gm)) volts[Number(node)] = Number(value);
  return volts;
}
