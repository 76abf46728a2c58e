import { writeSync } from 'node:fs';
import { check } from './check.ts';
import { type Command, type Outcome, Refusal } from './command.ts';
import { propose } from './propose.ts';
import { rehearse } from './rehearse.ts';
import { schema } from './schema.ts';
import { share } from './share.ts';
import { sheet } from './sheet.ts';
import { solve } from './solve.ts';
import { unshare } from './unshare.ts';

const commands: Readonly<Record<string, Command>> = {
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
  return command.run(args);
}

const oneLine = (text: string): string => text.replace(/\p{Cc}+/gu, ' ').trim();

/** Writes all of a text, also to a pipe that takes it in pieces. A reader that has gone wants no more. */
function write(file: 1 | 2, text: string): void {
  let rest = Buffer.from(text);
  while (rest.length > 0) {
    try {
      rest = rest.subarray(writeSync(file, rest));
    } catch (reason) {
      const { code } = reason as NodeJS.ErrnoException;
      if (code === 'EPIPE') return;
      if (code !== 'EAGAIN') throw reason;
    }
  }
}

try {
  const { text, exit } = await run(process.argv.slice(2));
  write(1, text);
  process.exitCode = exit;
} catch (reason) {
  if (!(reason instanceof Refusal)) throw reason;
  write(2, `${oneLine(reason.message)}\n`);
  process.exitCode = 2;
}
