import type { Supply } from '../../../src/index.ts';
import { removeParts } from '../../actions/remove-part.ts';
import { selectionKey } from '../../canvas/model.ts';
import { useLayout, useTake } from '../../hooks.ts';
import { voltageName } from '../figures.ts';
import { TextField } from '../text-field.tsx';
import { BoardFields } from './board-fields.tsx';
import { IconButton } from './icon-button.tsx';
import { MeasureField } from './measure-field.tsx';
import { newBoard } from './new-board.ts';
import { useCase } from './use-case.ts';

/** A supply with what it gives, and the boards that hang on it. */
export function SupplyFields({ supply }: { readonly supply: Supply }) {
  const { editor, perform, pick } = useCase();
  const shown = useTake();
  const take = shown.id;
  const kit = useLayout((layout) => layout.kit);
  const { id, name, ratings, boards } = supply;
  const addBoard = () => {
    const edit = newBoard(kit, shown, id);
    if (edit) perform(edit);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: fieldsets resist being laid out.
    <div className="supply" role="group" aria-label={name}>
      {/* biome-ignore lint/a11y/useSemanticElements: as above. */}
      <div
        className="case-part"
        role="group"
        aria-label={`What ${name} gives`}
        onFocus={() => pick(selectionKey('supply', id))}
      >
        <div className="case-head">
          <TextField
            className="name"
            label={`Name of ${name}`}
            value={name}
            onCommit={(text) => perform({ type: 'change-supply', take, supply: id, name: text })}
          />
          <IconButton
            icon="duplicate"
            label={`Duplicate ${name}, without boards`}
            onClick={() => perform({ type: 'add-supply', take, like: id })}
          />
          <IconButton
            icon="remove"
            label={`Remove ${name}`}
            onClick={() => removeParts(editor, [{ type: 'supply', part: supply }])}
          />
        </div>
        <div className="measures">
          {kit.voltages.map((voltage) => (
            <MeasureField
              key={voltage.id}
              what={voltageName(voltage.id)}
              unit="mA"
              of={name}
              value={ratings[voltage.id]}
              empty="none"
              onCommit={(ma) =>
                perform({ type: 'change-supply', take, supply: id, ratings: { [voltage.id]: ma } })
              }
            />
          ))}
        </div>
      </div>
      {boards.map((board) => (
        <BoardFields key={board.id} board={board} />
      ))}
      <button type="button" className="plain" onClick={addBoard}>
        Add a board to {name}
      </button>
    </div>
  );
}
