import { powerOf } from '../../src/index.ts';
import { type Editor, shownAnalysis } from '../editor.ts';
import { moduleRows } from './module-rows.ts';
import { heatWords } from './power-words.ts';

/** Lays the heat map of a voltage or of ground over the drawing and says what is worst in it; `null` takes it off. */
export function showHeat(editor: Editor, line: string | null): void {
  const spoken =
    line === null
      ? 'Heat map off.'
      : heatWords(line, moduleRows(powerOf(shownAnalysis(editor).derived), line));
  editor.session.setState({ heat: line, spoken });
}
