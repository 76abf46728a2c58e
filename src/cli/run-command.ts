import { check } from './check.ts';
import { type Command, type LateCommand, type Outcome, Refusal } from './command.ts';
import { propose } from './propose.ts';
import { rehearse } from './rehearse.ts';
import { schema } from './schema.ts';
import { share } from './share.ts';
import { sheet } from './sheet.ts';
import { solve } from './solve.ts';
import { unshare } from './unshare.ts';

const commands: Readonly<Record<string, Command | LateCommand>> = {
  check,
  propose,
  rehearse,
  schema,
  share,
  sheet,
  solve,
  unshare,
};

function help(): string {
  const lines = Object.entries(commands).map(
    ([name, { usage, says }]) => `  ${name} ${usage}\n      ${says}\n`,
  );
  return `ribbonwright COMMAND …\n\n${lines.join('')}\nFILE and LINK may be - for standard input.\n`;
}

function run([name, ...args]: readonly string[]): Outcome | Promise<Outcome> {
  if (name === 'help' || name === '--help' || name === '-h') return { text: help(), exit: 0 };
  const names = Object.keys(commands).join(', ');
  if (name === undefined) throw new Refusal(`name a command: ${names}`);
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!command) throw new Refusal(`no command ${JSON.stringify(name)}; there are ${names}`);
  return 'runLate' in command ? command.runLate(args) : command.run(args);
}

const oneLine = (text: string): string => text.replace(/\p{Cc}+/gu, ' ').trim();

/** What a run of the program writes, and its exit status. */
export interface Done {
  readonly out: string;
  readonly err: string;
  readonly exit: 0 | 1 | 2;
}

const written = ({ text, exit }: Outcome): Done => ({ out: text, err: '', exit });

function refused(reason: unknown): Done {
  if (!(reason instanceof Refusal)) throw reason;
  return { out: '', err: `${oneLine(reason.message)}\n`, exit: 2 };
}

/** Runs a command as it was typed. Unusable input or wrong usage is one line of `err`, and exit status 2. */
export async function runAnyCommand(args: readonly string[]): Promise<Done> {
  try {
    return written(await run(args));
  } catch (reason) {
    return refused(reason);
  }
}

/** The same at once, for commands that need not wait for anything. */
export function runCommand(args: readonly string[]): Done {
  try {
    const outcome = run(args);
    if (outcome instanceof Promise) throw new Error(`${args[0]} takes its time`);
    return written(outcome);
  } catch (reason) {
    return refused(reason);
  }
}
