import type { Level, Note } from '../checks/check.ts';
import { checkLayout } from '../checks/check-layout.ts';
import { findingsOf } from '../checks/run.ts';
import { verdictOf } from '../checks/verdict.ts';
import type { Layout } from '../layout/layout.ts';
import { onlyFile, parse, readLayout } from './arguments.ts';
import { type Command, json, takesOf } from './command.ts';

const MARKS: Readonly<Record<Level, string>> = {
  damage: '■ damage  ',
  fault: '◆ fault   ',
  reminder: '○ reminder',
};

const weighs = ({ level, accepted }: Note): boolean => level !== 'reminder' && !accepted;

function noteText(note: Note): string {
  const put = note.accepted ? ' (put away)' : '';
  return `  ${MARKS[note.level]}  ${note.message}${put}\n              → ${note.remedy}\n`;
}

type Checked = ReturnType<typeof checkLayout>[number];

function takeText({ take, derived, notes }: Checked): string {
  const list = notes.map(noteText).join('');
  return `${take.name}: ${verdictOf(notes, derived).text}\n${list}`;
}

const CAUTION =
  'This checks the drawing and not the wiring, and knows only the data entered. Unplug before wiring; look at\nstripe and seating at every header before power.\n';

function peopleText(layout: Layout, checked: readonly Checked[]): string {
  return `${layout.title}\n\n${checked.map(takeText).join('\n')}\n${CAUTION}`;
}

export const check: Command = {
  usage: 'FILE [--take ID] [--json]',
  says: 'what the drawing shows to be wrong; exit status 1 if a damage or fault is not accepted',
  run(args) {
    const { values, positionals } = parse(args, { take: { type: 'string' }, json: { type: 'boolean' } });
    const layout = readLayout(onlyFile(positionals));
    const checked = checkLayout({ ...layout, takes: takesOf(layout, values.take) });
    const notes = checked.flatMap((one) => one.notes);
    const text = values.json ? json({ findings: findingsOf(notes) }) : peopleText(layout, checked);
    return { text, exit: notes.some(weighs) ? 1 : 0 };
  },
};
