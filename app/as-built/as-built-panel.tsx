import { harnessStates, powerOf, takeInCase } from '../../src/index.ts';
import { type IslandDraw, type PowerStep, powerSteps } from '../../src/sheet.ts';
import { markInCase } from '../actions/mark-in-case.ts';
import { showChange } from '../actions/show-change.ts';
import { useAnalysis, useLayout, useSession, useTake } from '../hooks.ts';
import { ActionButton } from '../panels/action-button.tsx';
import '../style/case.css';
import '../style/as-built.css';
import { figure, voltageName } from '../panels/figures.ts';
import { FoldPanel } from '../panels/fold-panel.tsx';
import { TextField } from '../panels/text-field.tsx';
import { AdoptList } from './adopt-list.tsx';
import { HarnessList } from './harness-list.tsx';
import { Readings } from './readings.tsx';
import { Tick } from './tick.tsx';
import { useBench } from './use-bench.ts';

/** What a meter in an island's leads should show. */
function drawWords({ byVoltage, unknown }: IslandDraw): string {
  const each = byVoltage.map(({ voltage, ma }) => `${voltageName(voltage)} ${figure(ma, 0)} mA`);
  // A figure stays with its voltage and its unit.
  const drawn = each.map((words) => words.replaceAll(' ', '\u00a0')).join(', ');
  return `Through its leads: ${drawn}${unknown.length > 0 ? ', and what is not known' : ''}.`;
}

function StepItem({ step }: { readonly step: PowerStep }) {
  const { take, perform, mark } = useBench();
  const { built } = useTake();
  const done = built?.doneSteps?.find((one) => one.step === step.key);
  const readings = built?.readings ?? [];
  return (
    <li>
      <Tick
        checked={done !== undefined}
        mark={done}
        onChange={(isDone) => perform({ type: 'tick-step', take, step: step.key, done: isDone, ...mark() })}
      >
        <b>{step.title}</b>
        <span className="says">{step.looks.join(' ')}</span>
        {step.draw && <span className="says">{drawWords(step.draw)}</span>}
      </Tick>
      {step.places.length > 0 && (
        <details open={done === undefined && step.places.length < 3}>
          <summary>Meter: expected and measured</summary>
          {step.places.map((place) => (
            <Readings key={`${place.on} ${place.id}`} place={place} readings={readings} />
          ))}
        </details>
      )}
    </li>
  );
}

/** Which take stands in the case, and the way there from another one. */
function InTheCase() {
  const take = useTake();
  const inCase = useLayout(takeInCase);
  const isIt = inCase?.id === take.id;
  return (
    <section aria-label="In the case">
      <p>
        {isIt && 'This take is what is in the case.'}
        {!inCase && 'No take is marked as what is in the case.'}
        {inCase && !isIt && `“${inCase.name}” is what is in the case.`}
      </p>
      <div className="deeds">
        <ActionButton action={markInCase} shows="both" />
        {inCase && !isIt && <ActionButton action={showChange} shows="both" />}
      </div>
    </section>
  );
}

/** What was done and found at the bench: harnesses tested, powered up in order, figures from the meter. */
export function AsBuiltPanel() {
  const { editor } = useBench();
  const { derived } = useAnalysis();
  const take = useTake();
  const benchName = useSession((session) => session.benchName);
  const states = harnessStates(derived);
  const steps = powerSteps(powerOf(derived));
  const tested = states.filter(({ state }) => state === 'tested').length;
  const isDone = new Set((take.built?.doneSteps ?? []).map(({ step }) => step));
  const done = steps.filter(({ key }) => isDone.has(key)).length;
  return (
    <FoldPanel title="As built" name="as-built">
      <p className="how-far" role="status">
        {tested} of {states.length} harnesses tested · {done} of {steps.length} steps of powering up
      </p>
      <progress
        aria-label="How far it is"
        max={Math.max(1, states.length + steps.length)}
        value={tested + done}
      />
      <InTheCase />
      {/* biome-ignore lint/a11y/noLabelWithoutControl: the field within has a name of its own. */}
      <label className="who">
        <small aria-hidden="true">Who is at the bench</small>
        <TextField
          label="Who is at the bench"
          value={benchName}
          placeholder="a name, or nothing"
          onCommit={(text) => editor.session.setState({ benchName: text.trim().slice(0, 100) })}
        />
      </label>
      <h3>Ribbons and leads, unplugged</h3>
      {states.length === 0 ? <p>No ribbon is seated yet.</p> : <HarnessList states={states} />}
      <h3>Powering up, in this order</h3>
      <ol className="power-steps">
        {steps.map((step) => (
          <StepItem key={step.key} step={step} />
        ))}
      </ol>
      <AdoptList take={take} />
      <p className="aside">
        Switch off and unplug before a connector is touched, and wait. Extra-low voltage only, at headers,
        with a probe that bridges no pins. What is expected are estimates from nominal values.
      </p>
    </FoldPanel>
  );
}
