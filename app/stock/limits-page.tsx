import '../style/kind-desk.css';
import '../style/stock-pages.css';
import { useId, useRef, useState } from 'react';
import { LIMIT_FACTS } from '../../src/index.ts';
import { useLayout } from '../hooks.ts';
import { Problem } from '../kinds/field.tsx';
import { hasProblems } from '../kinds/typed.ts';
import { figure } from '../panels/figures.ts';
import { LIMIT_NAMES, type LimitName, limitsDraftOf, readLimits, toldIn, unitOf } from './limits-draft.ts';
import { StepBar } from './step-bar.tsx';

interface RowProps {
  readonly name: LimitName;
  readonly text: string;
  readonly problem: string | undefined;
  readonly onText: (text: string) => void;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function LimitRow({ name, text, problem, onText }: RowProps) {
  const id = useId();
  const { value, means, source } = LIMIT_FACTS[name];
  const usual = figure(toldIn(name, value));
  const unit = unitOf(name);
  const isOwn = text.trim() !== '' && text.trim() !== usual && text.trim() !== String(toldIn(name, value));
  return (
    <li className={isOwn ? 'own' : undefined}>
      <label htmlFor={id}>{capital(means)}</label>
      <div className="control">
        <input
          id={id}
          className="field"
          size={6}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          placeholder={usual}
          aria-invalid={problem ? true : undefined}
          aria-describedby={`${id}-source ${id}-problem`}
          onChange={({ currentTarget }) => onText(currentTarget.value)}
        />
        <span className="unit">{unit}</span>
        <button
          type="button"
          className="quiet reset"
          aria-disabled={!isOwn}
          aria-label={`Reset: ${means}`}
          title={`Back to ${usual} ${unit}`}
          onClick={() => isOwn && onText(String(toldIn(name, value)))}
        >
          Reset
        </button>
      </div>
      <small id={`${id}-source`}>
        Usually {usual} {unit}: {source}.
      </small>
      <Problem id={`${id}-problem`} words={problem} />
    </li>
  );
}

/** Every figure that the checks hold the drawing to, with where it comes from. */
export function LimitsPage() {
  const kit = useLayout((layout) => layout.kit);
  const [from, setFrom] = useState(kit);
  const [draft, setDraft] = useState(() => limitsDraftOf(kit));
  const root = useRef<HTMLDivElement>(null);
  // An undo, or another hand, changed them meanwhile.
  if (kit.limits !== from.limits) {
    setFrom(kit);
    setDraft(limitsDraftOf(kit));
  }
  const { step, problems } = readLimits(kit, draft);
  const usual = Object.fromEntries(
    LIMIT_NAMES.map((name) => [name, String(toldIn(name, LIMIT_FACTS[name].value))]),
  ) as typeof draft;
  const isUsual = LIMIT_NAMES.every((name) => draft[name] === usual[name] || draft[name] === '');
  const amiss = (): void => root.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus();
  return (
    <div className="stock-form limits-page" ref={root}>
      <div className="head">
        <div>
          <h3>Limits</h3>
          <p>
            What the checks hold this layout to. They are estimates of good practice: where the maker of a
            part says otherwise, follow the maker.
          </p>
        </div>
        <button
          type="button"
          className="plain"
          aria-disabled={isUsual}
          onClick={() => !isUsual && setDraft(usual)}
        >
          Reset all
        </button>
      </div>
      <ul className="limits">
        {LIMIT_NAMES.map((name) => (
          <LimitRow
            key={name}
            name={name}
            text={draft[name]}
            problem={problems[name]}
            onText={(text) => setDraft({ ...draft, [name]: text })}
          />
        ))}
      </ul>
      <StepBar
        step={step}
        label="Change limits"
        said="Limits changed."
        isIdle={!step && !hasProblems(problems)}
        onAmiss={amiss}
        onDone={() => undefined}
      />
    </div>
  );
}
