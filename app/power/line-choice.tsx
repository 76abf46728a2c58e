import { GND } from '../../src/index.ts';
import { useLayout } from '../hooks.ts';
import { lineWords } from './power-words.ts';

interface Props {
  readonly line: string;
  readonly onChoose: (line: string) => void;
}

/** Which voltage is looked at, or ground. */
export function LineChoice({ line, onChoose }: Props) {
  const voltages = useLayout(({ kit }) => kit.voltages);
  return (
    // biome-ignore lint/a11y/useSemanticElements: fieldsets resist being laid out.
    <div className="line-choice" role="group" aria-label="Voltage or ground">
      {[...voltages.map(({ id }) => id), GND].map((id) => (
        <button key={id} type="button" aria-pressed={id === line} onClick={() => onChoose(id)}>
          {lineWords(id)}
        </button>
      ))}
    </div>
  );
}
