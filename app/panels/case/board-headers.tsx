import { useState } from 'react';
import { type Board, type BoardHeader, headersInLine } from '../../../src/index.ts';
import { askFirst } from '../../actions/ask-first.ts';
import { useLayout, useTake } from '../../hooks.ts';
import { IconButton } from './icon-button.tsx';
import { MeasureField } from './measure-field.tsx';
import { PLAIN_BOARD, usualBus } from './new-board.ts';
import { useCase } from './use-case.ts';

const ENDS = { vertical: ['down', 'up'], horizontal: ['left', 'right'] } as const;

type Axis = keyof typeof ENDS;

interface BusChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (bus: string) => void;
}

function BusChoice({ label, value, onChange }: BusChoiceProps) {
  const buses = useLayout(({ kit }) => kit.buses);
  return (
    <select
      className="field"
      aria-label={label}
      title={label}
      value={value}
      onChange={(event) => onChange(event.currentTarget.value)}
    >
      {buses.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}

type HeaderChanges = { readonly [K in keyof BoardHeader]?: BoardHeader[K] | undefined };

/** The header without what is undefined: a field that is cleared is not known. */
function changed(header: BoardHeader, fields: HeaderChanges): BoardHeader {
  const entries = Object.entries({ ...header, ...fields }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as unknown as BoardHeader;
}

/** Pin 1 at the same end when a header is turned by a quarter to the right. */
function turned({ axis = 'vertical', pin1 }: BoardHeader, to: Axis): HeaderChanges {
  const ends: readonly unknown[] = ENDS[axis];
  const end = ends.indexOf(pin1);
  return { axis: to, pin1: ENDS[to][end] };
}

interface HeaderProps {
  readonly header: BoardHeader;
  readonly of: string;
  readonly onChange: (header: BoardHeader) => void;
  readonly onRemove: () => void;
}

function HeaderFields({ header, of, onChange, onRemove }: HeaderProps) {
  const { id, bus, dxMm, dyMm, axis = 'vertical', pin1, keyed = false } = header;
  const name = `header ${id} of ${of}`;
  const set = (fields: HeaderChanges) => onChange(changed(header, fields));
  return (
    <li>
      <div className="case-head">
        <b>{id}</b>
        <BusChoice label={`Bus of ${name}`} value={bus} onChange={(to) => set({ bus: to })} />
        <IconButton icon="remove" label={`Remove ${name}`} onClick={onRemove} />
      </div>
      <div className="measures">
        <MeasureField
          what="Right"
          unit="mm"
          of={`${name} from the board’s left end`}
          value={dxMm}
          empty="0"
          onCommit={(mm) => set({ dxMm: mm ?? undefined })}
        />
        <MeasureField
          what="Up"
          unit="mm"
          of={`${name} from the board’s own height`}
          value={dyMm}
          empty="0"
          onCommit={(mm) => set({ dyMm: mm ?? undefined })}
        />
        <label className="measure">
          <small aria-hidden="true">Stands</small>
          <select
            className="field"
            aria-label={`Long side of ${name}`}
            value={axis}
            onChange={(event) => set(turned(header, event.currentTarget.value as Axis))}
          >
            <option value="vertical">upright</option>
            <option value="horizontal">across</option>
          </select>
        </label>
        <label className="measure">
          <small aria-hidden="true">Pin 1</small>
          <select
            className="field"
            aria-label={`Pin 1 of ${name}, seen from the front`}
            value={pin1 ?? ''}
            onChange={(event) => {
              const end = ENDS[axis].find((one) => one === event.currentTarget.value);
              set({ pin1: end });
            }}
          >
            <option value="">unknown</option>
            {ENDS[axis].map((end) => (
              <option key={end}>{end}</option>
            ))}
          </select>
        </label>
      </div>
      <label className="tick">
        <input
          type="checkbox"
          checked={keyed}
          onChange={(event) => set({ keyed: event.currentTarget.checked || undefined })}
        />
        boxed, with a notch
      </label>
    </li>
  );
}

interface LineProps {
  readonly board: Board;
  readonly onLay: (headers: readonly BoardHeader[]) => void;
}

const MOST = 200;

/** Many headers of one sort at once: so many, every so many mm, of one bus. */
function LineOfHeaders({ board, onLay }: LineProps) {
  const kit = useLayout((layout) => layout.kit);
  const take = useTake();
  const { headers, name, widthMm = 0 } = board;
  const [first, second] = headers;
  const step = first && second ? (second.dxMm ?? 0) - (first.dxMm ?? 0) : 0;
  const [count, setCount] = useState<number>(headers.length || PLAIN_BOARD.count);
  const [pitchMm, setPitch] = useState<number>(
    step > 0 ? Math.round(step * 1000) / 1000 : PLAIN_BOARD.pitchMm,
  );
  const [bus, setBus] = useState(first?.bus ?? usualBus(kit, take) ?? kit.buses[0]?.id ?? '');
  const lay = () => {
    const firstMm = first ? (first.dxMm ?? 0) : Math.max(0, (widthMm - (count - 1) * pitchMm) / 2);
    onLay(headersInLine({ count, bus, pitchMm, firstMm, keyed: first?.keyed === true }));
  };
  return (
    <div className="line-of-headers">
      <label className="measure">
        <small aria-hidden="true">How many</small>
        <input
          className="field"
          type="number"
          min={0}
          max={MOST}
          aria-label={`Number of headers of ${name}`}
          value={count}
          onChange={(event) =>
            setCount(Math.max(0, Math.min(MOST, Math.round(event.currentTarget.valueAsNumber || 0))))
          }
        />
      </label>
      <MeasureField
        what="Every"
        unit="mm"
        of={`the headers of ${name} from one to the next`}
        value={pitchMm}
        onCommit={(mm) => mm !== null && setPitch(mm)}
      />
      <div className="measure">
        <small aria-hidden="true">Bus</small>
        <BusChoice label={`Bus of all headers of ${name}`} value={bus} onChange={setBus} />
      </div>
      <button type="button" className="plain" disabled={bus === ''} onClick={lay}>
        Lay out in a line
      </button>
    </div>
  );
}

/** A header like the last one, beside it. */
function oneMore(headers: readonly BoardHeader[]): readonly BoardHeader[] {
  const last = headers.at(-1);
  if (!last) return headers;
  const ids = new Set(headers.map(({ id }) => id));
  let number = headers.length + 1;
  while (ids.has(`${number}`)) number++;
  const before = headers.at(-2);
  const step = before ? (last.dxMm ?? 0) - (before.dxMm ?? 0) : PLAIN_BOARD.pitchMm;
  const dxMm = Math.round(((last.dxMm ?? 0) + step) * 1000) / 1000;
  return [...headers, { ...last, id: `${number}`, dxMm }];
}

/** The headers of a board: a whole line of them at once, and each by itself. */
export function BoardHeaders({ board }: { readonly board: Board }) {
  const { editor } = useCase();
  const take = useTake().id;
  const { headers, name } = board;
  const set = (to: readonly BoardHeader[]) =>
    askFirst(
      editor,
      { type: 'set-board-headers', take, board: board.id, headers: to },
      `Change the headers of ${name}?`,
    );
  return (
    <details>
      <summary>
        {headers.length} {headers.length === 1 ? 'header' : 'headers'}
      </summary>
      <LineOfHeaders key={headers.length} board={board} onLay={set} />
      <ul className="headers">
        {headers.map((header, i) => (
          <HeaderFields
            key={header.id}
            header={header}
            of={name}
            onChange={(to) => set(headers.with(i, to))}
            onRemove={() => set(headers.filter((other) => other !== header))}
          />
        ))}
      </ul>
      {headers.length > 0 && (
        <button type="button" className="plain" onClick={() => set(oneMore(headers))}>
          Add a header
        </button>
      )}
    </details>
  );
}
