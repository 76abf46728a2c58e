import type { Effect, Note } from '../../src/index.ts';
import { useLayout } from '../hooks.ts';
import { counted, lossWords } from '../kinds/loss.ts';
import { LevelMark } from '../panels/icon.tsx';

/** More are counted. */
const MOST_NOTES = 4;
const MOST_NAMES = 3;

const and = (parts: readonly string[]): string => parts.filter(Boolean).join(' and ');

function named(names: readonly string[]): string {
  const rest = names.length - MOST_NAMES;
  return names.slice(0, MOST_NAMES).join(', ') + (rest > 0 ? ` and ${rest} more` : '');
}

/** "It touches 2 kinds of module (Cobble, Jetty): 8 modules in the takes." */
function reachWords({ modules, ribbons, placed, laid, seats }: Effect): string | undefined {
  const kinds = and([
    modules.length > 0 ? `${counted(modules.length, 'kind')} of module (${named(modules)})` : '',
    ribbons.length > 0 ? `${counted(ribbons.length, 'kind')} of ribbon (${named(ribbons)})` : '',
  ]);
  if (!kinds) return undefined;
  const drawn = and([
    placed > 0 ? counted(placed, 'module') : '',
    laid > 0 ? `${counted(laid, 'ribbon')} with ${counted(seats, 'seat')}` : '',
  ]);
  return `It touches ${kinds}; ${drawn ? `in all takes ${drawn}` : 'nothing of them is in a take'}.`;
}

function Notes({ label, notes }: { readonly label: string; readonly notes: readonly Note[] }) {
  const takes = useLayout((layout) => layout.takes);
  if (notes.length === 0) return null;
  const takeName = (id: string): string =>
    takes.length > 1 ? ` · ${takes.find((take) => take.id === id)?.name ?? id}` : '';
  return (
    <div className="note-change">
      <b>{label}</b>
      <ul>
        {notes.slice(0, MOST_NOTES).map((note) => (
          <li key={`${note.take} ${note.key}`}>
            <LevelMark level={note.level} />
            <span>
              {note.headline}
              <small>{takeName(note.take)}</small>
            </span>
          </li>
        ))}
        {notes.length > MOST_NOTES && <li className="rest">and {notes.length - MOST_NOTES} more</li>}
      </ul>
    </div>
  );
}

/** What a change affects, told before it is made. */
export function EffectLines({ effect }: { readonly effect: Effect }) {
  const reach = reachWords(effect);
  const loss = lossWords(effect);
  const isQuiet = effect.gained.length === 0 && effect.lost.length === 0;
  return (
    <>
      {reach && <p>{reach}</p>}
      {loss && <p>{loss}</p>}
      <Notes label={`${counted(effect.gained.length, 'note')} would come`} notes={effect.gained} />
      <Notes label={`${counted(effect.lost.length, 'note')} would go`} notes={effect.lost} />
      {isQuiet && <p>No note comes or goes.</p>}
    </>
  );
}
