import { useId } from 'react';
import { voltageName } from '../panels/figures.ts';
import { Problem } from './field.tsx';
import type { DrawDraft } from './module-draft.ts';

interface Props {
  readonly voltage: string;
  readonly draw: DrawDraft;
  readonly problem: string | undefined;
  readonly onDraw: (draw: DrawDraft) => void;
  readonly onLeave: () => void;
}

/** What is drawn from one voltage: none, not known how much, or so many mA. Typing a number chooses the last. */
export function DrawRow({ voltage, draw, problem, onDraw, onLeave }: Props) {
  const id = useId();
  const name = voltageName(voltage);
  const radio = (is: DrawDraft['is'], label: string, unseen: string) => (
    <label className="radio">
      <input type="radio" name={id} checked={draw.is === is} onChange={() => onDraw({ ...draw, is })} />
      <span>
        {label}
        <span className="unseen">{unseen}</span>
      </span>
    </label>
  );
  return (
    <fieldset className="row radios draw" data-field={`draws ${voltage}`}>
      <legend>{name}</legend>
      <div className="control">
        {radio('none', 'none', ` drawn from ${name}`)}
        {radio('unknown', 'not known', ` how much is drawn from ${name}`)}
        {radio('known', '', `a known current from ${name}`)}
        <input
          className="field"
          aria-label={`Current from ${name}, mA`}
          aria-invalid={problem ? true : undefined}
          aria-describedby={problem ? `${id}-problem` : undefined}
          size={5}
          inputMode="decimal"
          autoComplete="off"
          value={draw.is === 'known' ? draw.ma : ''}
          onChange={({ currentTarget: { value } }) =>
            onDraw(value === '' ? { is: 'unknown', ma: '' } : { is: 'known', ma: value })
          }
          onBlur={onLeave}
        />
        <span className="unit">mA</span>
        <Problem id={`${id}-problem`} words={problem} />
      </div>
    </fieldset>
  );
}
