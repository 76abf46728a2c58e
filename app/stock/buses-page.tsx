import '../style/kind-desk.css';
import '../style/stock-pages.css';
import { useState } from 'react';
import { GND, type Kit, OPEN_LIMITS } from '../../src/index.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { counted } from '../kinds/loss.ts';
import { figure, voltageName } from '../panels/figures.ts';
import { Icon } from '../panels/icon.tsx';
import { BusEditor } from './bus-editor.tsx';
import { TwoPanes } from './two-panes.tsx';
import { VoltageEditor } from './voltage-editor.tsx';

/** What is open beside the list; `null` as an id: a new one. */
type Chosen = { readonly sort: 'bus' | 'voltage'; readonly id: string | null } | null;

const keyOf = (chosen: Chosen): string | null => chosen && `${chosen.sort} ${chosen.id ?? ''}`;

const FIFTEEN = [
  { id: '+15', volts: 15 },
  { id: '-15', volts: -15 },
] as const;

/** What a bus carries, in half a line. */
function busWords({ voltages }: Kit, pinout: readonly string[]): string {
  const lines = new Set(pinout.filter((line) => line !== '' && line !== GND));
  const carried = voltages.filter(({ id }) => lines.delete(id)).map(({ id }) => voltageName(id));
  const signals = lines.size > 0 ? [counted(lines.size, 'signal')] : [];
  return [`${pinout.length} pins`, ...carried, ...signals].join(' · ');
}

/** The buses, what lies on their pins, and the voltages that there are. */
export function BusesPage() {
  const { layouts, session } = useEditor();
  const kit = useLayout((layout) => layout.kit);
  const [chosen, setChosen] = useState<Chosen>(null);
  const bus = chosen?.sort === 'bus' ? kit.buses.find(({ id }) => id === chosen.id) : undefined;
  const voltage = chosen?.sort === 'voltage' ? kit.voltages.find(({ id }) => id === chosen.id) : undefined;
  const isGone = chosen?.id != null && !bus && !voltage;
  const shown = isGone ? null : chosen;
  const isCurrent = (sort: 'bus' | 'voltage', id: string | null) =>
    shown?.sort === sort && shown.id === id ? ('true' as const) : undefined;
  const missing = FIFTEEN.filter(({ id }) => !kit.voltages.some((other) => other.id === id));
  const addFifteen = (): void => {
    const done = layouts.run({
      type: 'several',
      label: 'add ±15 V',
      edits: missing.map((each) => ({ type: 'add-voltage', voltage: each })),
    });
    session.setState({ spoken: done.ok ? '±15 V is added.' : done.error });
  };

  return (
    <TwoPanes
      chosen={keyOf(shown)}
      onBack={() => setChosen(null)}
      list={
        <>
          <h3>Buses</h3>
          <p className="aside">What lies on the pins of a header: a link family, or a power connector.</p>
          <ul>
            {kit.buses.map(({ id, name, pinout }) => (
              <li key={id}>
                <button
                  type="button"
                  aria-current={isCurrent('bus', id)}
                  onClick={() => setChosen({ sort: 'bus', id })}
                >
                  <b>{name}</b>
                  <small>{busWords(kit, pinout)}</small>
                </button>
              </li>
            ))}
          </ul>
          <button type="button" className="quiet add" onClick={() => setChosen({ sort: 'bus', id: null })}>
            <Icon name="plus" />
            New bus
          </button>
          <h3>Voltages</h3>
          <ul>
            {kit.voltages.map(({ id, volts, dropMv }) => (
              <li key={id}>
                <button
                  type="button"
                  aria-current={isCurrent('voltage', id)}
                  onClick={() => setChosen({ sort: 'voltage', id })}
                >
                  <b>{voltageName(id)}</b>
                  <small>
                    {figure(volts)} V{dropMv === undefined ? '' : ` · may lose ${figure(dropMv)} mV`}
                  </small>
                </button>
              </li>
            ))}
          </ul>
          {missing.length > 0 && kit.voltages.length + missing.length <= OPEN_LIMITS.voltages.most && (
            <button type="button" className="quiet add" onClick={addFifteen}>
              <Icon name="plus" />
              {missing.length === 2 ? '±15 V' : voltageName(missing[0]?.id ?? '')}
            </button>
          )}
          <button
            type="button"
            className="quiet add"
            onClick={() => setChosen({ sort: 'voltage', id: null })}
          >
            <Icon name="plus" />
            Another voltage
          </button>
        </>
      }
      detail={
        shown === null ? (
          <p className="empty">Choose a bus or a voltage, or make a new one.</p>
        ) : shown.sort === 'bus' ? (
          <BusEditor
            key={JSON.stringify([shown, bus])}
            before={bus}
            onShow={(id) => setChosen(id === null ? null : { sort: 'bus', id })}
          />
        ) : (
          <VoltageEditor
            key={JSON.stringify([shown, voltage])}
            before={voltage}
            onShow={(id) => setChosen(id === null ? null : { sort: 'voltage', id })}
          />
        )
      }
    />
  );
}
