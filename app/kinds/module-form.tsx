import { useState } from 'react';
import {
  type Bus,
  busesOfTemplate,
  type Header,
  type Kit,
  MODULE_TEMPLATES,
  type ModuleKind,
  type TemplateBus,
} from '../../src/index.ts';
import { figure } from '../panels/figures.ts';
import { ModuleDrawing } from '../panels/kind-drawing.tsx';
import { BusRow } from './bus-row.tsx';
import { DrawRow } from './draw-row.tsx';
import { ChoiceRow, Field, TextRow } from './field.tsx';
import { KindForm, useKitInForm, useTold } from './kind-form.tsx';
import {
  type ModuleDraft,
  moduleDraftOf,
  moduleName,
  newModuleDraft,
  readModule,
  templateFor,
} from './module-draft.ts';
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

/** Where the headers lie, in words; the drawing shows them from the rear. */
function HeaderList({ headers, kit }: { readonly headers: readonly Header[]; readonly kit: Kit }) {
  return (
    <ul className="header-list">
      {headers.map(({ id, name, bus, role, xMm, yMm, passes }) => (
        <li key={id}>
          <b>{name ?? kit.buses.find((known) => known.id === bus)?.name ?? bus}</b>
          {role === 'host' ? ', host' : ', member'}
          {passes && ', passes on'}
          <small>
            {figure(xMm, 1)} mm from the left edge seen from the front, {figure(yMm, 1)} mm up
          </small>
        </li>
      ))}
      {headers.length === 0 && <li>No headers</li>}
    </ul>
  );
}

interface Props {
  readonly title: string;
  readonly before: ModuleKind | undefined;
}

/** A kind of module: enough to place it, join it and feed it. What is not known stays so. */
export function ModuleForm({ title, before }: Props) {
  const [kit, made, addBus] = useKitInForm();
  const [draft, setDraft] = useState(() => (before ? moduleDraftOf(kit, before) : newModuleDraft(kit)));
  const [drawn, setDrawn] = useState(before);
  const { kind, problems } = readModule(kit, draft, before);
  const { told, leave, tellAll } = useTold(problems);
  if (kind && JSON.stringify(kind) !== JSON.stringify(drawn)) setDrawn(kind);

  const change = (part: Partial<ModuleDraft>): void => setDraft({ ...draft, ...part });
  const template = templateFor(draft);
  const templates = [
    ...(before && (before.headers.length > 0 || draft.template === 'kept')
      ? [{ value: 'kept' as const, label: 'its headers as they are' }]
      : []),
    ...MODULE_TEMPLATES.map(({ id, name, means }) => ({ value: id, label: `${name}: ${means}` })),
  ];
  const pinsOf = (bus: string): number => kit.buses.find(({ id }) => id === bus)?.pinout.length ?? 0;
  const chooseNew = (on: TemplateBus) => (bus: Bus) => {
    addBus(bus);
    change({ [on]: bus.id });
  };
  const shown = kind ?? drawn;

  return (
    <KindForm
      {...{ title, kind, before, made, tellAll }}
      preview={
        <>
          {shown ? <ModuleDrawing kind={shown} pinsOf={pinsOf} /> : <p>Not yet to be drawn</p>}
          <small>seen from the rear</small>
          {shown && <HeaderList headers={shown.headers} kit={kit} />}
        </>
      }
    >
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
      <Field label="Depth behind the panel" hint="empty: not known" problem={told('depth')}>
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
    </KindForm>
  );
}
