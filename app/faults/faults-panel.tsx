import { useEffect, useMemo, useRef } from 'react';
import { readingsWith, searchFault } from '../../src/index.ts';
import { remove } from '../actions/remove.ts';
import { isKeyOf } from '../actions/shortcuts.ts';
import { useEditor } from '../hooks.ts';
import { FoldPanel } from '../panels/fold-panel.tsx';
import { reveal } from '../store/focus-note.ts';
import { sheetNow } from '../store/view.ts';
import '../style/case.css';
import '../style/faults.css';
import { BreakPanel } from './break-panel.tsx';
import { defectsOfBreakage } from './breakage.ts';
import { breakagePoint, type FaultMarks, faultOverlay, testPoints } from './draw-faults.ts';
import { type FaultDesk, NOTHING_SEEN } from './fault-desk.ts';
import { FindPanel } from './find-panel.tsx';
import { useFaultDesk } from './use-fault-desk.ts';

const WAYS: readonly { readonly way: FaultDesk['way']; readonly label: string }[] = [
  { way: 'break', label: 'Break something' },
  { way: 'find', label: 'Something is wrong' },
];

const isTyping = (target: EventTarget): boolean => target instanceof HTMLInputElement;

/** What follows from something broken, and the search for what is broken. The layout stays as it is. */
export function FaultsPanel() {
  const editor = useEditor();
  const ref = useRef<HTMLElement>(null);
  const { desk, take, way, broken, symptoms, answers } = useFaultDesk();
  const readings = useMemo(
    () =>
      way === 'break' && broken.length > 0
        ? readingsWith(
            take,
            broken.flatMap((breakage) => defectsOfBreakage(breakage, take)),
          )
        : undefined,
    [take, way, broken],
  );
  const search = useMemo(() => {
    if (way !== 'find' || symptoms.length === 0) return undefined;
    const seen = answers.flatMap(({ test, isThere }) => (isThere === null ? [] : [{ test, isThere }]));
    const left = answers.flatMap(({ test, isThere }) => (isThere === null ? [test] : []));
    return searchFault(take, [...symptoms, ...seen], left);
  }, [take, way, symptoms, answers]);
  const isLost = search !== undefined && symptoms.every(({ isThere }) => isThere);

  useEffect(() => {
    const marks: FaultMarks = readings
      ? {
          dead: readings.modules.flatMap(({ module, isDead }) => (isDead ? [module] : [])),
          broken,
          suspects: [],
        }
      : {
          dead: [],
          broken: [],
          suspects: isLost ? [] : (search?.suspects ?? []),
          ...(search?.next && { test: search.next }),
        };
    editor.hints.setState({ overlay: faultOverlay(take, marks) });
    return () => editor.hints.setState({ overlay: null });
  }, [editor, take, readings, broken, search, isLost]);

  const last = way === 'break' ? broken.at(-1) : undefined;
  const next = search?.next;
  useEffect(() => {
    const sheet = sheetNow(editor);
    const spot = last ? breakagePoint(sheet, take, last) : next && testPoints(sheet, take, next)[0];
    if (spot) reveal(editor, spot);
  }, [editor, take, last, next]);

  const clear = (): void => {
    ref.current?.focus({ preventScroll: true });
    desk.setState(way === 'break' ? { broken: [] } : NOTHING_SEEN);
  };
  return (
    <FoldPanel
      title="Find a fault"
      name="faults"
      ref={ref}
      onKey={(event) => {
        if (!isKeyOf(remove, event, editor.session.getState().keys) || isTyping(event.target)) return false;
        clear();
        return true;
      }}
    >
      <div className="fault-ways">
        {WAYS.map(({ way: each, label }) => (
          <button
            key={each}
            type="button"
            aria-pressed={way === each}
            onClick={() => desk.setState({ way: each })}
          >
            {label}
          </button>
        ))}
      </div>
      {way === 'break' ? (
        <BreakPanel take={take} desk={desk} broken={broken} readings={readings} onClear={clear} />
      ) : (
        <FindPanel
          take={take}
          desk={desk}
          symptoms={symptoms}
          answers={answers}
          search={search}
          onClear={clear}
        />
      )}
    </FoldPanel>
  );
}
