import { readFileSync } from 'node:fs';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { describeFailure, openLayout } from '../document.ts';
import type { Layout } from '../layout/layout.ts';
import { Refusal } from './command.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** Options and positionals of a command; refuses what it does not know. */
export function parse<T extends Options>(args: readonly string[], options: T) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (reason) {
    throw new Refusal((reason as Error).message.replace(/\.?\s+To specify.*/s, ''));
  }
}

/** The one file that a command reads. */
export function onlyFile(positionals: readonly string[]): string {
  const [file, ...more] = positionals;
  if (file === undefined) throw new Refusal('name a layout file, or - for standard input');
  if (more.length > 0) throw new Refusal(`one file at a time; ${JSON.stringify(more[0])} is one too many`);
  return file;
}

const STANDARD_INPUT = 0;

export function readText(file: string): string {
  try {
    return readFileSync(file === '-' ? STANDARD_INPUT : file, 'utf8');
  } catch (reason) {
    const { code } = reason as NodeJS.ErrnoException;
    const why =
      code === 'ENOENT' ? 'no such file' : code === 'EISDIR' ? 'is a folder' : `cannot be read (${code})`;
    throw new Refusal(`${file}: ${why}`);
  }
}

/** Reads and opens a layout; refuses what is unusable, saying where. */
export function readLayout(file: string): Layout {
  const opened = openLayout(readText(file));
  if (!opened.ok) throw new Refusal(describeFailure(opened.error));
  return opened.value;
}
