import { dropMvOf, type Kit, type Voltage } from '../../src/index.ts';
import { hasProblems, type Problems, startReading, typed } from '../kinds/typed.ts';

/** A voltage as it stands in the form. */
export interface VoltageDraft {
  readonly id: string;
  readonly volts: string;
  /** Loss allowed at a module, mV; empty: the usual. */
  readonly dropMv: string;
}

export type VoltageField = keyof VoltageDraft;

export const NEW_VOLTAGE_DRAFT: VoltageDraft = { id: '', volts: '', dropMv: '' };

export const voltageDraftOf = ({ id, volts, dropMv }: Voltage): VoltageDraft => ({
  id,
  volts: typed(volts),
  dropMv: typed(dropMv),
});

/** Loss that is allowed where none is said, mV. */
export const USUAL_DROP_MV = dropMvOf({ id: '', volts: 1 });

const MOST_VOLTS = 1000;
const MOST_DROP_MV = 100_000;

/** An id as it is kept: a real minus and the unit are what people write and files do not. */
const plainId = (text: string): string => text.trim().replace('−', '-').replace(/\s*v$/i, '');

/** What is meant where only a name was typed: "+15" says its volts. */
const voltsFrom = (draft: VoltageDraft): string => {
  const id = plainId(draft.id);
  return draft.volts.trim() === '' && /^[+-]?\d+([.,]\d+)?$/.test(id) ? id.replace('+', '') : draft.volts;
};

/** @param before - the voltage that is changed; what the form does not show stays as it is */
export function readVoltage(
  kit: Pick<Kit, 'voltages'>,
  draft: VoltageDraft,
  before?: Voltage,
): { readonly voltage: Voltage | null; readonly problems: Problems<VoltageField> } {
  const read = startReading<VoltageField>();
  const id = draft.id === before?.id ? before.id : plainId(draft.id);
  const isTaken = kit.voltages.some((other) => other.id === id && id !== before?.id);
  if (id === '') read.wrong('id', 'Give it a short name, as in +15');
  if (!/^[\x20-\x7e]*$/.test(id) || id.length > 20)
    read.wrong('id', 'At most 20 letters, digits and signs of plain ASCII');
  if (/^gnd$/i.test(id)) read.wrong('id', 'GND is there already and no voltage');
  if (isTaken) read.wrong('id', 'Another one has this name');
  const volts = read.number(
    'volts',
    voltsFrom(draft).replace(/\s*v$/i, ''),
    'A number of volts, and not 0',
    (value) => value !== 0 && Math.abs(value) <= MOST_VOLTS,
  );
  const drop = read.maybe(
    'dropMv',
    draft.dropMv.replace(/\s*mv$/i, ''),
    'A number of mV from 0, or nothing for the usual',
    (value) => value >= 0 && value <= MOST_DROP_MV,
  );
  const { problems } = read;
  if (hasProblems(problems) || volts === undefined) return { voltage: null, problems };
  const { dropMv: _, ...rest } = before ?? {};
  return { voltage: { ...rest, id, volts, ...(drop !== undefined && { dropMv: drop }) }, problems };
}
