import { type ReactNode, useId } from 'react';

/** What a control must carry so that its label, its problem and its hint are told with it. */
interface ControlProps {
  readonly id: string;
  readonly 'aria-invalid'?: true;
  readonly 'aria-describedby'?: string;
}

interface Props {
  readonly label: string;
  /** What the number is of. */
  readonly unit?: string;
  readonly hint?: string | undefined;
  readonly problem?: string | undefined;
  readonly className?: string;
  /** What the form calls it, for whoever looks for it. */
  readonly field?: string;
  readonly children: (control: ControlProps) => ReactNode;
}

/** A control with its label before it and, under it, what is wrong with it. */
export function Field({ label, unit, hint, problem, className = '', field, children }: Props) {
  const id = useId();
  const told = [problem && `${id}-problem`, hint && `${id}-hint`].filter(Boolean).join(' ');
  return (
    <div className={`row ${className}`} data-field={field}>
      <label htmlFor={id}>{label}</label>
      <div className="control">
        {children({
          id,
          ...(problem && { 'aria-invalid': true as const }),
          ...(told && { 'aria-describedby': told }),
        })}
        {unit && <span className="unit">{unit}</span>}
        {hint && (
          <small className="hint-words" id={`${id}-hint`}>
            {hint}
          </small>
        )}
        <Problem id={`${id}-problem`} words={problem} />
      </div>
    </div>
  );
}

/** A problem in words; a diamond stands for it, as on the sheet. */
export function Problem({ id, words }: { readonly id: string; readonly words: string | undefined }) {
  if (!words) return null;
  return (
    <small className="problem" id={id}>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d="M8 .5 15.5 8 8 15.5.5 8z" />
      </svg>
      {words}.
    </small>
  );
}

interface TextProps extends Omit<Props, 'children'> {
  readonly value: string;
  readonly onText: (text: string) => void;
  readonly onLeave?: () => void;
  readonly decimal?: boolean;
  /** Characters that it shows. */
  readonly size?: number;
  readonly placeholder?: string;
  /** A first key press replaces it all. */
  readonly selects?: boolean;
}

/** A line of text or a figure. */
export function TextRow({
  value,
  onText,
  onLeave,
  decimal = false,
  size,
  placeholder,
  selects = false,
  ...field
}: TextProps) {
  return (
    <Field {...field}>
      {(control) => (
        <input
          {...control}
          className="field"
          value={value}
          size={size}
          placeholder={placeholder}
          inputMode={decimal ? 'decimal' : 'text'}
          spellCheck={false}
          autoComplete="off"
          onChange={(event) => onText(event.currentTarget.value)}
          onFocus={(event) => selects && event.currentTarget.select()}
          onBlur={onLeave}
        />
      )}
    </Field>
  );
}

interface ChoiceProps<T extends string> extends Omit<Props, 'children'> {
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChoice: (value: T) => void;
}

/** One of several, from a list. */
export function ChoiceRow<T extends string>({ value, options, onChoice, ...field }: ChoiceProps<T>) {
  return (
    <Field {...field}>
      {(control) => (
        <select
          {...control}
          className="field"
          value={value}
          onChange={(event) => onChoice(event.currentTarget.value as T)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

interface RadioProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string; readonly means?: string }[];
  readonly onChoice: (value: T) => void;
  readonly className?: string;
  readonly children?: ReactNode;
}

/** One of a few, all of them in sight. */
export function RadioRow<T extends string>({
  label,
  value,
  options,
  onChoice,
  className = '',
  children,
}: RadioProps<T>) {
  const name = useId();
  return (
    <fieldset className={`row radios ${className}`}>
      <legend>{label}</legend>
      <div className="control">
        {options.map((option) => (
          <label key={option.value} className="radio">
            <input
              type="radio"
              name={name}
              checked={option.value === value}
              onChange={() => onChoice(option.value)}
            />
            <span>
              {option.label}
              {option.means && <small>{option.means}</small>}
            </span>
          </label>
        ))}
        {children}
      </div>
    </fieldset>
  );
}
