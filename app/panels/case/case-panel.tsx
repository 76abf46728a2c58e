import { useTake } from '../../hooks.ts';
import '../../style/case.css';
import { FoldPanel } from '../fold-panel.tsx';
import { ReadyPatterns } from './ready-patterns.tsx';
import { RowFields } from './row-fields.tsx';
import { SupplyFields } from './supply-fields.tsx';
import { useCase } from './use-case.ts';

/** The case: rows, supplies and boards, each by name and number. */
export function CasePanel() {
  const { perform } = useCase();
  const { id: take, rows, supplies, modules } = useTake();
  return (
    <FoldPanel title="My case">
      {modules.length === 0 ? (
        <>
          <h3>Start from a ready pattern</h3>
          <ReadyPatterns />
        </>
      ) : (
        <details>
          <summary>Ready patterns</summary>
          <ReadyPatterns />
        </details>
      )}
      <h3>Rows, top to bottom</h3>
      {rows.map((row) => (
        <RowFields key={row.id} row={row} />
      ))}
      <button type="button" className="plain" onClick={() => perform({ type: 'add-row', take })}>
        Add a row
      </button>
      <h3>Supplies and their boards</h3>
      {supplies.map((supply) => (
        <SupplyFields key={supply.id} supply={supply} />
      ))}
      <button type="button" className="plain" onClick={() => perform({ type: 'add-supply', take })}>
        Add a supply
      </button>
      <p className="aside">
        Extra-low voltage only: mains wiring, inlets, fuses and protective earth are for a qualified person.
      </p>
    </FoldPanel>
  );
}
