import type { Note } from '../../src/index.ts';
import { LevelMark } from '../panels/icon.tsx';
import type { Effect } from './use-effects.ts';

/** More of one sort are counted. */
const MOST_SHOWN = 8;

interface GroupProps {
  readonly title: string;
  readonly notes: readonly Note[];
  readonly className?: string;
}

function Group({ title, notes, className = '' }: GroupProps) {
  if (notes.length === 0) return null;
  const left = notes.length - MOST_SHOWN;
  return (
    <>
      <h4>{title}</h4>
      <ul className={className}>
        {notes.slice(0, MOST_SHOWN).map((note) => (
          <li key={note.key}>
            <LevelMark level={note.level} />
            <span>{note.headline}</span>
          </li>
        ))}
        {left > 0 && <li className="more">and {left} more</li>}
      </ul>
    </>
  );
}

const isQuiet = ({ came, gone, grew, shrank }: Effect): boolean =>
  came.length + gone.length + grew.length + shrank.length === 0;

interface Props {
  readonly effects: readonly Effect[];
  readonly pending: boolean;
  /** How many modules of the kind there are, in all takes. */
  readonly modules: number;
}

/** What the change would do to the notes, take by take. */
export function EffectsList({ effects, pending, modules }: Props) {
  const loud = effects.filter((effect) => !isQuiet(effect));
  return (
    <section className={pending ? 'effects pending' : 'effects'} aria-label="What it does to the notes">
      <h3>What it does to the notes</h3>
      {loud.length === 0 && (
        <p className="aside">
          {modules === 0
            ? 'No module of this kind stands in a take.'
            : 'So far nothing: all notes stay as they are.'}
        </p>
      )}
      {loud.map((effect) => (
        <div key={effect.take.id}>
          {effects.length > 1 && <p className="take">{effect.take.name}</p>}
          <Group title="New" notes={effect.came} />
          <Group title="On more than before" notes={effect.grew} />
          <Group title="On fewer than before" notes={effect.shrank} className="eased" />
          <Group title="Gone" notes={effect.gone} className="gone" />
        </div>
      ))}
    </section>
  );
}
