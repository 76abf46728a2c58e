import type { MeterReading } from '../../src/index.ts';
import type { ExpectedAt, PowerPlace } from '../../src/sheet.ts';
import { parseMeasure } from '../panels/case/parse-measure.ts';
import { figure, voltageName } from '../panels/figures.ts';
import { TextField } from '../panels/text-field.tsx';
import { currentWords, isAsExpected, voltageWords } from './deviation-words.ts';
import { useBench } from './use-bench.ts';

interface FieldProps {
  readonly place: PowerPlace;
  readonly line: string;
  readonly quantity: 'ma' | 'volts';
  readonly value: number | undefined;
  readonly expected: number | undefined;
}

/** A figure from the meter, with its unit; what stands in the empty field is what is expected. */
function ReadingField({ place, line, quantity, value, expected }: FieldProps) {
  const { editor, take, perform, mark } = useBench();
  const unit = quantity === 'ma' ? 'mA' : 'V';
  const commit = (text: string): void => {
    const measured = text.trim() === '' ? null : parseMeasure(text, unit);
    if (measured === null && text.trim() !== '') {
      editor.session.setState({ banner: `What was measured must be a number of ${unit}.` });
      return;
    }
    perform({
      type: 'note-measured',
      take,
      on: place.on,
      id: place.id,
      line,
      quantity,
      value: measured,
      ...mark(),
    });
  };
  return (
    <span className="reading">
      <TextField
        label={`${voltageName(line)} measured at ${place.name}, ${unit}`}
        decimal
        value={value === undefined ? '' : figure(value)}
        placeholder={expected === undefined ? '?' : figure(expected, quantity === 'ma' ? 1 : 2)}
        onCommit={commit}
      />
      <small aria-hidden="true">{unit}</small>
    </span>
  );
}

function deviation({ ma, volts, nominal }: ExpectedAt, quantity: 'ma' | 'volts', measured: number): string {
  if (quantity === 'ma') return currentWords(measured, ma);
  return volts === undefined ? 'was not expected here' : voltageWords(measured, volts, nominal);
}

function Line({
  place,
  expected,
  reading,
}: {
  readonly place: PowerPlace;
  readonly expected: ExpectedAt;
  readonly reading: MeterReading | undefined;
}) {
  const asked = (quantity: 'ma' | 'volts'): boolean =>
    expected[quantity] !== undefined || (quantity === 'ma' && place.on === 'module');
  const told = (['ma', 'volts'] as const).flatMap((quantity) => {
    const measured = asked(quantity) ? reading?.[quantity] : undefined;
    return measured === undefined ? [] : [deviation(expected, quantity, measured)];
  });
  const words = told.length === 2 && told[0] === told[1] ? told.slice(1) : told;
  return (
    <>
      <span>{voltageName(expected.line)}</span>
      {(['volts', 'ma'] as const).map((quantity) =>
        asked(quantity) ? (
          <ReadingField
            key={quantity}
            place={place}
            line={expected.line}
            quantity={quantity}
            value={reading?.[quantity]}
            expected={expected[quantity]}
          />
        ) : (
          <span key={quantity} />
        ),
      )}
      {words.length > 0 && (
        <small className={words.every(isAsExpected) ? 'outcome' : 'outcome off'}>{words.join('; ')}</small>
      )}
    </>
  );
}

/** What is measured at one place, voltage by voltage, beside what is expected. */
export function Readings({
  place,
  readings,
}: {
  readonly place: PowerPlace;
  readonly readings: readonly MeterReading[];
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: fieldsets resist being laid out.
    <div className="readings" role="group" aria-label={`Measured at ${place.name}`}>
      <b>{place.name}</b>
      {place.lines.map((expected) => (
        <Line
          key={expected.line}
          place={place}
          expected={expected}
          reading={readings.find(
            ({ on, id, line }) => on === place.on && id === place.id && line === expected.line,
          )}
        />
      ))}
    </div>
  );
}
