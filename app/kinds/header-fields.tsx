import type { Bus, Edges, Header, Kit, PinEnd } from '../../src/index.ts';
import { BusRow } from './bus-row.tsx';
import { UP_WORDS } from './edge-words.ts';
import { ChoiceRow, TextRow } from './field.tsx';
import { type HeaderDraft, headerField, PIN_ENDS, type Said } from './header-draft.ts';
import type { ModuleField } from './module-draft.ts';

const ROLES = [
  { value: 'member', label: 'member: joins a host, or takes power' },
  { value: 'host', label: 'host: members join it' },
] as const satisfies readonly { readonly value: Header['role']; readonly label: string }[];

const AXES = [
  { value: '', label: 'not said: taken as upright' },
  { value: 'vertical', label: 'upright: long side up the panel' },
  { value: 'horizontal', label: 'lying: long side along the rail' },
] as const;

const ENDS: Readonly<Record<PinEnd, string>> = {
  down: 'at the lower end',
  up: 'at the upper end',
  left: 'at the left end seen from the front',
  right: 'at the right end seen from the front',
};

const saidOptions = (unsaid: string, yes: string, no: string) =>
  [
    { value: '', label: `not said: taken as ${unsaid}` },
    { value: 'yes', label: yes },
    { value: 'no', label: no },
  ] as const satisfies readonly { readonly value: Said; readonly label: string }[];

const KEYED = saidOptions('open', 'boxed, with a notch', 'open');
const PASSES = saidOptions('an end', 'joined inside with others of its bus', 'an end by itself');
const ISOLATED = saidOptions(
  'joined to the module’s supply',
  'its supply pins feed nothing here',
  'joined to the module’s supply',
);

const ACROSS = [
  { value: 'rear-left', label: 'the rear’s left edge' },
  { value: 'front-left', label: 'the front’s left edge' },
] as const satisfies readonly { readonly value: Edges['across']; readonly label: string }[];

const UP = [
  { value: 'bottom', label: UP_WORDS.bottom },
  { value: 'top', label: UP_WORDS.top },
] as const;

interface Props {
  readonly kit: Kit;
  readonly header: HeaderDraft;
  readonly edges: Edges;
  /** Where a ribbon on it is taken to lie while that is not known, mm. */
  readonly takenZMm: number;
  readonly told: (field: ModuleField) => string | undefined;
  readonly leave: (field: ModuleField) => () => void;
  readonly change: (part: Partial<HeaderDraft>) => void;
  readonly onEdges: (edges: Edges) => void;
  readonly addBus: (bus: Bus) => void;
}

/** All facts of one header. */
export function HeaderFields({ kit, header, edges, takenZMm, told, leave, change, onEdges, addBus }: Props) {
  const at = (part: Parameters<typeof headerField>[1]) => headerField(header, part);
  const ends = PIN_ENDS[header.axis || 'vertical'];
  return (
    <>
      <TextRow
        label="Header’s id"
        hint="ribbons are seated by it"
        value={header.id}
        problem={told(at('id'))}
        onText={(id) => change({ id })}
        onLeave={leave(at('id'))}
      />
      <TextRow
        label="Header’s name"
        placeholder="–"
        value={header.name}
        problem={told(at('name'))}
        onText={(name) => change({ name })}
        onLeave={leave(at('name'))}
      />
      <BusRow
        label="Bus"
        kit={kit}
        value={header.bus}
        problem={told(at('bus'))}
        onChoice={(bus) => change({ bus })}
        onNew={(bus) => {
          addBus(bus);
          change({ bus: bus.id });
        }}
      />
      <ChoiceRow label="Role" value={header.role} options={ROLES} onChoice={(role) => change({ role })} />
      <fieldset className="place">
        <legend>Where it is, to the middle of its pins</legend>
        <div className="from-edge">
          <TextRow
            label="Across"
            unit="mm from"
            decimal
            size={6}
            value={header.x}
            problem={told(at('x'))}
            onText={(x) => change({ x })}
            onLeave={leave(at('x'))}
          />
          <select
            className="field"
            aria-label="Across is measured from"
            value={edges.across}
            onChange={({ currentTarget: { value } }) =>
              onEdges({ ...edges, across: value as Edges['across'] })
            }
          >
            {ACROSS.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </div>
        <div className="from-edge">
          <TextRow
            label="Up or down"
            unit="mm from"
            decimal
            size={6}
            value={header.y}
            problem={told(at('y'))}
            onText={(y) => change({ y })}
            onLeave={leave(at('y'))}
          />
          <select
            className="field"
            aria-label="Up or down is measured from"
            value={edges.up}
            onChange={({ currentTarget: { value } }) => onEdges({ ...edges, up: value as Edges['up'] })}
          >
            {UP.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </div>
        <p className="aside">
          The edges are those of its HP; the panel ends about 0.15 mm inside. If its size changes, the
          distances stay.
        </p>
        <TextRow
          label="Behind panel"
          unit="mm"
          decimal
          size={6}
          placeholder="?"
          hint={header.z.trim() === '' ? `not known: taken as ${takenZMm}` : undefined}
          value={header.z}
          problem={told(at('z'))}
          onText={(z) => change({ z })}
          onLeave={leave(at('z'))}
        />
      </fieldset>
      <ChoiceRow
        label="Axis"
        value={header.axis}
        options={AXES}
        onChoice={(axis) => {
          const stays = !header.pin1 || PIN_ENDS[axis || 'vertical'].includes(header.pin1);
          change({ axis, ...(!stays && { pin1: '' }) });
        }}
      />
      <ChoiceRow
        label="Pin 1"
        field={at('pin1')}
        problem={told(at('pin1'))}
        value={header.pin1}
        options={[
          { value: '' as const, label: 'not known' },
          ...ends.map((end) => ({ value: end, label: ENDS[end] })),
        ]}
        onChoice={(pin1) => change({ pin1 })}
      />
      <ChoiceRow label="Keyed" value={header.keyed} options={KEYED} onChoice={(keyed) => change({ keyed })} />
      <ChoiceRow
        label="Passes on"
        value={header.passes}
        options={PASSES}
        onChoice={(passes) => change({ passes })}
      />
      <ChoiceRow
        label="Isolated"
        value={header.isolated}
        options={ISOLATED}
        onChoice={(isolated) => change({ isolated })}
      />
      <TextRow
        label="Counts for"
        unit="members"
        decimal
        size={4}
        placeholder="1"
        hint={header.counts.trim() === '' ? 'not said: taken as 1' : undefined}
        value={header.counts}
        problem={told(at('counts'))}
        onText={(counts) => change({ counts })}
        onLeave={leave(at('counts'))}
      />
    </>
  );
}
