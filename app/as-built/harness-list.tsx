import { HARNESS_TESTS, type HarnessState, type HarnessTestId } from '../../src/index.ts';
import { selectionKey } from '../canvas/model.ts';
import { Tick } from './tick.tsx';
import { useBench } from './use-bench.ts';

const TEST_WORDS: Readonly<Record<HarnessTestId, string>> = {
  stripe: 'Stripe',
  continuity: 'Continuity',
  'no-short': 'No short',
};

const STATE_WORDS: Readonly<Record<HarnessState['state'], string>> = {
  untested: 'not tested',
  partly: 'partly tested',
  tested: 'tested',
  changed: 'changed since test: test again',
};

function HarnessItem({ state }: { readonly state: HarnessState }) {
  const { editor, take, perform, mark } = useBench();
  const { name, ribbons, passed } = state;
  const [ribbon] = ribbons;
  const last = [...passed.values()].at(-1);
  if (ribbon === undefined) return null;
  const set = (tests: readonly HarnessTestId[], isPassed: boolean) =>
    perform(
      isPassed
        ? { type: 'tick-test', take, ribbon, tests, ...mark() }
        : { type: 'untick-test', take, ribbon, tests },
    );
  const select = () =>
    editor.session.setState({
      selection: new Set(ribbons.map((id) => selectionKey('ribbon', id))),
      focus: null,
    });
  return (
    <li className={`harness ${state.state}`}>
      <div className="harness-head">
        <button type="button" className="link" onClick={select}>
          {name}
        </button>
        <small>{[STATE_WORDS[state.state], last?.by, last?.at].filter(Boolean).join(', ')}</small>
        {state.state !== 'tested' && (
          <button
            type="button"
            className="plain"
            aria-label={`All three tests of ${name} passed`}
            onClick={() => set(HARNESS_TESTS, true)}
          >
            All three
          </button>
        )}
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: fieldsets resist being laid out. */}
      <div className="ticks" role="group" aria-label={`Tests of ${name}`}>
        {HARNESS_TESTS.map((test) => (
          <Tick key={test} checked={passed.has(test)} onChange={(isPassed) => set([test], isPassed)}>
            {TEST_WORDS[test]}
          </Tick>
        ))}
      </div>
    </li>
  );
}

/** Every harness and lead with its tests, those to be tested again first. */
export function HarnessList({ states }: { readonly states: readonly HarnessState[] }) {
  const again = states.filter(({ state }) => state === 'changed');
  const rest = states.filter(({ state }) => state !== 'changed');
  return (
    <ul className="harnesses">
      {[...again, ...rest].map((state) => (
        <HarnessItem key={state.ribbons.join('+')} state={state} />
      ))}
    </ul>
  );
}
