import { powerOf } from '../../src/index.ts';
import { useAnalysis } from '../hooks.ts';
import '../style/case.css';
import '../style/power.css';
import { figure, voltageName } from '../panels/figures.ts';
import { FoldPanel } from '../panels/fold-panel.tsx';
import { Arrivals } from './arrivals.tsx';
import { BetterFeeds } from './better-feeds.tsx';
import { HowManyMore } from './how-many-more.tsx';
import { ModuleButton } from './module-button.tsx';
import { type PowerView, powerView } from './power-view.ts';
import { watts } from './power-words.ts';
import { SupplyBars } from './supply-bars.tsx';

/** Named one by one; of more there is a number. */
const MOST_NAMED = 12;

function UnfedModules({ unfed }: PowerView) {
  if (unfed.length === 0) return null;
  const rest = unfed.length - MOST_NAMED;
  return (
    <section className="unfed" aria-label="Not fed">
      <h3>Not fed</h3>
      <p className="eaters">
        {unfed.slice(0, MOST_NAMED).map(({ id, name, voltages }) => (
          <ModuleButton key={id} id={id}>
            {name} <small>{voltages.map(voltageName).join(', ')}</small>
          </ModuleButton>
        ))}
        {rest > 0 && <small>and {rest} more</small>}
      </p>
    </section>
  );
}

function Boards({ boards }: PowerView) {
  if (boards.length === 0) return null;
  return (
    <section className="boards" aria-label="Boards">
      <h3>Boards</h3>
      <ul>
        {boards.map(({ id, name, used, headers, lines }) => (
          <li key={id}>
            <b>{name}</b>{' '}
            <span>
              {used} of {headers} headers used, {headers - used} free
            </span>
            {lines.map(({ voltage, ma, limitMa }) => (
              <small key={voltage}>
                {voltageName(voltage)} {figure(ma, 0)} mA
                {limitMa !== undefined && ` of its limit of ${figure(limitMa, 0)}`}
                {limitMa !== undefined && ma > limitMa * (1 + 1e-6) && ', too much'}
              </small>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}

function WattsInAll({ watts: { given, used, lost, rows } }: PowerView) {
  return (
    <section className="watts" aria-label="Watts">
      <h3>Watts</h3>
      <dl>
        <div>
          <dt>All supplies give</dt>
          <dd>{watts(given)}</dd>
        </div>
        {rows.map(({ name, watts: own }) => (
          <div key={name}>
            <dt>Modules of {name}</dt>
            <dd>{watts(own)}</dd>
          </div>
        ))}
        {rows.length > 1 && (
          <div>
            <dt>Modules in all</dt>
            <dd>{watts(used)}</dd>
          </div>
        )}
        <div>
          <dt>Lost in ribbons, contacts and leads</dt>
          <dd>{watts(lost)}</dd>
        </div>
      </dl>
    </section>
  );
}

/** What supplies give, boards pass on, ribbons lose and modules get. */
export function PowerPanel() {
  const { derived } = useAnalysis();
  const power = powerOf(derived);
  const view = powerView(power);
  return (
    <FoldPanel title="Power" name="power-panel">
      <SupplyBars {...view} />
      <UnfedModules {...view} />
      <Arrivals power={power} />
      <BetterFeeds take={derived} />
      <HowManyMore take={derived} />
      <Boards {...view} />
      <WattsInAll {...view} />
      <p className="aside">
        Estimates from nominal values: direct current, steady state, copper and contacts alike. What modules
        draw at switch-on is not in them. Measure before you rely on it.
      </p>
    </FoldPanel>
  );
}
