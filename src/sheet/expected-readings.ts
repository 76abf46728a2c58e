import { readingsWith } from '../electrical/readings.ts';
import type { PlacedHeader, PlacedModule } from '../geometry/place.ts';
import { GND } from '../layout/defaults.ts';
import type { WholeTake } from '../wiring/whole-take.ts';

/** What a meter should show at a module that works. */
export interface ExpectedReading {
  readonly module: PlacedModule;
  /** Where the probes go; absent where no header brings the line. */
  readonly header?: PlacedHeader;
  readonly line: string;
  /** From 1. */
  readonly pins: readonly number[];
  readonly groundPins: readonly number[];
  /** Between the two, V; absent where the line does not arrive. */
  readonly volts?: number;
}

const pinsOf = ({ bus }: PlacedHeader, line: string): number[] =>
  (bus.supplyPins.get(line) ?? []).map((pin) => pin + 1);

/** The header on which a line is best measured: one that something sits on, before any that carries it. */
function headerFor({ headers }: PlacedModule, line: string, { wiring }: WholeTake): PlacedHeader | undefined {
  const carrying = headers.filter(
    ({ bus, isolated }) => !isolated && bus.supplyPins.has(line) && bus.supplyPins.has(GND),
  );
  return (
    carrying.find((header) => wiring.seatedOn.get(header)?.some(({ conducts }) => conducts)) ?? carrying[0]
  );
}

/** Each voltage that each module needs, with where and what it should read; as the document lists modules. */
export function expectedReadings(take: WholeTake): readonly ExpectedReading[] {
  return readingsWith(take, [])
    .modules.toSorted((a, b) => a.module.index - b.module.index)
    .flatMap(({ module, readings }) =>
      readings
        .filter(({ line }) => line !== GND)
        .map(({ line, ownVolts }): ExpectedReading => {
          const header = headerFor(module, line, take);
          return {
            module,
            line,
            pins: header ? pinsOf(header, line) : [],
            groundPins: header ? pinsOf(header, GND) : [],
            ...(header && { header }),
            ...(ownVolts !== undefined && { volts: ownVolts }),
          };
        }),
    );
}
