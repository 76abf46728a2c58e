import { useEditor, useSession } from '../hooks.ts';
import '../style/power.css';
import { HeatScale } from './heat-scale.tsx';
import { LineChoice } from './line-choice.tsx';
import { showHeat } from './show-heat.ts';

/** Stands by the title block while the heat map lies on the drawing. */
export function HeatLegend() {
  const editor = useEditor();
  const line = useSession(({ heat }) => heat);
  if (line === null) return null;
  const off = (): void => {
    showHeat(editor, null);
    document.querySelector<HTMLElement>('.by-list')?.focus({ preventScroll: true });
  };
  return (
    <section className="heat-legend" aria-label="Heat map">
      <div className="legend-head">
        <LineChoice line={line} onChoose={(id) => showHeat(editor, id)} />
        <button type="button" className="plain" onClick={off}>
          Off
        </button>
      </div>
      <HeatScale line={line} />
    </section>
  );
}
