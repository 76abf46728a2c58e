import { useId, useRef, useState } from 'react';
import {
  copyOfKind,
  type Edit,
  limitsOf,
  OPEN_LIMITS,
  ohmsPerMetre,
  type RibbonKind,
} from '../../src/index.ts';
import { useEditor, useLayout } from '../hooks.ts';
import { ChoiceRow, Problem, RadioRow, TextRow } from '../kinds/field.tsx';
import { useTold } from '../kinds/kind-form.tsx';
import { OwnedRows } from '../kinds/owned-rows.tsx';
import {
  newRibbonDraft,
  type RibbonDraft,
  readRibbon,
  ribbonDraftOf,
  ribbonName,
} from '../kinds/ribbon-draft.ts';
import { LAYS } from '../kinds/ribbon-lays.ts';
import { figure, parseHp } from '../panels/figures.ts';
import { Icon } from '../panels/icon.tsx';
import { changesNothing } from './changes-nothing.ts';
import { lengthened } from './connector-places.ts';
import { ConnectorRows } from './connector-rows.tsx';
import { EditorHead } from './editor-head.tsx';
import { RibbonBench } from './ribbon-bench.tsx';
import { RibbonPictures } from './ribbon-pictures.tsx';
import { StepBar } from './step-bar.tsx';

interface Props {
  readonly before: RibbonKind | undefined;
  readonly sort: 'ribbon' | 'lead';
  /** The kind that is shown from now on; `null`: none. */
  readonly onShow: (kind: string | null) => void;
}

/** Resistance of one conductor, in words; nothing where the gauge is no number. */
export function resistanceWords(gauge: string, ambientC: number, lengthMm: number): string | undefined {
  const awg = gauge.trim() === '' ? 28 : parseHp(gauge);
  if (awg === null || awg < -3 || awg > 60) return undefined;
  const perMetre = ohmsPerMetre(awg, ambientC) * 1000;
  const whole = (perMetre * lengthMm) / 1000;
  const about = (value: number): string => figure(Number(value.toPrecision(3)));
  return `about ${about(perMetre)} mΩ for each metre of a conductor at ${figure(ambientC)} °C; ${about(whole)} mΩ from end to end`;
}

/** A kind of ribbon with every connector by itself, drawn to scale. */
export function RibbonEditor({ before, sort, onShow }: Props) {
  const { layouts, session } = useEditor();
  const layout = useLayout((present) => present);
  const { kit } = layout;
  const [draft, setDraft] = useState<RibbonDraft>(() => ({
    ...(before ? ribbonDraftOf(before) : newRibbonDraft(kit, sort)),
    spacing: 'each',
  }));
  const [unit, setUnit] = useState<'HP' | 'mm'>(draft.unit);
  const [chosen, setChosen] = useState(0);
  const { kind, problems } = readRibbon(kit, draft, before);
  const { told, leave, tellAll } = useTold(problems);
  const root = useRef<HTMLDivElement>(null);
  const id = useId();
  const change = (part: Partial<RibbonDraft>): void => setDraft({ ...draft, ...part });
  const { connectors } = draft;
  const limits = limitsOf(kit);
  const bus = kit.buses.find((other) => other.id === draft.bus);
  const conductors = bus?.pinout.length ?? 10;
  const lengthMm = connectors.at(-1)?.atMm ?? 0;

  const step: Edit | null = kind && { type: before ? 'change-ribbon-kind' : 'add-ribbon-kind', kind };
  const isSame = before !== undefined && changesNothing(layout, step);
  const resistance = resistanceWords(draft.gauge, limits.ambientC, lengthMm);

  const clone = (): void => {
    if (!before) return;
    const copy = copyOfKind(kit.ribbons, before);
    if (layouts.run({ type: 'add-ribbon-kind', kind: copy, after: before.id }).ok) onShow(copy.id);
  };

  return (
    <div className="detail ribbon-editor" ref={root}>
      <EditorHead
        title={before ? before.name : sort === 'lead' ? 'A new lead' : 'A new ribbon'}
        {...(before && {
          there: {
            name: before.name,
            removal: { type: 'remove-ribbon-kind', kind: before.id },
            onClone: clone,
            onGone: () => onShow(null),
          },
        })}
      />
      <div className="bench-head">
        <span className="aside">
          Seen from the rear, stripe down. Drag a connector, or move it with the arrows; Shift goes by 0.1 mm.
        </span>
        <fieldset className="units">
          <legend className="unseen">Unit</legend>
          {(['HP', 'mm'] as const).map((each) => (
            <button key={each} type="button" aria-pressed={each === unit} onClick={() => setUnit(each)}>
              {each}
            </button>
          ))}
        </fieldset>
      </div>
      <RibbonBench
        connectors={connectors}
        lay={draft.lay}
        conductors={conductors}
        unit={unit}
        limits={limits}
        chosen={chosen}
        onChoose={setChosen}
        onConnectors={(moved) => change({ connectors: moved })}
      />
      <ConnectorRows
        connectors={connectors}
        conductors={conductors}
        unit={unit}
        isLoose={draft.lay === 'loose'}
        chosen={chosen}
        onChoose={setChosen}
        onConnectors={(moved) => change({ connectors: moved })}
        onAmiss={(words) => session.setState({ spoken: words })}
      />
      <div className="connector-foot">
        <button
          type="button"
          className="quiet add"
          aria-disabled={connectors.length >= OPEN_LIMITS.connectors.most}
          onClick={() => {
            setChosen(connectors.length);
            change({ connectors: lengthened(connectors) });
          }}
        >
          <Icon name="plus" />
          Connector
        </button>
        <span className="aside">
          {connectors.length} connectors on {figure(lengthMm, 1)} mm
        </span>
      </div>
      <Problem id={`${id}-connectors`} words={problems.connectors} />
      <div className="fields">
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
        <ChoiceRow
          label="Bus"
          value={bus ? draft.bus : ''}
          problem={told('bus')}
          hint="what each conductor carries; buses have a page of their own"
          options={[
            ...(bus ? [] : [{ value: '', label: 'choose…' }]),
            ...kit.buses.map((other) => ({ value: other.id, label: other.name })),
          ]}
          onChoice={(value) => change({ bus: value })}
        />
        <TextRow
          label="Gauge"
          unit="AWG"
          decimal
          size={4}
          placeholder="28"
          value={draft.gauge}
          problem={told('gauge')}
          hint={resistance}
          onText={(gauge) => change({ gauge })}
          onLeave={leave('gauge')}
        />
        <OwnedRows
          owned={draft.owned}
          price={draft.price}
          problems={{ owned: told('owned'), price: told('price') }}
          onChange={change}
          onLeave={(field) => leave(field)()}
        />
      </div>
      <details className="explained">
        <summary>Socket, plug, face, bump, ways, twist: what they mean</summary>
        <RibbonPictures />
      </details>
      <StepBar
        step={step}
        label={before ? 'Change the ribbon' : 'Put in stock'}
        said={kind ? `${kind.name} is ${before ? 'changed' : 'in stock'}.` : ''}
        isIdle={isSame}
        onAmiss={() => {
          tellAll();
          requestAnimationFrame(() => root.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus());
        }}
        onDone={() => kind && onShow(kind.id)}
      >
        {!isSame && before && (
          <button
            type="button"
            className="quiet"
            onClick={() => setDraft({ ...ribbonDraftOf(before), spacing: 'each' })}
          >
            As it was
          </button>
        )}
      </StepBar>
    </div>
  );
}
