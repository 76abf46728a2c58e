import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { checksTable, withTable } from '../.tools/checks-table.ts';
import { checks } from '../src/checks/index.ts';

const fileOf = (name: string): string => fileURLToPath(new URL(`../${name}`, import.meta.url));
const read = (name: string): string => readFileSync(fileOf(name), 'utf8');

const readme = read('README.md');

describe('the README', () => {
  it('lists the checks as they are (npm run readme writes the table)', () => {
    expect(readme).toBe(withTable(readme));
    expect(readme).toContain(checksTable());
    for (const { id } of checks) expect(readme).toContain(`\`${id}\``);
  });

  it.each(['README.md', 'DEVELOPERS.md'])('%s points only at files that are there', (name) => {
    const links = [...read(name).matchAll(/\]\((?!https?:|#)([^)#]+)/g)].map(([, path]) => path as string);
    expect(links.filter((path) => !existsSync(fileOf(path)))).toEqual([]);
  });

  it('names only scripts that package.json has', () => {
    const scripts = Object.keys(JSON.parse(read('package.json')).scripts);
    const named = [...`${readme}${read('DEVELOPERS.md')}`.matchAll(/npm run (?:--silent )?([a-z:]+)/g)].map(
      ([, name]) => name,
    );
    expect(named.filter((name) => !scripts.includes(name as string))).toEqual([]);
  });
});
