import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byLibrary, bySpice, type Circuit, hasSpice, reductionOf, solved } from '../support/circuit.ts';
import { runs } from '../support/runs.ts';

const EXACT = 9;

/** n taps of a line of equal resistances, each drawing the same. */
function line(n: number, ohm: number, amperes: number, ends: 1 | 2): Circuit {
  const nodes = ends === 1 ? n + 2 : n + 3;
  const taps = Array.from({ length: n }, (_, i) => i + 2);
  const way = [1, ...taps, ...(ends === 2 ? [nodes - 1] : [])];
  return {
    nodes,
    held: ends === 1 ? [[1, 12]] : [[1, 12], [nodes - 1, 12]], // biome-ignore format: two ends side by side
    resistors: way.slice(1).map((node, i) => [way[i] as number, node, ohm] as const),
    loads: taps.map((node) => [node, 0, amperes] as const),
  };
}

/*
 * Worked examples as exact fractions, each cross-checked with ngspice 39.3: see the netlists in the last test, which
 * runs them again where ngspice is installed. Closed forms of lines with equal taps are those of any textbook on
 * distribution.
 */
const W1 = line(8, 0.01, 0.1, 1);
const W2 = line(7, 0.01, 0.1, 2);
const W3: Circuit = {
  nodes: 5,
  held: [
    [1, 12],
    [2, 11.9],
  ],
  resistors: [
    [1, 3, 0.02],
    [3, 4, 0.03],
    [4, 2, 0.05],
  ],
  loads: [
    [3, 0, 1.5],
    [4, 0, 2.5],
  ],
};
/** Two modules on a ribbon of ±12 V with a shared return; p, m and g by module: 3, 4, 5 and 6, 7, 8. */
const W4: Circuit = {
  nodes: 9,
  held: [
    [1, 12],
    [2, -12],
  ],
  resistors: [
    [1, 3, 0.05],
    [2, 4, 0.05],
    [0, 5, 0.02],
    [3, 6, 0.05],
    [4, 7, 0.05],
    [5, 8, 0.02],
  ],
  loads: [
    [3, 5, 0.3],
    [5, 4, 0.1],
    [6, 8, 0.2],
    [8, 7, 0.4],
  ],
};
const W5: Circuit = {
  nodes: 5,
  held: [[1, 1]],
  resistors: [
    [1, 2, 1],
    [2, 0, 1],
    [2, 3, 1],
    [3, 0, 1],
    [3, 4, 1],
    [4, 0, 1],
  ],
  loads: [],
};
/** 100 mΩ each: two conductors there, six back. */
const W7: Circuit = {
  nodes: 4,
  held: [[1, 12]],
  resistors: [
    ...[0, 1].map(() => [1, 2, 0.1] as const),
    ...[0, 1, 2, 3, 4, 5].map(() => [3, 0, 0.1] as const),
  ],
  loads: [[2, 3, 0.24]],
};
const W8: Circuit = {
  nodes: 5,
  held: [[1, 12]],
  resistors: [
    [1, 2, 1],
    [1, 3, 2],
    [2, 3, 1],
    [2, 4, 2],
    [3, 4, 1],
  ],
  loads: [[4, 0, 1]],
};

describe('worked examples', () => {
  it('W1: a line fed from one end', () => {
    const { volts } = solved(W1);
    [1499 / 125, 2397 / 200].forEach((v, i) => {
      expect(volts[i + 2]).toBeCloseTo(v, EXACT);
    });
    expect(volts[5]).toBeCloseTo(5987 / 500, EXACT);
    expect(volts[9]).toBeCloseTo(2991 / 250, EXACT);
  });

  it('W2: a line fed from both ends', () => {
    const { volts, amperes } = solved(W2);
    [7 / 2000, 3 / 500, 3 / 400, 1 / 125].forEach((drop, i) => {
      expect(12 - (volts[i + 2] as number)).toBeCloseTo(drop, EXACT);
    });
    expect([amperes[0], -(amperes[7] as number)]).toEqual([
      expect.closeTo(7 / 20, EXACT),
      expect.closeTo(7 / 20, EXACT),
    ]);
  });

  it('W3: ends at different voltages', () => {
    const { volts, amperes } = solved(W3);
    expect(volts[3]).toBeCloseTo(11931 / 1000, EXACT);
    expect(volts[4]).toBeCloseTo(4749 / 400, EXACT);
    expect(amperes[0]).toBeCloseTo(69 / 20, EXACT);
    expect(-(amperes[2] as number)).toBeCloseTo(11 / 20, EXACT);
  });

  it('W4: currents in a shared return partly cancel', () => {
    const { volts } = solved(W4);
    const expected = [479 / 40, -479 / 40, 0, 2393 / 200, -2391 / 200, -1 / 250];
    expected.forEach((v, i) => {
      expect(volts[i + 3]).toBeCloseTo(v, EXACT);
    });
  });

  it('W5: a ladder of equal resistors makes Fibonacci numbers', () => {
    const { volts, amperes } = solved(W5);
    [5 / 13, 2 / 13, 1 / 13].forEach((v, i) => {
      expect(volts[i + 2]).toBeCloseTo(v, EXACT);
    });
    expect(amperes[0]).toBeCloseTo(8 / 13, EXACT);
  });

  it('W7: conductors side by side', () => {
    const { volts } = solved(W7);
    expect(volts[2]).toBeCloseTo(2997 / 250, EXACT);
    expect(volts[3]).toBeCloseTo(1 / 250, EXACT);
  });

  it('W8: a mesh that no tree sweep solves', () => {
    const { volts } = solved(W8);
    [57 / 5, 56 / 5, 53 / 5].forEach((v, i) => {
      expect(volts[i + 2]).toBeCloseTo(v, EXACT);
    });
  });

  it.each([1, 2, 3, 4, 5, 8, 10, 20])(
    '%i equal taps lose R·I·(n + 1)/(2n), from both ends an eighth',
    (n) => {
      const r = 0.01;
      const i = 0.1;
      const one = solved(line(n, r, i, 1)).volts;
      expect(12 - (one[n + 1] as number)).toBeCloseTo((n * r * n * i * (n + 1)) / (2 * n), EXACT);
      const both = solved(line(n, r, i, 2)).volts.slice(2, n + 2);
      const most = n % 2 ? (r * i * (n + 1) ** 2) / 8 : (r * i * n * (n + 2)) / 8;
      expect(12 - Math.min(...both)).toBeCloseTo(most, EXACT);
    },
  );
});

/** Published voltage drops: resistance for each foot, feet, amperes, and the volts that are printed. */
const DROPS: readonly (readonly [
  source: string,
  ohms: number,
  amperes: number,
  printed: number,
  digits: number,
])[] = [
  ['FAA AC 43.13-1B table 11-7', 0.00044 * 107, 20, 0.942, 3],
  ['FAA AC 43.13-1B table 11-7', 0.00028 * 90, 20, 0.504, 3],
  ['FAA AC 43.13-1B table 11-7', 0.00306 * 100, 20, 6.12, 2],
  ['FAA AC 43.13-1B table 11-8', 0.00126 * 39, 20, 0.98, 2],
  ['FAA AC 43.13-1B table 11-8', 0.00126 * 156, 20, 3.93, 2],
  ['FAA AC 43.13-1B table 11-8', 0.00126 * 273, 20, 6.88, 2],
  ['the rule of the NEC, 2 × 100 ft of 4.99 Ω per 1000 ft', (2 * 100 * 4.99) / 1000, 4, 4.0, 1],
];

describe('published voltage drops', () => {
  it.each(DROPS)('%s: %f Ω at %f A lose %f V', (_, ohms, amperes, printed, digits) => {
    const { volts } = solved({
      nodes: 3,
      held: [[1, 24]],
      resistors: [[1, 2, ohms]],
      loads: [[2, 0, amperes]],
    });
    expect((24 - (volts[2] as number)).toFixed(digits)).toBe(printed.toFixed(digits));
  });

  it('a feeder of two wires, 500 V, 0.08 Ω each way: 476 V at 300 A and 460 V at the next 200 A', () => {
    // A textbook feeder: both loads lie behind one another, and the first section carries both.
    const { volts } = solved({
      nodes: 4,
      held: [[1, 500]],
      resistors: [
        [1, 2, 0.08],
        [2, 3, 0.08],
      ],
      loads: [
        [2, 0, 100],
        [3, 0, 200],
      ],
    });
    expect([volts[2], volts[3]]).toEqual([expect.closeTo(476, EXACT), expect.closeTo(460, EXACT)]);
  });
});

/**
 * A distributor of two wires as a textbook prints it (number seen in public text): 220, 190, 150 and 50 A over 40, 60,
 * 50 and 100 m may lose 10 V, so there and back it has 10/327 Ω for each 100 m, and of metal of 1.78e-8 Ωm each wire
 * 1.164 cm². The print can be read as currents of sections one after the other, or as loads at distances from the
 * feed: their moments are the same.
 */
describe('a distributor that may lose 10 V', () => {
  const AREA_CM2 = 1.164;
  const READINGS: readonly (readonly [
    string,
    loads: readonly (readonly [amperes: number, metres: number])[],
  ])[] = [
    [
      'sections one after the other',
      [
        [220 - 190, 40],
        [190 - 150, 100],
        [150 - 50, 150],
        [50, 250],
      ],
    ],
    [
      'loads at distances',
      [
        [220, 40],
        [150, 50],
        [190, 60],
        [50, 100],
      ],
    ],
  ];

  const lossWith = (ohmsPerMetre: number, loads: (typeof READINGS)[number][1]): number => {
    const resistors = loads.flatMap(([, metres], i): Circuit['resistors'] => {
      const ohm = ohmsPerMetre * (metres - (loads[i - 1]?.[1] ?? 0));
      const [there, back] = [1 + 2 * i, 2 * i];
      return [
        [there, there + 2, ohm],
        [back, back + 2, ohm],
      ];
    });
    const { volts } = solved({
      nodes: 2 * loads.length + 2,
      held: [[1, 230]],
      resistors,
      loads: loads.map(([amperes], i) => [2 * i + 3, 2 * i + 2, amperes]),
    });
    return 230 - ((volts.at(-1) as number) - (volts.at(-2) as number));
  };

  it.each(READINGS)('loses 10 V with 10/327 Ω for each 100 m, read as %s', (_, loads) => {
    expect(lossWith(10 / 327 / 2 / 100, loads)).toBeCloseTo(10, EXACT);
  });

  it.each(READINGS)(
    'loses 10 V in wires of 1.164 cm², to the four figures of the print, read as %s',
    (_, loads) => {
      expect(Math.abs(lossWith(1.78e-8 / (AREA_CM2 * 1e-4), loads) / 10 - 1)).toBeLessThan(0.0005);
    },
  );
});

/** Any connected network: a tree, some more branches, some nodes held, some draws. */
const anyCircuit: fc.Arbitrary<Circuit> = fc
  .record({
    parents: fc.array(fc.nat(1000), { minLength: 1, maxLength: 40 }),
    more: fc.array(fc.tuple(fc.nat(1000), fc.nat(1000)), { maxLength: 25 }),
    ohms: fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 70, maxLength: 70 }),
    held: fc.array(fc.tuple(fc.nat(1000), fc.integer({ min: -12, max: 12 })), { maxLength: 3 }),
    loads: fc.array(fc.tuple(fc.nat(1000), fc.nat(1000), fc.integer({ min: 0, max: 2000 })), {
      maxLength: 20,
    }),
  })
  .map(({ parents, more, ohms, held, loads }): Circuit => {
    const nodes = parents.length + 1;
    const pairs = [
      ...parents.map((parent, i) => [i + 1, parent % (i + 1)] as const),
      ...more.map(([a, b]) => [a % nodes, b % nodes] as const).filter(([a, b]) => a !== b),
    ];
    const sources = new Map(held.map(([node, volts]) => [1 + (node % (nodes - 1)), volts] as const));
    return {
      nodes,
      held: [...sources],
      resistors: pairs.map(([a, b], i) => [a, b, (ohms[i] ?? 1) / 1000]),
      loads: loads.map(([from, to, ma]) => [from % nodes, to % nodes, ma / 1000]),
    };
  });

const isHeld = ({ held }: Circuit, node: number): boolean =>
  node === 0 || held.some(([each]) => each === node);

/** Current out of each node through its resistors, less what is put in. */
function imbalance(circuit: Circuit, amperes: readonly number[]): number[] {
  const sums = new Array<number>(circuit.nodes).fill(0);
  const add = (node: number, value: number): void => {
    sums[node] = (sums[node] ?? 0) + value;
  };
  circuit.resistors.forEach(([a, b], i) => {
    add(a, amperes[i] as number);
    add(b, -(amperes[i] as number));
  });
  for (const [from, to, value] of circuit.loads) {
    add(from, value);
    add(to, -value);
  }
  return sums;
}

const largest = (values: readonly number[]): number => Math.max(1e-3, ...values.map(Math.abs));

describe('any network', () => {
  it('is solved as mathjs 15.2.0 solves the nodal equations, to 1e-9', () => {
    const property = fc.property(anyCircuit, (circuit) => {
      const [ours, theirs] = [solved(circuit), byLibrary(circuit)];
      const volts = largest(theirs.volts);
      ours.volts.forEach((v, node) => {
        expect(Math.abs(v - (theirs.volts[node] as number)) / volts).toBeLessThan(1e-9);
      });
      const amperes = largest(theirs.amperes);
      ours.amperes.forEach((i, branch) => {
        expect(Math.abs(i - (theirs.amperes[branch] as number)) / amperes).toBeLessThan(1e-9);
      });
    });
    fc.assert(property, runs(300));
  });

  it('keeps every current: what flows to a node flows off it, and power in is loads and losses', () => {
    const property = fc.property(anyCircuit, (circuit) => {
      const { volts, amperes } = solved(circuit);
      const left = imbalance(circuit, amperes);
      const scale = largest(amperes);
      left.forEach((value, node) => {
        if (!isHeld(circuit, node)) expect(Math.abs(value) / scale).toBeLessThan(1e-9);
      });
      const given = left.reduce((sum, value, node) => sum + value * (volts[node] as number), 0);
      const lost = circuit.resistors.reduce(
        (sum, [, , ohm], i) => sum + ohm * (amperes[i] as number) ** 2,
        0,
      );
      const used = circuit.loads.reduce(
        (sum, [from, to, value]) => sum + ((volts[from] as number) - (volts[to] as number)) * value,
        0,
      );
      expect(Math.abs(given - lost - used) / Math.max(1, lost, Math.abs(used))).toBeLessThan(1e-9);
    });
    fc.assert(property, runs(200));
  });

  it('is linear: two sets of loads together do what each does alone, added', () => {
    const property = fc.property(anyCircuit, fc.nat(20), (circuit, at) => {
      const still = circuit.held.map(([node]) => [node, 0] as const);
      const part = (loads: Circuit['loads']) => solved({ ...circuit, held: still, loads }).volts;
      const [a, b] = [part(circuit.loads.slice(0, at)), part(circuit.loads.slice(at))];
      const whole = part(circuit.loads);
      const scale = largest([...a, ...b, ...whole]);
      whole.forEach((v, node) => {
        expect(Math.abs(v - (a[node] as number) - (b[node] as number)) / scale).toBeLessThan(1e-9);
      });
    });
    fc.assert(property, runs(200));
  });

  it('is reciprocal: what a current here does there, it does here from there', () => {
    const property = fc.property(anyCircuit, fc.nat(1000), fc.nat(1000), (circuit, i, j) => {
      const [here, there] = [i % circuit.nodes, j % circuit.nodes];
      const still = { ...circuit, held: [] };
      const transfer = (from: number, to: number): number =>
        solved({ ...still, loads: [[from, 0, 1]] }).volts[to] as number;
      const [one, other] = [transfer(here, there), transfer(there, here)];
      expect(Math.abs(one - other)).toBeLessThan(1e-9 * Math.max(1, Math.abs(one)));
    });
    fc.assert(property, runs(200));
  });

  it('takes two branches side by side for one of half the resistance', () => {
    const property = fc.property(anyCircuit, fc.nat(1000), (circuit, pick) => {
      const at = pick % circuit.resistors.length;
      const halved = circuit.resistors.map(([a, b, ohm], i) => [a, b, i === at ? ohm / 2 : ohm] as const);
      const doubled = [...circuit.resistors, circuit.resistors[at] as (typeof circuit.resistors)[number]];
      const [one, two] = [halved, doubled].map((resistors) => solved({ ...circuit, resistors }).volts);
      const scale = largest(one as number[]);
      one?.forEach((v, node) => {
        expect(Math.abs(v - (two?.[node] as number)) / scale).toBeLessThan(1e-9);
      });
    });
    fc.assert(property, runs(200));
  });

  it('does at its ends what its reduction says', () => {
    const property = fc.property(anyCircuit, (circuit) => {
      const ends = [0, ...circuit.held.map(([node]) => node)];
      const at = [0, ...circuit.held.map(([, volts]) => volts * 1000)];
      const reduction = reductionOf(circuit, ends);
      const left = imbalance(circuit, solved(circuit).amperes);
      ends.forEach((end, i) => {
        let ma = -reduction.currentAt(end);
        for (const { a, b, siemens } of reduction.ties) {
          const other = a === end ? b : b === end ? a : undefined;
          if (other !== undefined) ma += siemens * ((at[i] as number) - (at[ends.indexOf(other)] as number));
        }
        const loads = (circuit.loads.length + 1) * 2;
        expect(Math.abs(ma / 1000 - (left[end] as number))).toBeLessThan(
          1e-9 * Math.max(loads, Math.abs(ma)),
        );
      });
    });
    fc.assert(property, runs(200));
  });

  it('without an end has no potential and no current', () => {
    const { volts, amperes } = solved({
      nodes: 6,
      held: [],
      resistors: [
        [0, 1, 1],
        [2, 3, 1],
        [3, 4, 1],
        [4, 2, 1],
        [4, 5, 1],
      ],
      loads: [],
    });
    expect(volts.slice(0, 2)).toEqual([0, 0]);
    expect(volts.slice(2)).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
    expect(amperes.map((value) => value || 0)).toEqual([0, 0, 0, 0, 0]);
  });

  it('of hardly any resistance still shares its currents exactly', () => {
    const { amperes } = solved({
      nodes: 4,
      held: [[1, 12]],
      resistors: [
        [1, 2, 0],
        [1, 2, 0],
        [2, 3, 1e-12],
      ],
      loads: [[3, 0, 0.3]],
    });
    [0.15, 0.15, 0.3].forEach((value, i) => {
      expect(amperes[i]).toBeCloseTo(value, 3);
    });
  });
});

describe.skipIf(!hasSpice)('ngspice (runs where it is installed)', () => {
  it.each([
    ['W1', W1],
    ['W2', W2],
    ['W3', W3],
    ['W4', W4],
    ['W5', W5],
    ['W7', W7],
    ['W8', W8],
  ])('agrees on %s', (_, circuit) => {
    const theirs = bySpice(circuit);
    const ours = solved(circuit).volts;
    expect(theirs).toHaveLength(circuit.nodes);
    ours.forEach((v, node) => {
      expect(Math.abs(v - (theirs[node] as number))).toBeLessThan(1e-9);
    });
  });

  it('agrees on networks with loops', () => {
    for (const circuit of fc.sample(anyCircuit, { seed: 1, numRuns: 10 })) {
      const theirs = bySpice(circuit);
      const ours = solved(circuit).volts;
      const scale = largest(ours);
      ours.forEach((v, node) => {
        expect(Math.abs(v - (theirs[node] as number)) / scale).toBeLessThan(1e-8);
      });
    }
  });
});
