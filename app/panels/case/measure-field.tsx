import { useEditor } from '../../hooks.ts';
import { figure } from '../figures.ts';
import { TextField } from '../text-field.tsx';
import { parseMeasure, type Unit } from './parse-measure.ts';

interface Props {
  /** "Width" */
  readonly what: string;
  readonly unit: Unit;
  /** What has the measure: "Upper row". */
  readonly of: string;
  readonly value: number | undefined;
  /** What stands in an empty field; absent: it may not be empty. */
  readonly empty?: string;
  readonly onCommit: (value: number | null) => void;
}

/** A measure with its unit, typed in place; other units of its sort are turned into it. */
export function MeasureField({ what, unit, of, value, empty, onCommit }: Props) {
  const { session } = useEditor();
  const commit = (text: string): void => {
    const measure = parseMeasure(text, unit);
    const isCleared = text.trim() === '' && empty !== undefined;
    if (measure !== null || isCleared) onCommit(measure);
    else session.setState({ banner: `${what} must be a number of ${unit}.` });
  };
  return (
    // biome-ignore lint/a11y/noLabelWithoutControl: the field within has a fuller name of its own.
    <label className="measure">
      <small aria-hidden="true">
        {what}, {unit}
      </small>
      <TextField
        label={`${what} of ${of}, ${unit}`}
        decimal
        placeholder={empty}
        value={value === undefined ? '' : figure(value)}
        onCommit={commit}
      />
    </label>
  );
}
