import { dropMvOf, GND } from '../../src/index.ts';
import { HEAT_STEPS, heatColours } from '../canvas/draw/heat.ts';
import { LEAST_SCALE } from '../canvas/draw/labels.ts';
import { THEMES } from '../canvas/theme.ts';
import { useAnalysis, useEditor, useSession } from '../hooks.ts';
import { viewportNow } from '../store/view.ts';
import { useThemeName } from '../style/use-theme.ts';
import { millivolts } from './power-words.ts';

/** Whether figures on ribbons have room at the scale shown. */
function useHasCurrents(): boolean {
  const editor = useEditor();
  useAnalysis();
  useSession(({ viewport, stage }) => viewport ?? stage);
  return viewportNow(editor).scale >= LEAST_SCALE;
}

function currentsWords(side: 'front' | 'rear', hasCurrents: boolean): string {
  if (side === 'front') return 'Turn to the rear for the current in each ribbon.';
  if (!hasCurrents) return 'Zoom in for the current in each ribbon.';
  return 'On ribbons: mA, and which way the current flows.';
}

/** What the colours and figures of the heat map mean. */
export function HeatScale({ line }: { readonly line: string }) {
  const theme = THEMES[useThemeName()];
  const side = useSession((session) => session.side);
  const { kit, limits } = useAnalysis().derived;
  const hasCurrents = useHasCurrents();
  const voltage = kit.voltages.get(line);
  const allowedMv = voltage ? dropMvOf(voltage) : limits.groundShiftMv;
  const ends = HEAT_STEPS.map((share) => millivolts(share * allowedMv));
  const what =
    line === GND
      ? 'Shift against the supply’s ground, up to … mV'
      : 'Lost on the way there and back, up to … mV';
  return (
    <div className="heat-scale">
      <p>{what}</p>
      <ul className="steps">
        {heatColours(theme, side).map((background, step) => (
          <li key={background}>
            <i
              aria-hidden="true"
              className={step === HEAT_STEPS.length ? 'beyond' : undefined}
              style={{ background }}
            />
            <span>
              {step < HEAT_STEPS.length ? (
                <>
                  <span className="unseen">up to </span>
                  {ends[step]}
                </>
              ) : (
                'more'
              )}
            </span>
          </li>
        ))}
        <li>
          <i aria-hidden="true" className="missing" />
          <span>not reached</span>
        </li>
      </ul>
      <p className="aside">
        {line === GND ? 'Between linked modules, ' : ''}
        {millivolts(allowedMv)} mV {line === GND ? 'is worth knowing' : 'are allowed'}. No figure: does not
        use it. {currentsWords(side, hasCurrents)} Figures go while something moves.
      </p>
    </div>
  );
}
