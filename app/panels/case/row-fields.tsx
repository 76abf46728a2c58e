import { type Edit, panelHeightMm, type Row } from '../../../src/index.ts';
import { removeParts } from '../../actions/remove-part.ts';
import { selectionKey } from '../../canvas/model.ts';
import { useMoving, useTake } from '../../hooks.ts';
import { figure } from '../figures.ts';
import { TextField } from '../text-field.tsx';
import '../../style/case.css';
import { IconButton } from './icon-button.tsx';
import { MeasureField } from './measure-field.tsx';
import { useCase } from './use-case.ts';

type Fields = Extract<Edit, { type: 'change-row' }>['fields'];

interface PartProps {
  readonly row: Row;
  readonly name: string;
  readonly index: number;
}

/** The row's name, and what can be done with all of it. */
function RowHead({ row, name, index }: PartProps) {
  const { editor, perform } = useCase();
  const { id: take, rows } = useTake();
  return (
    <div className="case-head">
      <TextField
        className="name"
        label={`Name of ${name}`}
        placeholder={name}
        value={row.name ?? ''}
        onCommit={(text) =>
          perform({ type: 'change-row', take, row: row.id, fields: { name: text.trim() || null } })
        }
      />
      <IconButton
        icon="chevron"
        className="up"
        label={`Move ${name} up`}
        enabled={index > 0}
        onClick={() => perform({ type: 'move-row', take, row: row.id, to: index - 1 })}
      />
      <IconButton
        icon="chevron"
        label={`Move ${name} down`}
        enabled={index < rows.length - 1}
        onClick={() => perform({ type: 'move-row', take, row: row.id, to: index + 1 })}
      />
      <IconButton
        icon="duplicate"
        label={`Duplicate ${name}`}
        onClick={() => perform({ type: 'add-row', take, like: row.id, at: index + 1 })}
      />
      <IconButton
        icon="remove"
        label={`Remove ${name}`}
        enabled={rows.length > 1}
        onClick={() => removeParts(editor, [{ type: 'row', part: row }])}
      />
    </div>
  );
}

/** A row by name and number; live while its end is dragged. */
export function RowFields({ row }: { readonly row: Row }) {
  const { perform, pick } = useCase();
  const { id: take, rows } = useTake();
  const index = rows.indexOf(row);
  const name = row.name ?? `Row ${index + 1}`;
  const widthHp =
    useMoving((moving) => moving?.derived.places.rowById.get(row.id)?.row.widthHp) ?? row.widthHp;
  const change = (fields: Fields) => perform({ type: 'change-row', take, row: row.id, fields });
  const need = (field: 'widthHp' | 'heightU' | 'depthMm') => (value: number | null) => {
    if (value !== null) change({ [field]: value });
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: fieldsets resist being laid out.
    <div
      className="case-part"
      role="group"
      aria-label={name}
      onFocus={() => pick(selectionKey('row', row.id))}
    >
      <RowHead row={row} name={name} index={index} />
      <div className="measures">
        <MeasureField what="Width" unit="HP" of={name} value={widthHp} onCommit={need('widthHp')} />
        <MeasureField what="Height" unit="U" of={name} value={row.heightU} onCommit={need('heightU')} />
        <MeasureField what="Depth" unit="mm" of={name} value={row.depthMm} onCommit={need('depthMm')} />
        {index < rows.length - 1 && (
          <MeasureField
            what="Gap"
            unit="mm"
            of={`${name} to the row below`}
            value={row.gapMm}
            empty="0"
            onCommit={(gapMm) => change({ gapMm })}
          />
        )}
      </div>
      {row.heightU < 3 && (
        <p className="aside">
          Panels {figure(panelHeightMm(row.heightU), 1)} mm high. There is no one standard for 1U panels:
          measure yours, and type more or less U until it fits.
        </p>
      )}
      {rows.length > 1 && (
        // biome-ignore lint/a11y/noLabelWithoutControl: the field within has a fuller name of its own.
        <label className="which-case">
          <small aria-hidden="true">In case</small>
          <TextField
            label={`Case that ${name} is in`}
            placeholder="the only one"
            value={row.case ?? ''}
            onCommit={(text) => change({ case: text.trim() || null })}
          />
        </label>
      )}
    </div>
  );
}
