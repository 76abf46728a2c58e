import { freshTakeId, nextInSeries } from '../edit/fresh.ts';
import type { Layout, Take } from '../layout/layout.ts';
import { proposeArrangement } from '../planner/arrange.ts';
import { type Engine, engineOf, type Highs } from '../planner/engine.ts';
import { type Proposal, proposeWiring } from '../planner/propose-wiring.ts';
import { withEngine } from '../planner/with-engine.ts';
import { proposalChanges } from '../share/proposal-changes.ts';
import { proofWords, scoreWords } from '../share/proposal-words.ts';
import { type SideBySide, sideBySide } from '../share/side-by-side.ts';
import { onlyFile, parse, readLayout } from './arguments.ts';
import { json, type LateCommand, Refusal, takesOf } from './command.ts';

/** Lines of a text, each a little in. */
const inset = (lines: readonly string[]): string => lines.map((line) => `  ${line}\n`).join('');

function table({ figures }: SideBySide): string {
  const rows = [['', 'mine', 'proposed'], ...figures.map(({ what, mine, theirs }) => [what, mine, theirs])];
  const widths = [0, 1, 2].map((i) => Math.max(...rows.map((row) => (row[i] as string).length)));
  return inset(
    rows.map((row) =>
      row
        .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] as number) : cell.padStart(widths[i] as number)))
        .join('   '),
    ),
  );
}

function peopleText(layout: Layout, mine: Take, proposal: Proposal): string {
  const { kit } = layout;
  const beside = sideBySide({ kit, take: mine }, { kit, take: proposal.take });
  const nameOf = (id: string): string => {
    const module = proposal.take.modules.find((each) => each.id === id);
    return (
      module?.label ?? `${kit.modules.find(({ id: kindId }) => kindId === module?.kind)?.name ?? id} (${id})`
    );
  };
  const changes = proposalChanges(kit, mine, proposal.take).map(({ what, why }) => `${what}: ${why}.`);
  const left = proposal.unlinked.map(({ module, why }) => `${nameOf(module)}. ${why}`);
  const gone = beside.notes.gone.filter(({ level }) => level !== 'reminder').map(({ headline }) => headline);
  return [
    `${proposal.take.name}\n\n${scoreWords(proposal)}.\n${proofWords(proposal)}\n\n${table(beside)}`,
    changes.length > 0
      ? `\nWhat changes, and why\n${inset(changes)}`
      : '\nNothing changes: it is as good as it can be.\n',
    gone.length > 0 ? `\nNotes that go\n${inset(gone)}` : '',
    left.length > 0 ? `\nWhat stays open\n${inset(left)}` : '',
  ].join('');
}

/** A megabyte, which is read only if it comes to that. */
async function loadEngine(): Promise<Engine> {
  const { default: loadHighs } = await import('highs');
  return engineOf((await loadHighs()) as unknown as Highs);
}

export const propose: LateCommand = {
  usage: 'FILE [--take ID] [--arrange] [--json]',
  says: 'a take wired anew as cheaply as can be, and how far that is proven; --arrange moves modules, too',
  async runLate(args) {
    const { values, positionals } = parse(args, {
      take: { type: 'string' },
      arrange: { type: 'boolean' },
      json: { type: 'boolean' },
    });
    const layout = readLayout(onlyFile(positionals));
    const [mine] = takesOf(layout, values.take) as [Take];
    const make = values.arrange ? proposeArrangement : proposeWiring;
    const found = await withEngine((engine) => make(layout.kit, mine, engine), loadEngine);
    if (!found) throw new Refusal('nothing could be proposed: the search came to no end');
    const names = layout.takes.map(({ name }) => name);
    const take = {
      ...found.take,
      id: freshTakeId(layout),
      name: nextInSeries(names, `${mine.name}, proposed`),
    };
    const proposal: Proposal = { ...found, take };
    if (!values.json) return { text: peopleText(layout, mine, proposal), exit: 0 };
    const { unlinked, score, bound, optimal } = proposal;
    const { cost, ribbons, worstLossMv } = score;
    return { text: json({ take, unlinked, cost, bound, optimal, ribbons, worstLossMv }), exit: 0 };
  },
};
