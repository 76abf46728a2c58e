import { deriveTake, takeInCase } from '../../src/index.ts';
import { type ChangeStep, changeSheet, STAGE_WORDS, stagesOf } from '../../src/sheet.ts';
import { markInCase } from '../actions/mark-in-case.ts';
import { useAnalysis, useLayout, useTake } from '../hooks.ts';
import '../style/case.css';
import '../style/as-built.css';
import { ActionButton } from '../panels/action-button.tsx';
import { FoldPanel } from '../panels/fold-panel.tsx';
import { Tick } from './tick.tsx';
import { useBench } from './use-bench.ts';

function Step({ step, from }: { readonly step: ChangeStep; readonly from: string }) {
  const { take, perform, mark } = useBench();
  const { built } = useTake();
  const key = `change/${from}/${step.key}`;
  const done = built?.doneSteps?.find((one) => one.step === key);
  return (
    <li>
      <Tick
        checked={done !== undefined}
        mark={done}
        onChange={(isDone) => perform({ type: 'tick-step', take, step: key, done: isDone, ...mark() })}
      >
        {step.words}
      </Tick>
    </li>
  );
}

function Steps() {
  const inCase = useLayout(takeInCase);
  const kit = useLayout((layout) => layout.kit);
  const { derived } = useAnalysis();
  const take = useTake();
  if (!inCase) return <p>No take is marked as what is in the case.</p>;
  if (inCase.id === take.id) return <p>This take is what is in the case.</p>;
  const sheet = changeSheet(deriveTake(kit, inCase), derived);
  return (
    <>
      <p>
        From “{sheet.from}”, which is in the case, to “{sheet.to}”.
      </p>
      {sheet.steps.length === 0 && <p>Nothing has to be changed.</p>}
      {stagesOf(sheet).map(({ stage, steps }) => (
        <section key={stage} aria-label={STAGE_WORDS[stage]}>
          <h3>{STAGE_WORDS[stage]}</h3>
          <ol className="power-steps">
            {steps.map((step) => (
              <Step key={step.key} step={step} from={inCase.id} />
            ))}
          </ol>
        </section>
      ))}
      <div className="deeds">
        <ActionButton action={markInCase} shows="both" />
      </div>
    </>
  );
}

/** The way from what is in the case to the take shown, step by step. */
export function ChangePanel() {
  return (
    <FoldPanel title="Change sheet" name="as-built">
      <Steps />
    </FoldPanel>
  );
}
