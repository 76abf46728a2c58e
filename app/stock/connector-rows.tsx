import { HP_MM } from '../../src/index.ts';
import type { ConnectorDraft } from '../kinds/ribbon-draft.ts';
import { IconButton } from '../panels/case/icon-button.tsx';
import { parseMeasure } from '../panels/case/parse-measure.ts';
import { figure } from '../panels/figures.ts';
import { TextField } from '../panels/text-field.tsx';
import { gapBefore, movedTo, spaced, without } from './connector-places.ts';

interface Props {
  readonly connectors: readonly ConnectorDraft[];
  readonly conductors: number;
  readonly unit: 'HP' | 'mm';
  readonly isLoose: boolean;
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
  readonly onConnectors: (connectors: readonly ConnectorDraft[]) => void;
  /** Something typed is no measure. */
  readonly onAmiss: (words: string) => void;
}

const LEAST_MM = 0.1;

/** Every connector by itself: where it is, from the first one or from the one before it, and what it is like. */
export function ConnectorRows({
  connectors,
  conductors,
  unit,
  isLoose,
  chosen,
  onChoose,
  onConnectors,
  onAmiss,
}: Props) {
  const shown = (mm: number): string => figure(unit === 'HP' ? mm / HP_MM : mm, 3);
  /** HP or mm, whichever unit is written behind it. */
  const read = (text: string): number | null => {
    const isHp = /hp\s*$/i.test(text) || (unit === 'HP' && !/[a-z"]\s*$/i.test(text));
    const value = parseMeasure(text, isHp ? 'HP' : 'mm');
    return value !== null && isHp ? value * HP_MM : value;
  };
  const change = (index: number, part: Partial<ConnectorDraft>): void =>
    onConnectors(connectors.map((connector, i) => (i === index ? { ...connector, ...part } : connector)));
  const place = (text: string, then: (mm: number) => readonly ConnectorDraft[]): void => {
    const mm = read(text);
    if (mm === null || mm < LEAST_MM) onAmiss(`A place is a number of ${unit} above 0.`);
    else onConnectors(then(mm));
  };
  return (
    <ol className="connector-rows">
      {connectors.map((connector, i) => {
        const { atMm, type, face, key, ways } = connector;
        const name = `connector ${i + 1}`;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a connector is its number.
          <li key={i} className={i === chosen ? 'chosen' : undefined} onFocus={() => onChoose(i)}>
            <b>{i + 1}</b>
            {i === 0 ? (
              <span className="from">from here</span>
            ) : (
              <>
                {/* biome-ignore lint/a11y/noLabelWithoutControl: the field within has a fuller name of its own. */}
                <label>
                  <small aria-hidden="true">at, {unit}</small>
                  <TextField
                    label={`Place of ${name}, ${unit}`}
                    decimal
                    value={shown(atMm)}
                    onCommit={(text) => place(text, (mm) => movedTo(connectors, i, mm))}
                  />
                </label>
                {/* biome-ignore lint/a11y/noLabelWithoutControl: the field within has a fuller name of its own. */}
                <label>
                  <small aria-hidden="true">gap, {unit}</small>
                  <TextField
                    label={`Gap before ${name}, ${unit}`}
                    decimal
                    value={shown(gapBefore(connectors, i))}
                    onCommit={(text) => place(text, (mm) => spaced(connectors, i, mm))}
                  />
                </label>
              </>
            )}
            <label>
              <small aria-hidden="true">half</small>
              <select
                className="field"
                aria-label={`Socket or plug, ${name}`}
                value={type}
                onChange={({ currentTarget: { value } }) => {
                  const isUsual = face === (type === 'plug' ? 'rear' : 'panel');
                  const now = value as ConnectorDraft['type'];
                  change(i, { type: now, ...(isUsual && { face: now === 'plug' ? 'rear' : 'panel' }) });
                }}
              >
                <option value="socket">socket</option>
                <option value="plug">plug</option>
              </select>
            </label>
            <label>
              <small aria-hidden="true">ways</small>
              <input
                className="field"
                aria-label={`Ways of ${name}, empty for all`}
                size={4}
                inputMode="numeric"
                autoComplete="off"
                placeholder={`${conductors}`}
                value={ways}
                onChange={({ currentTarget }) => change(i, { ways: currentTarget.value })}
              />
            </label>
            {!isLoose && (
              <label>
                <small aria-hidden="true">opens to</small>
                <select
                  className="field"
                  aria-label={`Face of ${name}`}
                  value={face}
                  onChange={({ currentTarget: { value } }) =>
                    change(i, { face: value as ConnectorDraft['face'] })
                  }
                >
                  <option value="panel">the panel</option>
                  <option value="rear">the rear</option>
                </select>
              </label>
            )}
            <label>
              <small aria-hidden="true">bump</small>
              <select
                className="field"
                aria-label={`Key of ${name}`}
                value={key}
                onChange={({ currentTarget: { value } }) =>
                  change(i, { key: value as ConnectorDraft['key'] })
                }
              >
                <option value="none">none</option>
                <option value="with-stripe">with the stripe</option>
                <option value="against-stripe">against it</option>
              </select>
            </label>
            <IconButton
              icon="remove"
              label={`Take ${name} off`}
              enabled={connectors.length > 2}
              onClick={() => {
                onChoose(Math.max(i - 1, 0));
                onConnectors(without(connectors, i));
              }}
            />
          </li>
        );
      })}
    </ol>
  );
}
