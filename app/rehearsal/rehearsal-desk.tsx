import '../style/rehearsal.css';
import { type KeyboardEvent, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import {
  boxWords,
  canRehearse,
  type Joint,
  linesOn,
  linesUnder,
  misplugDrawn,
  rehearsalOf,
  seatAt,
  targetInFull,
} from '../../src/index.ts';
import { useAnalysis, useEditor, useSession } from '../hooks.ts';
import { Dialog } from '../panels/dialog.tsx';
import { Icon, LevelMark } from '../panels/icon.tsx';
import type { ChosenConnector } from '../store/session.ts';
import { facingOf } from './facing.ts';
import { groupsOf } from './groups.ts';
import { JoinedList } from './joined-list.tsx';
import { MeetsTable } from './meets-table.tsx';
import { Moves } from './moves.tsx';
import { mapSize, PinMap } from './pin-map.tsx';
import { pinScene } from './pin-scene.ts';
import { afterKey } from './plug-keys.ts';
import { HOME, misplugOf, type Position, positionOf, reachOf } from './position.ts';
import { readySteps } from './ready-steps.ts';
import { Steps } from './steps.tsx';
import { useHold } from './use-hold.ts';
import { freeContactsWords, openPinsWords, unbroken, verdictWords } from './verdict-words.ts';

const underWords = ({ on }: Joint): string =>
  on.type === 'connector' ? 'other ribbon' : on.header.owner.type;

/** From here on the large map has room with the words beside it. */
const ROOMY_PX = 1000;

/** A seat with its connector in the hand. */
function Rehearsal({ seat, close }: { readonly seat: Joint; readonly close: () => void }) {
  const { derived } = useAnalysis();
  const isTight = useSession(({ stage }) => stage.width < ROOMY_PX);
  const ref = useRef<HTMLDialogElement>(null);
  // The focus on a long map must not take what is said of it out of sight.
  useLayoutEffect(() => {
    ref.current?.querySelector('.body')?.scrollTo(0, 0);
  }, []);
  const drawn = useMemo(() => {
    const misplug = misplugDrawn(seat, derived);
    return misplug ? positionOf(misplug) : HOME;
  }, [seat, derived]);
  const [position, show] = useState<Position>(drawn);
  const [focus, setFocus] = useState<string | null>(null);

  const { kit } = derived;
  const [contacts, pins] = [linesOn(seat).length, linesUnder(seat.on).length];
  const facing = facingOf(seat.on);
  const reach = reachOf(contacts, pins, drawn);
  const misplug = misplugOf(position);
  const rehearsal = rehearsalOf(seat, misplug, kit);
  const isModule = seat.on.type === 'header' && seat.on.header.owner.type === 'module';
  const groups = groupsOf(rehearsal, (line) => kit.voltages.has(line), !isModule);
  const scene = pinScene(rehearsal, groups, misplug, facing, reach);
  const size = mapSize(pins, isTight);
  const verdict = verdictWords(rehearsal, groups);
  const under = underWords(seat);
  const box = boxWords(seat);
  const hold = useHold({ from: position, reach, facing, pitch: { x: size.column, y: size.row }, show });
  const isChosen = focus !== null && groups.some(({ letter }) => letter === focus);

  const press = (event: KeyboardEvent): void => {
    const { target, key } = event;
    if (event.ctrlKey || event.metaKey || event.altKey || !(target instanceof HTMLElement)) return;
    if (key === 'Escape' && hold.isHeld()) {
      event.preventDefault();
      hold.cancel();
      return;
    }
    const isOwn = target.closest('.hold') === null;
    if (isOwn && (key === ' ' || target.closest('.told'))) return;
    const next = hold.isHeld() ? undefined : afterKey(key, position, facing, reach);
    if (!next) return;
    event.preventDefault();
    show(next);
  };

  const name = `${seat.ribbon.name}, connector ${seat.connector + 1}`;
  return (
    <Dialog
      name="rehearsal"
      title={
        <>
          Rehearse {name} <span>on {targetInFull(seat.on)}</span>
        </>
      }
      ref={ref}
      first=".hold"
      onKeyDown={press}
      onEscape={() => {
        if (hold.isHeld()) hold.cancel();
        else close();
      }}
      onClose={close}
    >
      <div className="body">
        <Steps steps={readySteps(drawn, facing, reach)} position={position} show={show} />
        <div className="verdict-line" role="status">
          {verdict.level ? <LevelMark level={verdict.level} /> : <Icon name="tick" />}
          <div>
            <h3>{unbroken(verdict.text)}</h3>
            <p>{unbroken(rehearsal.told)}</p>
          </div>
        </div>
        <div className="scene">
          <p className="facing">
            {facing.from}
            {facing.besides && <small>{facing.besides}</small>}
          </p>
          <div
            className="hold"
            role="application"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move what it holds
            tabIndex={0}
            aria-label={`${name}. Arrow keys move it by a row or a pair, R turns it, Home puts it as it belongs.`}
            {...hold.handlers}
          >
            <PinMap
              scene={scene}
              size={size}
              isKeyed={seat.on.type === 'header' && seat.on.header.keyed}
              isSocket={seat.on.type === 'connector'}
              focus={isChosen ? focus : null}
            />
          </div>
          <Moves position={position} facing={facing} reach={reach} show={show} />
        </div>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and keys must reach what is below */}
        <section className="told" aria-label="What meets what" tabIndex={0}>
          {box && <p className="box-words">{box}</p>}
          {groups.length > 0 && (
            <JoinedList
              groups={groups}
              whose={seat.on.type === 'connector' ? "the other ribbon's" : `the ${under}'s`}
              focus={isChosen ? focus : null}
              onFocus={setFocus}
            />
          )}
          <Asides words={[freeContactsWords(rehearsal), openPinsWords(rehearsal)]} />
          <MeetsTable
            rehearsal={rehearsal}
            groups={groups}
            under={`${under.charAt(0).toUpperCase()}${under.slice(1)}`}
          />
        </section>
      </div>
      <footer>
        <b>Unplug before you look.</b> Nothing is changed in the layout. The program knows only the lines
        entered for each pin.
      </footer>
    </Dialog>
  );
}

const Asides = ({ words }: { readonly words: readonly (string | undefined)[] }) =>
  words.map((text) => text && <p key={text}>{unbroken(text)}</p>);

/** A wrong plug tried where it costs nothing: what would meet, what is tied, what is shorted. */
export function RehearsalDesk({ end }: { readonly end: ChosenConnector }) {
  const { session } = useEditor();
  const { derived } = useAnalysis();
  const seat = seatAt(derived, end.ribbon, end.connector);
  const isThere = seat !== undefined && canRehearse(seat);
  useEffect(() => {
    if (!isThere) session.setState({ rehearsing: null });
  }, [isThere, session]);
  return isThere ? <Rehearsal seat={seat} close={() => session.setState({ rehearsing: null })} /> : null;
}
