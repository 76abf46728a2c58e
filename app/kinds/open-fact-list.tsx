import '../style/open-facts.css';
import type { OpenFact } from '../../src/index.ts';
import { LevelMark } from '../panels/icon.tsx';
import { factName, restingWords, restsWords } from './fact-words.ts';

interface Props {
  readonly facts: readonly OpenFact[];
  /** Kinds are named where there are several. */
  readonly naming?: boolean;
  readonly onFact: (fact: OpenFact) => void;
}

const worstOf = ({ notes }: OpenFact) =>
  notes.some(({ note }) => note.level === 'damage')
    ? 'damage'
    : notes.some(({ note }) => note.level === 'fault')
      ? 'fault'
      : 'reminder';

/** Facts to be found out, with what would come of it; touching one leads to its field. */
export const OpenFactList = ({ facts, naming = false, onFact }: Props) => (
  <ul className="open-facts">
    {facts.map((open) => {
      const name = factName(open.fact, open.kind);
      const words = open.notes.map(restingWords);
      return (
        <li key={`${open.kind.id} ${name}`}>
          <button type="button" title={words.join('\n')} onClick={() => onFact(open)}>
            <LevelMark level={worstOf(open)} />
            <b>{naming ? `${open.kind.name}: ${name}` : name}</b>
            <small>{restsWords(open)}</small>
          </button>
        </li>
      );
    })}
  </ul>
);
