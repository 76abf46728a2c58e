import type { ReactNode } from 'react';
import { type Bus, busesOfTemplate, type Kit, MODULE_TEMPLATES, type TemplateBus } from '../../src/index.ts';
import { BusRow } from './bus-row.tsx';
import { DrawRow } from './draw-row.tsx';
import { ChoiceRow, Field, TextRow } from './field.tsx';
import { type ModuleDraft, type ModuleField, moduleName, templateFor } from './module-draft.ts';
import { OwnedRows } from './owned-rows.tsx';

const BUS_LABELS: Readonly<Record<ModuleDraft['template'], Partial<Record<TemplateBus, string>>>> = {
  plain: { powerBus: 'Power header' },
  voice: { bus: 'Joins its host by', powerBus: 'Power header' },
  collector: { bus: 'Hosts members on', nextBus: 'Joins the main unit by', powerBus: 'Power header' },
  main: { bus: 'Hosts members on', powerBus: 'Power header' },
  expander: { bus: 'Passes on' },
  blank: {},
  kept: {},
};

const PIN1 = [
  { value: '', label: 'not known' },
  { value: 'down', label: 'the lower end' },
  { value: 'up', label: 'the upper end' },
] as const;

const KNOWN = [
  { value: '', label: 'not said' },
  { value: 'measured', label: 'measured' },
  { value: 'published', label: 'published by the maker' },
  { value: 'guessed', label: 'guessed' },
] as const;

interface Props {
  readonly kit: Kit;
  readonly draft: ModuleDraft;
  /** Its headers can be kept as they are. */
  readonly canKeep: boolean;
  readonly told: (field: ModuleField) => string | undefined;
  readonly leave: (field: ModuleField) => () => void;
  readonly change: (part: Partial<ModuleDraft>) => void;
  readonly addBus: (bus: Bus) => void;
  readonly children?: ReactNode;
}

/** What is told of a kind as a whole, its headers only by the template that they come from. */
export function ModuleFields({ kit, draft, canKeep, told, leave, change, addBus, children }: Props) {
  const template = templateFor(draft);
  const templates = [
    ...(canKeep ? [{ value: 'kept' as const, label: 'its headers as they are' }] : []),
    ...MODULE_TEMPLATES.map(({ id, name, means }) => ({ value: id, label: `${name}: ${means}` })),
  ];
  const chooseNew = (on: TemplateBus) => (bus: Bus) => {
    addBus(bus);
    change({ [on]: bus.id });
  };
  return (
    <>
      <TextRow
        label="Name"
        value={moduleName(kit, draft)}
        problem={told('name')}
        selects
        onText={(name) => change({ name })}
        onLeave={leave('name')}
      />
      <ChoiceRow
        label="Sort"
        value={draft.template}
        options={templates}
        onChoice={(id) => change({ template: id })}
      />
      <div className="pair">
        <TextRow
          label="Width"
          unit="HP"
          decimal
          size={5}
          value={draft.widthHp}
          problem={told('widthHp')}
          onText={(widthHp) => change({ widthHp })}
          onLeave={leave('widthHp')}
        />
        <TextRow
          label="Height"
          unit="U"
          decimal
          size={4}
          placeholder="3"
          value={draft.heightU}
          problem={told('heightU')}
          onText={(heightU) => change({ heightU })}
          onLeave={leave('heightU')}
        />
      </div>
      {template &&
        busesOfTemplate(template).map((on) => (
          <BusRow
            key={on}
            label={BUS_LABELS[draft.template][on] ?? 'Bus'}
            kit={kit}
            value={draft[on]}
            optional={template.optional.includes(on)}
            problem={told(on)}
            onChoice={(bus) => change({ [on]: bus })}
            onNew={chooseNew(on)}
          />
        ))}
      {template && template.headers.length > 0 && (
        <div className="pair">
          <ChoiceRow
            label="Pin 1 is at"
            value={draft.pin1}
            options={PIN1}
            onChoice={(pin1) => change({ pin1 })}
          />
          <label className="tick">
            <input
              type="checkbox"
              checked={draft.keyed}
              onChange={({ currentTarget: { checked } }) => change({ keyed: checked })}
            />
            boxed, with a notch
          </label>
        </div>
      )}
      <Field label="Depth behind the panel" hint="empty: not known" problem={told('depth')} field="depth">
        {(control) => (
          <>
            <input
              {...control}
              className="field"
              size={5}
              inputMode="decimal"
              autoComplete="off"
              placeholder="?"
              value={draft.depth}
              onChange={({ currentTarget: { value } }) => change({ depth: value })}
              onBlur={leave('depth')}
            />
            <span className="unit">mm</span>
            <select
              className="field"
              aria-label="The depth is given"
              value={draft.depthIs}
              onChange={({ currentTarget: { value } }) =>
                change({ depthIs: value as ModuleDraft['depthIs'] })
              }
            >
              <option value="">not said: taken with plugs</option>
              <option value="with-plugs">with plugs</option>
              <option value="without-plugs">without plugs</option>
            </select>
          </>
        )}
      </Field>
      {draft.template !== 'blank' && (
        <fieldset className="draws">
          <legend>What it draws</legend>
          {kit.voltages.map(({ id }) => (
            <DrawRow
              key={id}
              voltage={id}
              draw={draft.draws[id] ?? { is: 'none', ma: '' }}
              problem={told(`draws ${id}`)}
              onDraw={(draw) => change({ draws: { ...draft.draws, [id]: draw } })}
              onLeave={leave(`draws ${id}`)}
            />
          ))}
        </fieldset>
      )}
      <ChoiceRow
        label="These facts are"
        field="known"
        value={draft.known}
        options={KNOWN}
        onChoice={(known) => change({ known })}
      />
      <OwnedRows
        owned={draft.owned}
        price={draft.price}
        problems={{ owned: told('owned'), price: told('price') }}
        onChange={change}
        onLeave={(field) => leave(field)()}
      />
      {children}
    </>
  );
}
