import { useId, useRef, useState } from 'react';
import { type Bus, type Edit, freshKindId, type Kit, POWER_BUSES, type Voltage } from '../../src/index.ts';
import { useEditor, useLayout } from '../hooks.ts';
import {
  type BusDraft,
  busDraftOf,
  MOST_PINS,
  NEW_BUS_DRAFT,
  pinsShown,
  readBus,
} from '../kinds/bus-draft.ts';
import { Problem, TextRow } from '../kinds/field.tsx';
import { useTold } from '../kinds/kind-form.tsx';
import { unusedName } from '../kinds/typed.ts';
import { Icon } from '../panels/icon.tsx';
import { changesNothing } from './changes-nothing.ts';
import { EditorHead } from './editor-head.tsx';
import type { Numbering } from './numbering.ts';
import { NumberingChoice } from './numbering-pictures.tsx';
import { PinMap } from './pin-map.tsx';
import { StepBar } from './step-bar.tsx';

/** Volts by name where a ready pattern carries a voltage that the kit lacks. */
const USUAL_VOLTS: Readonly<Record<string, number>> = { '+12': 12, '-12': -12, '+5': 5 };

/** Voltages of the ready patterns that lie on the pins and that the kit does not have yet. */
function missingVoltages({ voltages }: Kit, { pinout }: Bus): readonly Voltage[] {
  const known = new Set(voltages.map(({ id }) => id));
  return Object.entries(USUAL_VOLTS)
    .filter(([id]) => pinout.includes(id) && !known.has(id))
    .map(([id, volts]) => ({ id, volts }));
}

function stepFor(kit: Kit, bus: Bus, before: Bus | undefined): Edit {
  const voltages = missingVoltages(kit, bus).map((voltage): Edit => ({ type: 'add-voltage', voltage }));
  const edit: Edit = { type: before ? 'change-bus' : 'add-bus', bus };
  if (voltages.length === 0) return edit;
  return {
    type: 'several',
    label: `${before ? 'change' : 'make'} the bus ${bus.name}`,
    edits: [...voltages, edit],
  };
}

interface Props {
  readonly before: Bus | undefined;
  /** The bus that is shown from now on; `null`: none. */
  readonly onShow: (bus: string | null) => void;
}

/** A bus: its name, what lies on each pin, how many members a host takes. */
export function BusEditor({ before, onShow }: Props) {
  const { layouts } = useEditor();
  const layout = useLayout((present) => present);
  const { kit } = layout;
  const [draft, setDraft] = useState<BusDraft>(() =>
    before ? busDraftOf(before) : { ...NEW_BUS_DRAFT, name: unusedName(kit.buses, 'New bus') },
  );
  const [numbering, setNumbering] = useState<Numbering>('zigzag');
  const { bus, problems } = readBus(kit, draft, before);
  const { told, leave, tellAll } = useTold(problems);
  const root = useRef<HTMLDivElement>(null);
  const pinsProblem = useId();
  const count = pinsShown(draft);
  const pins = Array.from({ length: count }, (_, i) => draft.pins[i] ?? '');
  const change = (part: Partial<BusDraft>): void => setDraft({ ...draft, ...part });
  const resize = (pairs: number): void => change({ count: String(count + 2 * pairs) });

  const step = bus && stepFor(kit, bus, before);
  const isSame = before !== undefined && changesNothing(layout, step);

  const amiss = (): void => {
    tellAll();
    requestAnimationFrame(() => {
      const wrong = root.current?.querySelector<HTMLElement>('[aria-invalid]');
      (wrong ?? root.current?.querySelector<HTMLElement>('.pin-map input'))?.focus();
    });
  };
  const clone = (): void => {
    if (!before) return;
    const name = unusedName(kit.buses, `${before.name}, copy`);
    const copy = { ...before, name, id: freshKindId(kit.buses, name) };
    if (layouts.run({ type: 'add-bus', bus: copy }).ok) onShow(copy.id);
  };

  return (
    <div className="detail" ref={root}>
      <EditorHead
        title={before ? before.name : 'A new bus'}
        {...(before && {
          there: {
            name: before.name,
            removal: { type: 'remove-bus', bus: before.id },
            onClone: clone,
            onGone: () => onShow(null),
          },
        })}
      />
      <div className="columns">
        <div className="fields">
          <TextRow
            label="Name"
            value={draft.name}
            problem={told('name')}
            selects
            onText={(name) => change({ name })}
            onLeave={leave('name')}
          />
          <TextRow
            label="Members a host takes"
            decimal
            size={4}
            value={draft.most}
            problem={told('most')}
            placeholder="–"
            hint="empty: no limit"
            onText={(most) => change({ most })}
            onLeave={leave('most')}
          />
          <div className="row">
            <span className="as-label">Start from</span>
            <div className="control">
              {POWER_BUSES.map((pattern) => (
                <button
                  key={pattern.id}
                  type="button"
                  className="plain"
                  onClick={() =>
                    change({
                      ...busDraftOf(pattern),
                      name: before ? draft.name : unusedName(kit.buses, pattern.name),
                    })
                  }
                >
                  {pattern.name}
                </button>
              ))}
              <small className="hint-words">
                the usual power headers of 3U modules: common practice, no source. Check them against your
                modules: a wrong pin destroys them.
              </small>
            </div>
          </div>
        </div>
        <NumberingChoice value={numbering} onChoice={setNumbering} />
        <div className="pins-column">
          <div className="pair-deeds">
            <b>{count} pins</b>
            <button
              type="button"
              className="quiet"
              aria-disabled={count <= 2}
              onClick={() => count > 2 && resize(-1)}
            >
              <Icon name="minus" />
              <span>Last pair</span>
            </button>
            <button
              type="button"
              className="quiet"
              aria-disabled={count >= MOST_PINS}
              onClick={() => count < MOST_PINS && resize(1)}
            >
              <Icon name="plus" />
              <span>A pair</span>
            </button>
          </div>
          <PinMap kit={kit} pins={pins} numbering={numbering} onPins={(lines) => change({ pins: lines })} />
          <Problem id={pinsProblem} words={told('pins')} />
        </div>
      </div>
      <StepBar
        step={step}
        label={before ? 'Change the bus' : 'Put in stock'}
        said={bus ? `${bus.name} is ${before ? 'changed' : 'in stock'}.` : ''}
        isIdle={isSame}
        onAmiss={amiss}
        onDone={() => bus && onShow(bus.id)}
      >
        {!isSame && before && (
          <button type="button" className="quiet" onClick={() => setDraft(busDraftOf(before))}>
            As it was
          </button>
        )}
      </StepBar>
    </div>
  );
}
