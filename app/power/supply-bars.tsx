import { estimate } from '../../src/index.ts';
import { figure, voltageName } from '../panels/figures.ts';
import { ModuleButton } from './module-button.tsx';
import type { Bar, PowerView } from './power-view.ts';
import { leftWords, percent, watts } from './power-words.ts';

/** Those that draw most are named; of all others there is a number. */
const MOST_NAMED = 3;

const widthOf = (ma: number, full: number): string => `${full > 0 ? (100 * ma) / full : 0}%`;

function Eaters({ eaters, voltage }: Bar) {
  const rest = eaters.length - MOST_NAMED;
  if (eaters.length === 0) return null;
  return (
    <p className="eaters">
      <small>Most</small>
      {eaters.slice(0, MOST_NAMED).map(({ id, name, ma, share }) => (
        <ModuleButton key={id} id={id}>
          {name} <small>{percent(share)}</small>
          <span className="unseen">
            , {estimate(ma)} mA on {voltageName(voltage)}
          </span>
        </ModuleButton>
      ))}
      {rest > 0 && <small>and {rest} more</small>}
    </p>
  );
}

function SupplyBar({ bar, headroom }: { readonly bar: Bar; readonly headroom: number }) {
  const { voltage, ma, ratingMa, untilHeadroomMa, unknown } = bar;
  const full = Math.max(ma, ratingMa);
  return (
    <li>
      <p className="bar-line">
        <b>{voltageName(voltage)}</b>
        <span>
          {unknown.length > 0 && 'at least '}
          <b>{estimate(ma)}</b> of {figure(ratingMa, 0)} mA
        </span>
      </p>
      <div className="bar" aria-hidden="true">
        <i
          className="kept"
          style={{ left: widthOf(untilHeadroomMa, full), right: widthOf(full - ratingMa, full) }}
        />
        <i className={ma > ratingMa ? 'drawn over' : 'drawn'} style={{ width: widthOf(ma, full) }} />
        <i className="until" style={{ left: widthOf(untilHeadroomMa, full) }} />
      </div>
      <p className="aside">
        {leftWords(bar, headroom)}
        {unknown.length > 0 && ` ${unknown.join(', ')}: unknown, counted as 0.`}
      </p>
      <Eaters {...bar} />
    </li>
  );
}

/** Each supply with a bar for each voltage that it gives. */
export function SupplyBars({ supplies, headroom }: PowerView) {
  if (supplies.length === 0) return <p className="aside">No supply yet: My case has them.</p>;
  return supplies.map(({ id, name, watts: given, bars }) => (
    <section key={id} className="supply-bars" aria-label={name}>
      <h3>
        {name} <small>gives {watts(given)}</small>
      </h3>
      {bars.length === 0 && <p className="aside">It gives no voltage.</p>}
      <ul>
        {bars.map((bar) => (
          <SupplyBar key={bar.voltage} bar={bar} headroom={headroom} />
        ))}
      </ul>
    </section>
  ));
}
