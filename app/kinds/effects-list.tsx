import type { Level, Note } from '../../src/index.ts';
import { LevelMark } from '../panels/icon.tsx';
import { type Uses, usesWords } from './count-kinds.ts';
import type { Effect } from './use-effects.ts';

const LEVELS: readonly Level[] = ['damage', 'fault', 'reminder'];

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
  /** Where modules of the kind stand. */
  readonly uses: Uses['takes'];
}

/** What the change would do to the notes, take by take. */
export function EffectsList({ effects, pending, uses }: Props) {
  const loud = effects.filter((effect) => !isQuiet(effect));
  return (
    <section className={pending ? 'effects pending' : 'effects'} aria-label="What it does to the notes">
      <h3>What it does to the notes</h3>
      <p className="aside">
        {uses.length === 0
          ? 'No module of this kind stands in a take.'
          : `It changes ${usesWords(uses)}, in one step${loud.length === 0 ? '; so far all notes stay as they are' : ''}.`}
      </p>
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

const worst = (notes: readonly Note[]): Note['level'] =>
  LEVELS.find((level) => notes.some((note) => note.level === level)) ?? 'reminder';

/** The same in a word or two, always in sight; touching it shows the rest. */
export function EffectsInShort({
  effects,
  onShow,
}: {
  readonly effects: readonly Effect[];
  readonly onShow: () => void;
}) {
  const came = effects.flatMap((effect) => [...effect.came, ...effect.grew]);
  const gone = effects.flatMap((effect) => [...effect.gone, ...effect.shrank]);
  if (came.length + gone.length === 0) return null;
  return (
    <button type="button" className="quiet in-short" title="What it does to the notes" onClick={onShow}>
      {came.length > 0 && (
        <>
          <LevelMark level={worst(came)} /> {came.length} new
        </>
      )}
      {came.length > 0 && gone.length > 0 && ' · '}
      {gone.length > 0 && `${gone.length} gone`}
    </button>
  );
}
