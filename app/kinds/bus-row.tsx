import { type KeyboardEvent, useId, useRef, useState } from 'react';
import type { Bus, Kit } from '../../src/index.ts';
import { PinMap } from '../stock/pin-map.tsx';
import { type BusDraft, NEW_BUS, NEW_BUS_DRAFT, pinsShown, readBus } from './bus-draft.ts';
import { ChoiceRow, Problem, TextRow } from './field.tsx';

const WRONG = '[aria-invalid]';

interface FormProps {
  readonly kit: Kit;
  readonly onBus: (bus: Bus) => void;
  readonly onDrop: () => void;
}

/** A new bus, small: its name, its pins, how many members a host takes. Enter makes it, Escape drops it. */
function BusForm({ kit, onBus, onDrop }: FormProps) {
  const [draft, setDraft] = useState(NEW_BUS_DRAFT);
  const [asked, setAsked] = useState(false);
  const root = useRef<HTMLFieldSetElement>(null);
  const pinsProblem = useId();
  const { bus, problems } = readBus(kit, draft);
  const shown = asked ? problems : {};
  const change = (part: Partial<BusDraft>): void => setDraft({ ...draft, ...part });

  const finish = (): void => {
    if (bus) {
      onBus(bus);
      return;
    }
    setAsked(true);
    requestAnimationFrame(() => {
      const wrong = root.current?.querySelector<HTMLElement>(WRONG);
      (wrong ?? root.current?.querySelector<HTMLElement>('.pin-map input'))?.focus();
    });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      onDrop();
    } else if (event.key === 'Enter' && event.target instanceof HTMLInputElement) {
      event.preventDefault();
      finish();
    }
  };

  return (
    <fieldset className="new-bus" ref={root} onKeyDown={onKeyDown}>
      <legend>New bus</legend>
      <TextRow
        label="Name of the bus"
        value={draft.name}
        problem={shown.name}
        onText={(name) => change({ name })}
      />
      <ChoiceRow
        label="Copy pins of"
        value=""
        options={[
          { value: '', label: 'choose…' },
          ...kit.buses.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChoice={(id) => {
          const model = kit.buses.find((other) => other.id === id);
          if (model) change({ count: String(model.pinout.length), pins: model.pinout });
        }}
      />
      <TextRow
        label="Lines"
        decimal
        size={4}
        value={draft.count}
        problem={shown.count}
        hint="two rows of pins"
        onText={(count) => change({ count })}
      />
      <div className="row">
        <span className="as-label">What lies on each pin</span>
        <div className="control">
          <PinMap
            kit={kit}
            pins={Array.from({ length: pinsShown(draft) }, (_, i) => draft.pins[i] ?? '')}
            numbering="zigzag"
            onPins={(pins) => change({ pins: [...pins, ...draft.pins.slice(pins.length)] })}
          />
          <Problem id={pinsProblem} words={shown.pins} />
        </div>
      </div>
      <TextRow
        label="Members a host takes"
        decimal
        size={4}
        value={draft.most}
        problem={shown.most}
        placeholder="–"
        hint="empty: no limit"
        onText={(most) => change({ most })}
      />
      <div className="deeds">
        <button type="button" className="do second" onClick={finish}>
          Use this bus
        </button>
        <button type="button" className="quiet" onClick={onDrop}>
          No new bus
        </button>
      </div>
    </fieldset>
  );
}

interface Props {
  readonly label: string;
  readonly kit: Kit;
  readonly value: string;
  /** It may be left out. */
  readonly optional?: boolean;
  readonly problem: string | undefined;
  readonly onChoice: (bus: string) => void;
  /** A bus that was just made, and is now chosen. */
  readonly onNew: (bus: Bus) => void;
}

/** A bus of the kit, or a new one that is made on the spot. */
export function BusRow({ label, kit, value, optional = false, problem, onChoice, onNew }: Props) {
  const before = useRef('');
  const root = useRef<HTMLDivElement>(null);
  /** The form goes, and the focus with it back to where it was opened. */
  const choose = (then: () => void) => {
    then();
    root.current?.querySelector('select')?.focus();
  };
  const isKnown = kit.buses.some(({ id }) => id === value);
  return (
    <div className="bus-row" ref={root}>
      <ChoiceRow
        label={label}
        value={value}
        hint={value === NEW_BUS ? 'its form follows' : undefined}
        problem={problem}
        options={[
          ...(optional || !isKnown ? [{ value: '', label: optional ? 'none' : 'choose…' }] : []),
          ...kit.buses.map(({ id, name }) => ({ value: id, label: name })),
          { value: NEW_BUS, label: 'New bus…' },
        ]}
        onChoice={(bus) => {
          if (bus === NEW_BUS) before.current = value;
          onChoice(bus);
        }}
      />
      {value === NEW_BUS && (
        <BusForm
          kit={kit}
          onBus={(bus) => choose(() => onNew(bus))}
          onDrop={() => choose(() => onChoice(before.current))}
        />
      )}
    </div>
  );
}
