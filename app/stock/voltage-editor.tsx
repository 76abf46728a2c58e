import { useRef, useState } from 'react';
import type { Edit, Voltage } from '../../src/index.ts';
import { useLayout } from '../hooks.ts';
import { TextRow } from '../kinds/field.tsx';
import { useTold } from '../kinds/kind-form.tsx';
import { voltageName } from '../panels/figures.ts';
import { changesNothing } from './changes-nothing.ts';
import { EditorHead } from './editor-head.tsx';
import { StepBar } from './step-bar.tsx';
import {
  NEW_VOLTAGE_DRAFT,
  readVoltage,
  USUAL_DROP_MV,
  type VoltageDraft,
  voltageDraftOf,
} from './voltage-draft.ts';

interface Props {
  readonly before: Voltage | undefined;
  /** Called so from now on; `null`: it is gone. */
  readonly onShow: (voltage: string | null) => void;
}

/** A voltage: what it is called, how many volts it has, how much of it may be lost on the way. */
export function VoltageEditor({ before, onShow }: Props) {
  const layout = useLayout((present) => present);
  const [draft, setDraft] = useState<VoltageDraft>(() =>
    before ? voltageDraftOf(before) : NEW_VOLTAGE_DRAFT,
  );
  const { voltage, problems } = readVoltage(layout.kit, draft, before);
  const { told, leave, tellAll } = useTold(problems);
  const root = useRef<HTMLDivElement>(null);
  const change = (part: Partial<VoltageDraft>): void => setDraft({ ...draft, ...part });

  const step: Edit | null =
    voltage &&
    (before ? { type: 'change-voltage', id: before.id, voltage } : { type: 'add-voltage', voltage });
  const isSame = before !== undefined && changesNothing(layout, step);
  return (
    <div className="detail" ref={root}>
      <EditorHead
        title={before ? voltageName(before.id) : 'Another voltage'}
        {...(before && {
          there: {
            name: voltageName(before.id),
            removal: { type: 'remove-voltage', voltage: before.id },

            onGone: () => onShow(null),
          },
        })}
      />
      <div className="fields">
        <TextRow
          label="Name"
          size={8}
          value={draft.id}
          problem={told('id')}
          placeholder="+15"
          hint="as it stands on pins; renamed, it is renamed on every pin, in draws, ratings and limits"
          onText={(id) => change({ id })}
          onLeave={leave('id')}
        />
        <TextRow
          label="Volts"
          unit="V"
          decimal
          size={6}
          value={draft.volts}
          problem={told('volts')}
          hint="negative below ground; empty: as its name says"
          onText={(volts) => change({ volts })}
          onLeave={leave('volts')}
        />
        <TextRow
          label="May lose"
          unit="mV"
          decimal
          size={6}
          value={draft.dropMv}
          problem={told('dropMv')}
          placeholder={`${USUAL_DROP_MV}`}
          hint={`on the way to a module; empty: ${USUAL_DROP_MV} mV`}
          onText={(dropMv) => change({ dropMv })}
          onLeave={leave('dropMv')}
        />
        <p className="aside">
          For extra-low voltages behind the panels only. Mains wiring is for a qualified person under the
          local electrical code.
        </p>
      </div>
      <StepBar
        step={step}
        label={before ? 'Change the voltage' : 'Add the voltage'}
        said={voltage ? `${voltageName(voltage.id)} is ${before ? 'changed' : 'added'}.` : ''}
        isIdle={isSame}
        onAmiss={() => {
          tellAll();
          requestAnimationFrame(() => root.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus());
        }}
        onDone={() => voltage && onShow(voltage.id)}
      />
    </div>
  );
}
