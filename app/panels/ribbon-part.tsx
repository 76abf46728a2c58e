import { useMemo } from 'react';
import {
  atMmOf,
  connectorAt,
  harnessStates,
  type LaidRibbon,
  type Ribbon,
  seatPlaces,
  stripeAt,
} from '../../src/index.ts';
import { perform } from '../actions/action.ts';
import { lockRibbons } from '../actions/lock-ribbons.ts';
import { bringToFront, sendToBack } from '../actions/order-ribbons.ts';
import { selectJoined } from '../actions/select-joined.ts';
import { turnRibbon } from '../actions/turn-ribbon.ts';
import { useAnalysis, useEditor, useMoving, useSession, useTake } from '../hooks.ts';
import { type GapWords, gapsOf, seatState } from '../store/seat-words.ts';
import { ActionButton } from './action-button.tsx';
import { ConnectorRow } from './connector-row.tsx';
import { figure } from './figures.ts';
import { Icon } from './icon.tsx';
import { RibbonStrip } from './ribbon-strip.tsx';
import { TextField } from './text-field.tsx';

interface GapProps {
  readonly ribbon: LaidRibbon;
  /** Order along the ribbon of the connector before it. */
  readonly order: number;
  readonly words: GapWords | undefined;
}

/** What lies between two connectors: how much ribbon, how it stands, and whether it is twisted. */
function Gap({ ribbon, order, words }: GapProps) {
  const editor = useEditor();
  const take = useTake();
  const [from, to] = [connectorAt(ribbon, order), connectorAt(ribbon, order + 1)];
  const halfTwists = ribbon.ribbon.twists?.[order] ?? 0;
  const length = `${figure(atMmOf(ribbon, to) - atMmOf(ribbon, from), 1)} mm`;
  const far = words && words.to > order + 1 ? `to ${connectorAt(ribbon, words.to) + 1} ` : '';
  const twist = () =>
    perform(editor, {
      type: 'twist-ribbon',
      take: take.id,
      ribbon: ribbon.id,
      after: order,
      halfTwists: halfTwists > 0 ? 0 : 1,
    });
  const name = `Half-twist between connectors ${from + 1} and ${to + 1}`;
  return (
    <div className="gap">
      <span>
        {ribbon.facts.flat && length}
        {words?.words && (
          <span className={words.isGood ? undefined : 'bad'}>
            {ribbon.facts.flat && ' '}
            {far}
            {words.words}
          </span>
        )}
        {halfTwists > 0 && `, ${halfTwists} half-${halfTwists === 1 ? 'twist' : 'twists'}`}
      </span>
      {ribbon.facts.flat && (
        <button
          type="button"
          className="quiet icon"
          aria-label={name}
          title={name}
          aria-pressed={halfTwists > 0}
          aria-disabled={ribbon.ribbon.locked === true}
          onClick={twist}
        >
          <Icon name="twist" />
        </button>
      )}
    </div>
  );
}

function Connectors({ ribbon }: { readonly ribbon: LaidRibbon }) {
  const still = useAnalysis().derived;
  const take = useMoving((moving) => moving?.derived) ?? still;
  const shown = take.wiring.ribbonById.get(ribbon.id) ?? ribbon;
  const gaps = useMemo(() => gapsOf(take, shown), [take, shown]);
  const places = useMemo(
    () => ribbon.uses.map((_, connector) => seatPlaces(still, ribbon, connector)),
    [still, ribbon],
  );
  return (
    <ol className="connectors">
      {shown.uses.map((_, order) => {
        const connector = connectorAt(shown, order);
        return (
          <li key={connector}>
            <ConnectorRow
              ribbon={shown}
              connector={connector}
              state={seatState(take, shown, connector)}
              places={places[connector] ?? []}
            />
            {order < shown.uses.length - 1 && <Gap ribbon={shown} order={order} words={gaps.get(order)} />}
          </li>
        );
      })}
    </ol>
  );
}

/** The kind that a ribbon is of, to be exchanged for another of its bus; its seats are kept in their order. */
function KindField({ ribbon }: { readonly ribbon: LaidRibbon }) {
  const editor = useEditor();
  const take = useTake();
  const { kit } = useAnalysis().derived.kit;
  const { kind } = ribbon.facts;
  const others = kit.ribbons.filter(({ bus, lay }) => bus === kind.bus && lay === kind.lay);
  const exchange = (other: string) =>
    perform(editor, { type: 'exchange-ribbon', take: take.id, ribbon: ribbon.id, kind: other });
  return (
    <select
      className="field"
      aria-label="Kind of ribbon"
      value={kind.id}
      disabled={ribbon.ribbon.locked === true}
      onChange={(event) => exchange(event.currentTarget.value)}
    >
      {others.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}

/** What the bench knows of it; nothing where nobody has begun. */
const TEST_WORDS = {
  untested: null,
  partly: 'Partly tested as built',
  tested: 'Tested as built',
  changed: 'Changed since test: test again',
} as const;

/** A ribbon or a lead: its label, how it lies, and each connector with what it sits on. */
export function RibbonPart({ ribbon }: { readonly ribbon: Ribbon }) {
  const editor = useEditor();
  const take = useTake();
  const { derived } = useAnalysis();
  const labelling = useSession((session) => session.labelling);
  const chosen = useSession(({ connector }) =>
    connector?.ribbon === ribbon.id ? connector.connector : null,
  );
  const laid = derived.wiring.ribbonById.get(ribbon.id);
  if (!laid) return null;
  const { facts } = laid;
  const tested = harnessStates(derived).find(({ ribbons }) => ribbons.includes(ribbon.id))?.state;
  const seated = new Set(ribbon.seats.map(({ connector }) => connector)).size;
  return (
    <>
      <TextField
        className="name"
        label="Label of the ribbon"
        value={ribbon.label ?? ribbon.id}
        autoFocus={labelling}
        onLeave={() => editor.session.setState({ labelling: false })}
        onCommit={(label) =>
          perform(editor, { type: 'label-ribbon', take: take.id, ribbon: ribbon.id, label })
        }
      />
      <KindField ribbon={laid} />
      <p className="kind">
        {seated} of {facts.connectors.length} connectors seated
        {facts.flat && ` · stripe ${stripeAt(laid, connectorAt(laid, 0))}`}
        {ribbon.locked && ' · locked'}
      </p>
      {tested && TEST_WORDS[tested] && <p className="kind">{TEST_WORDS[tested]}</p>}
      <RibbonStrip ribbon={laid} chosen={chosen} />
      <div className="deeds">
        {facts.flat && <ActionButton action={turnRibbon} shows="both" />}
        <ActionButton action={lockRibbons} shows="both" />
        <ActionButton action={selectJoined} shows="both" />
        <ActionButton action={bringToFront} shows="both" />
        <ActionButton action={sendToBack} shows="both" />
        <button
          type="button"
          className="quiet both"
          onClick={() => perform(editor, { type: 'remove-ribbons', take: take.id, ribbons: [ribbon.id] })}
        >
          <Icon name="remove" />
          <span>Remove</span>
        </button>
      </div>
      <Connectors ribbon={laid} />
    </>
  );
}
