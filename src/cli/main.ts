import { writeSync } from 'node:fs';
import { runAnyCommand } from './run-command.ts';

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

const { out, err, exit } = await runAnyCommand(process.argv.slice(2));
write(1, out);
write(2, err);
process.exitCode = exit;
