import { BOARD_Y_MM, type Board, type Edit } from '../../../src/index.ts';
import { removeParts } from '../../actions/remove-part.ts';
import { selectionKey } from '../../canvas/model.ts';
import { useLayout, useMoving, useTake } from '../../hooks.ts';
import { voltageName } from '../figures.ts';
import { TextField } from '../text-field.tsx';
import '../../style/case.css';
import { BoardHeaders } from './board-headers.tsx';
import { IconButton } from './icon-button.tsx';
import { MeasureField } from './measure-field.tsx';
import { BESIDE_MM } from './new-board.ts';
import { useCase } from './use-case.ts';

type Change = Omit<Extract<Edit, { type: 'change-board' }>, 'type' | 'take' | 'board'>;

interface FieldsProps {
  readonly board: Board;
  readonly change: (to: Change) => void;
}

/** Wire from a supply to its boards where nothing else is said: common practice, no source. */
const LEAD = { lengthMm: 300, awg: 18 } as const;

/** The row that it stands in, and the supply that it hangs on. */
function Belongs({ board, change }: FieldsProps) {
  const { rows, supplies } = useTake();
  const row = useMoving((moving) => moving?.derived.places.boardById.get(board.id)?.board.row) ?? board.row;
  const supply = supplies.find(({ boards }) => boards.some(({ id }) => id === board.id));
  return (
    <div className="choices">
      <label>
        <small>Row</small>
        <select
          className="field"
          aria-label={`Row of ${board.name}`}
          value={row}
          onChange={(event) => change({ fields: { row: event.currentTarget.value } })}
        >
          {rows.map(({ id, name }, i) => (
            <option key={id} value={id}>
              {name ?? `Row ${i + 1}`}
            </option>
          ))}
        </select>
      </label>
      {supplies.length > 1 && (
        <label>
          <small>Hangs on</small>
          <select
            className="field"
            aria-label={`Supply of ${board.name}`}
            value={supply?.id}
            onChange={(event) => change({ supply: event.currentTarget.value })}
          >
            {supplies.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}

function Measures({ board, change }: FieldsProps) {
  const { name, lead } = board;
  const xMm = useMoving((moving) => moving?.derived.places.boardById.get(board.id)?.board.xMm) ?? board.xMm;
  return (
    <div className="measures in-three">
      <MeasureField
        what="From left"
        unit="mm"
        of={`${name}, seen from the front`}
        value={xMm}
        onCommit={(mm) => mm !== null && change({ fields: { xMm: mm } })}
      />
      <MeasureField
        what="Up"
        unit="mm"
        of={`the headers of ${name} from the row’s lower edge`}
        value={board.yMm}
        empty={String(BOARD_Y_MM)}
        onCommit={(yMm) => change({ fields: { yMm } })}
      />
      <MeasureField
        what="Width"
        unit="mm"
        of={name}
        value={board.widthMm}
        empty="0"
        onCommit={(widthMm) => change({ fields: { widthMm } })}
      />
      <MeasureField
        what="Rise"
        unit="mm"
        of={`${name} from the floor`}
        value={board.riseMm}
        empty="0"
        onCommit={(riseMm) => change({ fields: { riseMm } })}
      />
      <MeasureField
        what="Lead"
        unit="mm"
        of={`${name} to its supply`}
        value={lead?.lengthMm}
        empty="none"
        onCommit={(mm) => change({ lead: mm === null ? null : { ...LEAD, ...lead, lengthMm: mm } })}
      />
      <MeasureField
        what="Wire"
        unit="AWG"
        of={`the lead of ${name}`}
        value={lead?.awg}
        empty="none"
        onCommit={(awg) => change({ lead: awg === null ? null : { ...LEAD, ...lead, awg } })}
      />
    </div>
  );
}

/** A board by name and number; live while it is dragged. */
export function BoardFields({ board }: { readonly board: Board }) {
  const { editor, perform, pick } = useCase();
  const { id: take, supplies } = useTake();
  const voltages = useLayout(({ kit }) => kit.voltages);
  const { name, limits } = board;
  const change = (to: Change) => perform({ type: 'change-board', take, board: board.id, ...to });
  const duplicate = () => {
    const supply = supplies.find(({ boards }) => boards.includes(board));
    const xMm = board.xMm + (board.widthMm ?? 0) + BESIDE_MM;
    if (supply) perform({ type: 'add-board', take, supply: supply.id, like: board.id, row: board.row, xMm });
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: fieldsets resist being laid out.
    <div
      className="case-part"
      role="group"
      aria-label={name}
      onFocus={() => pick(selectionKey('board', board.id))}
    >
      <div className="case-head">
        <TextField
          className="name"
          label={`Name of ${name}`}
          value={name}
          onCommit={(text) => change({ fields: { name: text } })}
        />
        <IconButton icon="duplicate" label={`Duplicate ${name}`} onClick={duplicate} />
        <IconButton
          icon="remove"
          label={`Remove ${name}`}
          onClick={() => removeParts(editor, [{ type: 'board', part: board }])}
        />
      </div>
      <Belongs board={board} change={change} />
      <Measures board={board} change={change} />
      <details>
        <summary>Limits of its own</summary>
        <div className="measures">
          {voltages.map(({ id }) => (
            <MeasureField
              key={id}
              what={voltageName(id)}
              unit="mA"
              of={`the limit of ${name}`}
              value={limits?.[id]}
              empty="none"
              onCommit={(ma) => change({ limits: { [id]: ma } })}
            />
          ))}
        </div>
      </details>
      <BoardHeaders board={board} />
    </div>
  );
}
