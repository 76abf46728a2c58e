import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { runAnyCommand, runCommand } from '../../src/cli/run-command.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import { FIXTURE } from '../support/fixture.ts';

const folder = mkdtempSync(join(tmpdir(), 'ribbonwright-'));
afterAll(() => rmSync(folder, { recursive: true }));

const root = new URL('../../', import.meta.url);

const BY_SCRIPT = ['npm', 'run', '--silent', 'cli', '--'] as const;
const DIRECTLY = [process.execPath, 'src/cli/ribbonwright.mjs'] as const;

/** Runs a command as a program of its own, by the script of the package, the documented way, or without it. */
function program([name, ...first]: readonly [string, ...string[]], args: readonly string[], input = ''): Ran {
  const done = spawnSync(name, [...first, ...args], { cwd: root, input, encoding: 'utf8' });
  return { exit: done.status, out: done.stdout, err: done.stderr };
}

interface Ran {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a command in this process, which takes a hundredth of the time; as a program where it reads standard input. */
const cli = (args: readonly string[], input?: string): Ran =>
  input === undefined && !args.includes('-') ? runCommand(args) : program(DIRECTLY, args, input);

function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

const demo = file('demo.json', demoLayout());

/** One line on standard error, nothing on standard output, exit status 2. */
function expectRefusal(result: Ran, line: RegExp): void {
  expect(result.out).toBe('');
  expect(result.err).toMatch(/^[^\n]+\n$/);
  expect(result.err).toMatch(line);
  expect(result.exit).toBe(2);
}

describe('check', () => {
  it('exits 0 where there is no damage and no fault, and tells the verdict', () => {
    const { exit, out, err } = program(BY_SCRIPT, ['check', demo, '--take', 'three-jetties']);
    expect(out).toContain('Three jetties: No conflict found in the data entered');
    expect(out).not.toMatch(/\bsafe\b/i);
    expect([exit, err]).toEqual([0, '']);
  });

  it('looks at every take, exits 1 on damage or fault', () => {
    const { exit, out } = program(BY_SCRIPT, ['check', demo, '--json']);
    const { findings } = JSON.parse(out);
    expect(new Set(findings.map((finding: { take: string }) => finding.take))).toEqual(
      new Set(['three-jetties', 'one-long-jetty']),
    );
    expect(Object.keys(findings[0])).toEqual(
      expect.arrayContaining(['check', 'level', 'take', 'key', 'subjects', 'message', 'remedy']),
    );
    expect(exit).toBe(1);
  });

  it('reads standard input, and exits 0 when every fault is accepted', () => {
    const layout = demoLayout();
    const [, long] = layout.takes;
    const row = { id: 'r', widthHp: 20, heightU: 3, depthMm: 60 };
    const deep = {
      ...layout,
      takes: [
        {
          ...long,
          rows: [{ ...row, depthMm: 20 }],
          supplies: [],
          modules: [{ id: 'g', kind: 'gull', row: 'r', atHp: 0 }],
          ribbons: [],
        },
      ],
    };
    const first = cli(['check', '-', '--json'], JSON.stringify(deep));
    expect(first.exit).toBe(1);
    const accepted = JSON.parse(first.out).findings.map(({ key }: { key: string }) => ({ key }));
    const put = { ...deep, takes: [{ ...deep.takes[0], accepted }] };
    const second = cli(['check', '-', '--json'], JSON.stringify(put));
    expect(
      JSON.parse(second.out).findings.filter((finding: { accepted?: boolean }) => finding.accepted),
    ).toHaveLength(accepted.length);
    expect(second.exit).toBe(0);
  });

  it('refuses with one line: what and where', () => {
    const bad = JSON.parse(JSON.stringify(demoLayout()));
    bad.takes[0].modules[2].kind = 'cobbel';
    expectRefusal(
      cli(['check', file('bad.json', bad)]),
      /^takes\[0\]\.modules\[2\]\.kind: no module kind "cobbel"; did you mean "cobble"\?/,
    );
    expectRefusal(cli(['check', file('cut.json', '{"format":"ribb')]), /./);
    expectRefusal(cli(['check', join(folder, 'none.json')]), /no such file/);
    expectRefusal(cli(['check', folder]), /folder/);
    expectRefusal(cli(['check']), /layout file/);
    expectRefusal(cli(['check', demo, demo]), /one file at a time/);
    expectRefusal(
      cli(['check', demo, '--take', 'three-jettys']),
      /no take "three-jettys"; did you mean "three-jetties"\?/,
    );
    expectRefusal(cli(['check', demo, '--nonsense']), /nonsense/);
  });
});

describe('rehearse', () => {
  it('tells what a reversed connector would join', () => {
    const { exit, out } = cli([
      'rehearse',
      demo,
      '--ribbon',
      'l1',
      '--connector',
      '1',
      '--reversed',
      '--json',
    ]);
    expect(exit).toBe(0);
    // Reversed on 16 pins, GND ties +12, +5 and CV: common practice, no source (see wiring/mishap.test.ts).
    expect(JSON.parse(out)).toMatchObject({ shorts: [['+12', '+5', 'CV']], openPins: 0, openContacts: 0 });
    expect(cli(['rehearse', demo, '--ribbon', 'l1', '--connector', '1', '--reversed']).out).toContain(
      "the module's GND would tie +12 V, +5 V and CV together",
    );
  });

  it('looks into the first take that has the ribbon, unless one is named', () => {
    const [, long] = demoLayout().takes;
    const own = {
      ...long,
      ribbons: long?.ribbons.map((ribbon) => (ribbon.id === 's3' ? { ...ribbon, id: 'own' } : ribbon)),
    };
    const path = file('own.json', { ...demoLayout(), takes: [demoLayout().takes[0], own] });
    const args = ['rehearse', path, '--ribbon', 'own', '--connector', '0', '--reversed', '--json'];
    expect(cli(args).exit).toBe(0);
    expectRefusal(cli([...args, '--take', 'three-jetties']), /no ribbon "own"/);
  });

  it('takes negative shifts', () => {
    const { out } = cli(['rehearse', demo, '--ribbon', 's1', '--connector', '3', '--shift=0,-1', '--json']);
    expect(JSON.parse(out)).toMatchObject({ openPins: 2, openContacts: 2 });
    const told = cli(['rehearse', demo, '--ribbon', 's1', '--connector', '3', '--shift=1,-1']).out;
    expect(told).toContain('Displaced by 1 row towards the even pins and 1 pair towards pin 1, ');
  });

  it('refuses what cannot be rehearsed', () => {
    const say = (...args: string[]) => cli(['rehearse', demo, ...args]);
    expectRefusal(
      say('--ribbon', 's9', '--connector', '0', '--reversed'),
      /no ribbon "s9"; did you mean "s1"\?/,
    );
    expectRefusal(say('--ribbon', 's1', '--connector', '1', '--reversed'), /sits on nothing/);
    expectRefusal(say('--ribbon', 's1', '--connector', '9', '--reversed'), /connectors 0 to 4/);
    expectRefusal(say('--ribbon', 's1', '--connector', '0'), /either --reversed or --shift/);
    expectRefusal(say('--ribbon', 's1', '--connector', '0', '--shift=1'), /two whole numbers/);
    expectRefusal(say('--ribbon', 's1', '--connector', 'x', '--reversed'), /number from 0/);
  });
});

describe('share and unshare', () => {
  const base = 'https://example.org/rack/';

  it('print a link of the whole layout, and the layout again', () => {
    const shared = cli(['share', demo, '--base', base]);
    expect([shared.exit, shared.err]).toEqual([0, '']);
    expect(shared.out).toMatch(/^https:\/\/example\.org\/rack\/#rw1\.[\w-]+\n$/);
    const back = cli(['unshare', shared.out.trim()]);
    expect([back.exit, back.err]).toEqual([0, '']);
    expect(JSON.parse(back.out)).toEqual(JSON.parse(JSON.stringify(demoLayout())));
  });

  it('read standard input, keep unknown keys, and do without an address', () => {
    const shared = cli(['share', '-'], FIXTURE);
    expect(shared.out).toMatch(/^#rw1\.[\w-]+\n$/);
    expect(JSON.parse(cli(['unshare', '-'], shared.out).out)).toEqual(JSON.parse(FIXTURE));
  });

  it('refuse with one line', () => {
    const link = cli(['share', demo]).out.trim();
    expectRefusal(cli(['unshare', link.slice(0, 90)]), /cut short/);
    expectRefusal(cli(['unshare', link.replace('rw1', 'rw2')]), /newer program: form 2/);
    expectRefusal(cli(['unshare', `${link}AAAA`]), /changed on its way/);
    expectRefusal(cli(['unshare', 'https://example.org/']), /no link of a layout/);
    expectRefusal(cli(['unshare']), /name a link/);
    expectRefusal(cli(['unshare', link, link]), /one link at a time/);
    expectRefusal(cli(['share', demo, '--base', 'my place']), /no address/);
    expectRefusal(cli(['share', file('half.json', '{')]), /not a layout/);
    expectRefusal(cli(['share']), /layout file/);
  });
});

describe('solve', () => {
  it('tells people what every supply carries, and that it is an estimate', () => {
    const { exit, out, err } = cli(['solve', demo, '--take', 'three-jetties']);
    expect(out).toMatch(/Supply, \+12 V\s+930 mA\s+of 1600 mA\s+42 % headroom/);
    expect(out).toMatch(/Supply, \u221212 V\s+590 mA\s+of 800 mA\s+26 % headroom/);
    expect(out).toContain('Estimated from nominal values');
    expect(out).not.toMatch(/NaN|undefined|\bsafe\b/i);
    expect([exit, err]).toEqual([0, '']);
  });

  it('prints the solution of one take, or of all', () => {
    const one = JSON.parse(cli(['solve', demo, '--take', 'three-jetties', '--json']).out);
    expect(Object.keys(one)).toEqual(['take', 'modules', 'supplies', 'boards', 'seats', 'segments']);
    expect(one.take).toBe('three-jetties');
    const { takes } = JSON.parse(cli(['solve', demo, '--json']).out);
    expect(takes.map(({ take }: { take: string }) => take)).toEqual(['three-jetties', 'one-long-jetty']);
    expect(takes[0]).toEqual(one);
    const alone = { ...demoLayout(), takes: demoLayout().takes.slice(0, 1) };
    expect(JSON.parse(cli(['solve', '-', '--json'], JSON.stringify(alone)).out)).toEqual(one);
  });

  it('refuses what it cannot read', () => {
    expectRefusal(cli(['solve', join(folder, 'none.json')]), /no such file/);
    expectRefusal(cli(['solve', demo, '--take', 'x']), /no take "x"/);
  });
});

describe('sheet', () => {
  it('saves the parts list beside the sheet, and cuts what is owned on demand', () => {
    const parts = join(folder, 'parts.csv');
    const args = ['sheet', demo, '--pages', 'cuts', '--parts', parts];
    expect(cli(args).out).toContain('nothing is to be cut');
    expect(readFileSync(parts, 'utf8')).toContain('module,Cobble,6,6,0,,,0\r\n');
    expect(cli([...args, '--every-piece']).out).toContain('Every piece');
  });

  it('writes one self-contained page of HTML, and says nothing', () => {
    const out = join(folder, 'sheet.html');
    expect(cli(['sheet', demo, '--out', out, '--take', 'one-long-jetty'])).toEqual({
      exit: 0,
      out: '',
      err: '',
    });
    const html = readFileSync(out, 'utf8');
    expect(html).toContain('<!doctype html>');
    expect(html).toContain('One long jetty');
    expect(html).not.toMatch(/<script|\b(src|href)=|url\(/);
  });

  it('prints the pages that are asked for, on the paper that is asked for', () => {
    const { out, exit } = cli(['sheet', demo, '--pages', 'rear,gig-card', '--paper', 'letter']);
    expect(exit).toBe(0);
    expect(Array.from(out.matchAll(/data-page="([\w-]+)"/g), ([, id]) => id)).toEqual(['rear', 'gig-card']);
    expect(out).toContain('215.9mm');
  });

  it('refuses what it does not know', () => {
    expectRefusal(cli(['sheet', demo, '--pages', 'rear,frnt']), /no page "frnt"; did you mean "front"\?/);
    expectRefusal(cli(['sheet', demo, '--paper', 'a3']), /a4 or letter/);
    expectRefusal(cli(['sheet', demo, '--bar', '7']), /80 to 120/);
    expectRefusal(cli(['sheet', demo, '--out', join(folder, 'none', 'x.html')]), /cannot be written/);
  });
});

describe('the command line', () => {
  it('prints the schema', () => {
    const { exit, out } = cli(['schema']);
    expect(JSON.parse(out)).toMatchObject({ type: 'object', properties: { kit: {}, takes: {} } });
    expect(exit).toBe(0);
  });

  it('names its commands, and refuses others', () => {
    expect(cli(['--help']).out).toContain('rehearse FILE');
    expectRefusal(
      cli(['chekc', demo]),
      /no command "chekc"; there are check, propose, rehearse, schema, share, sheet, solve, unshare/,
    );
    expectRefusal(cli([]), /name a command/);
  });
});

describe('propose', () => {
  it('prints a take that checks without damage and fault, and how good it is', async () => {
    // Those of the demo that stand alone: all of it is proposed in tests/planner.
    const { kit, takes, ...rest } = demoLayout();
    const [take] = takes;
    const alone = ['harbour', 'gull-1', 'foghorn', 'kelp', 'gull-2'];
    const modules = take?.modules.filter(({ id }) => alone.includes(id)) ?? [];
    const own = file('alone.json', { ...rest, kit, takes: [{ ...take, modules, ribbons: [] }] });
    const { exit, out } = await runAnyCommand(['propose', own, '--json']);
    expect(exit).toBe(0);
    const proposal = JSON.parse(out);
    expect(Object.keys(proposal)).toEqual([
      'take',
      'unlinked',
      'cost',
      'bound',
      'optimal',
      'ribbons',
      'worstLossMv',
    ]);
    expect(proposal).toMatchObject({ unlinked: [], cost: 0, bound: 0, optimal: true, ribbons: 5 });
    const layout = file('proposed.json', { ...rest, kit, takes: [proposal.take] });
    expect(cli(['check', layout]).exit).toBe(0);
  });

  it('tells people what changes, and what stays open and why', async () => {
    const { out } = await runAnyCommand(['propose', demo, '--take', 'one-long-jetty']);
    expect(out).toMatch(/Proven/);
    expect(out).toMatch(/What stays open\n {2}Boulder 1\. Not linked: .+/);
    expect(out).toMatch(/Damage and faults +6 +1/);
  });

  it('is refused like any other where the file or the usage is wrong', async () => {
    expectRefusal(await runAnyCommand(['propose', 'nowhere.json']), /nowhere\.json: no such file/);
    expectRefusal(await runAnyCommand(['propose', demo, '--take', 'three']), /no take "three"/);
  });
});
