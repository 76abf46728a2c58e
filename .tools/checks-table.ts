import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { catalogue } from '../src/checks/catalogue.ts';
import { checks } from '../src/checks/index.ts';

// Writes the README's table of checks from the list of checks; the tests hold the README to it.

const README = fileURLToPath(new URL('../README.md', import.meta.url));
const BETWEEN = /(<!-- checks -->\n)[\s\S]*(<!-- \/checks -->)/;

const cell = (text: string): string => text.replaceAll('|', '\\|');

export function checksTable(): string {
  const rows = checks.map(({ id, level }) => {
    const about = catalogue[id]?.about;
    return `| \`${id}\` | ${level} | ${cell(about?.title ?? '')} | ${cell(about?.why ?? '')} | ${cell(about?.source ?? '')} |`;
  });
  const head = '| check | level | what it finds | why | source |\n| --- | --- | --- | --- | --- |';
  return `\n${head}\n${rows.join('\n')}\n\n`;
}

/** A README with its table made anew. */
export const withTable = (readme: string): string =>
  readme.replace(BETWEEN, (_, before: string, after: string) => `${before}${checksTable()}${after}`);

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(README, withTable(readFileSync(README, 'utf8')));
}
