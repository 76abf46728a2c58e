import { useState } from 'react';
import type { RibbonKind } from '../../src/index.ts';
import { useEditor } from '../hooks.ts';
import { figure } from '../panels/figures.ts';
import { RibbonDrawing } from '../panels/ribbon-drawing.tsx';
import { BusRow } from './bus-row.tsx';
import { ChoiceRow, Field, RadioRow, TextRow } from './field.tsx';
import { KindForm, useKitInForm, useTold } from './kind-form.tsx';
import { OwnedRows } from './owned-rows.tsx';
import {
  inUnit,
  newRibbonDraft,
  otherUnit,
  type RibbonDraft,
  readRibbon,
  ribbonDraftOf,
  ribbonName,
} from './ribbon-draft.ts';
import { LAYS } from './ribbon-lays.ts';

const SPACINGS = [
  { value: 'even', label: 'at one distance' },
  { value: 'typed', label: 'at typed places' },
] as const;

const KEPT = { value: 'kept', label: 'as they are' } as const;

const PLUGS = [
  { value: 'none', label: 'none, all are sockets' },
  { value: 'first', label: 'the first connector (an extension)' },
  { value: 'last', label: 'the last connector (an extension)' },
] as const;

const KEYS = [
  { value: 'none', label: 'none' },
  { value: 'with-stripe', label: 'fits with the stripe at pin 1' },
  { value: 'against-stripe', label: 'fits with the stripe away from pin 1' },
] as const;

interface Props {
  readonly title: string;
  readonly sort: 'ribbon' | 'lead';
  readonly before: RibbonKind | undefined;
}

/** A kind of ribbon: how it lies, what it carries, and where its connectors are. */
export function RibbonForm({ title, sort, before }: Props) {
  const { session } = useEditor();
  const [kit, made, addBus] = useKitInForm();
  const [draft, setDraft] = useState(() => (before ? ribbonDraftOf(before) : newRibbonDraft(kit, sort)));
  const [drawn, setDrawn] = useState(before);
  const { kind, problems } = readRibbon(kit, draft, before);
  const { told, leave, tellAll } = useTold(problems);
  if (kind && JSON.stringify(kind) !== JSON.stringify(drawn)) setDrawn(kind);

  const change = (part: Partial<RibbonDraft>): void => setDraft({ ...draft, ...part });
  const pins = kit.buses.find(({ id }) => id === draft.bus)?.pinout.length;
  const shown = kind ?? drawn;
  const length = shown?.connectors.at(-1)?.atMm ?? 0;
  const apart = draft.lay === 'loose' && draft.count.trim() === '2' ? 'Length' : 'Distance';

  return (
    <KindForm
      {...{ title, kind, before, made, tellAll }}
      preview={
        <>
          {shown ? <RibbonDrawing kind={shown} /> : <p>Not yet to be drawn</p>}
          <small>seen from the rear, stripe down</small>
          {shown && (
            <p>
              {shown.connectors.length} connectors on {figure(length, 1)} mm
            </p>
          )}
          {before && (
            <button
              type="button"
              className="plain"
              onClick={() =>
                session.setState({ kindDesk: null, stockDesk: 'ribbons', ribbonsWith: { kind: before.id } })
              }
            >
              Each connector…
            </button>
          )}
        </>
      }
    >
      <TextRow
        label="Name"
        value={ribbonName(kit, draft)}
        problem={told('name')}
        selects
        onText={(name) => change({ name })}
        onLeave={leave('name')}
      />
      <RadioRow
        label="How it lies"
        value={draft.lay}
        options={LAYS}
        onChoice={(lay) => change({ lay })}
        className="lays"
      />
      <BusRow
        label="Bus"
        kit={kit}
        value={draft.bus}
        problem={told('bus')}
        onChoice={(bus) => change({ bus })}
        onNew={(bus) => {
          addBus(bus);
          change({ bus: bus.id });
        }}
      />
      <RadioRow
        label="Connectors"
        value={draft.spacing}
        options={SPACINGS}
        onChoice={(spacing) => {
          const places = kind?.connectors.map(({ atMm }) => figure(atMm)).join(', ');
          change(spacing === 'typed' && places ? { spacing, places } : { spacing });
        }}
      />
      {draft.spacing === 'even' ? (
        <div className="pair">
          <TextRow
            label="How many"
            decimal
            size={4}
            value={draft.count}
            problem={told('count')}
            onText={(count) => change({ count })}
            onLeave={leave('count')}
          />
          <Field label={apart} problem={told('pitch')} hint={otherUnit(draft)}>
            {(control) => (
              <>
                <input
                  {...control}
                  className="field"
                  size={5}
                  inputMode="decimal"
                  autoComplete="off"
                  value={draft.pitch}
                  onChange={({ currentTarget: { value } }) => change({ pitch: value })}
                  onBlur={leave('pitch')}
                />
                <select
                  className="field"
                  aria-label={`Unit of the ${apart.toLowerCase()}`}
                  value={draft.unit}
                  onChange={({ currentTarget: { value } }) =>
                    setDraft(inUnit(draft, value as RibbonDraft['unit']))
                  }
                >
                  <option>HP</option>
                  <option>mm</option>
                </select>
              </>
            )}
          </Field>
        </div>
      ) : (
        <TextRow
          label="Places"
          unit="mm"
          value={draft.places}
          problem={told('places')}
          hint="from the first connector, at 0, on: 0, 36, 96"
          onText={(places) => change({ places })}
          onLeave={leave('places')}
        />
      )}
      <ChoiceRow
        label="Plug"
        value={draft.plug}
        options={draft.plug === 'kept' ? [KEPT, ...PLUGS] : PLUGS}
        onChoice={(plug) => change({ plug })}
      />
      {(draft.lay === 'loose' || draft.lastWays !== '') && (
        <TextRow
          label="Ways of the last connector"
          decimal
          size={4}
          placeholder={pins === undefined ? 'all' : `${pins}`}
          value={draft.lastWays}
          problem={told('lastWays')}
          hint="fewer than all on a lead to a smaller header, as 16 to 10; empty: all"
          onText={(lastWays) => change({ lastWays })}
          onLeave={leave('lastWays')}
        />
      )}
      <div className="pair">
        <ChoiceRow
          label="Bump"
          value={draft.key}
          options={draft.key === 'kept' ? [KEPT, ...KEYS] : KEYS}
          onChoice={(key) => change({ key })}
        />
        <TextRow
          label="Gauge"
          unit="AWG"
          decimal
          size={3}
          placeholder="28"
          value={draft.gauge}
          problem={told('gauge')}
          onText={(gauge) => change({ gauge })}
          onLeave={leave('gauge')}
        />
      </div>
      <OwnedRows
        owned={draft.owned}
        price={draft.price}
        problems={{ owned: told('owned'), price: told('price') }}
        onChange={change}
        onLeave={(field) => leave(field)()}
      />
    </KindForm>
  );
}
