import { describe, expect, it } from 'vitest';
import { parseTable } from '../../app/stock/table-text.ts';
import { checkTake } from '../../src/checks/run.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import type { Kit, Layout } from '../../src/layout/layout.ts';
import { describeFailure, openLayout } from '../../src/layout/open.ts';
import { moduleKindIssues } from '../../src/layout/references.ts';
import { writeLayout } from '../../src/layout/write.ts';
import { describeLinkFailure, openLink } from '../../src/share/link.ts';
import { badCellWords, readTable } from '../../src/table/read-table.ts';
import { deriveTake } from '../../src/wiring/derive.ts';
import { runs } from '../support/runs.ts';
import { hostileDocument, hostileLink, hostileTable } from './hostile-text.ts';
import { keptFailures, tryAll } from './kept-failures.ts';

/** One clear message: a line that says something, can be read aloud, and does not fill the screen. */
function isOneLine(words: string): void {
  expect(words.trim()).not.toBe('');
  expect(words).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(words).not.toMatch(/undefined|\[object|TypeError/);
  expect(words.length).toBeLessThan(2000);
}

/** What opened in spite of all can be judged, and saved and opened again. */
function canBeUsed(layout: Layout): void {
  for (const take of layout.takes) checkTake(deriveTake(layout.kit, take));
  const again = openLayout(writeLayout(layout));
  expect(again.ok && again.value).toEqual(layout);
}

function answersDocument(text: string): void {
  const opened = openLayout(text);
  if (opened.ok) canBeUsed(opened.value);
  else isOneLine(describeFailure(opened.error));
}

function answersLink(text: string): void {
  const opened = openLink(text);
  if (opened.ok) canBeUsed(opened.value);
  else isOneLine(describeLinkFailure(opened.error));
}

/** In the long sweep 10,000 times, whatever else is asked for. */
const often = (inGate: number): ReturnType<typeof runs> => {
  const { numRuns, seed } = runs(inGate);
  return { numRuns: numRuns > inGate ? Math.max(10_000, numRuns) : numRuns, seed };
};

const KIT: Kit = { ...demoLayout().kit, modules: [], ribbons: [] };

function answersTable(text: string): void {
  const cells = parseTable(text);
  if (!cells.ok) {
    isOneLine(cells.error);
    return;
  }
  for (const hasHeadings of [true, false]) {
    const { rows, bad, refused } = readTable(KIT, cells.value, { hasHeadings, byHand: new Map() });
    if (refused !== undefined) isOneLine(refused);
    for (const each of bad) isOneLine(badCellWords(each));
    for (const { made } of rows) if (made) expect(moduleKindIssues(KIT, made).total).toBe(0);
  }
}

describe.each([
  ['document', hostileDocument, answersDocument, 60],
  ['link', hostileLink, answersLink, 60],
  ['table', hostileTable, answersTable, 100],
] as const)('a hostile %s', (sort, texts, answers, inGate) => {
  it('is answered by one clear message, or opens and can be used', () => {
    tryAll(sort, texts, answers, often(inGate));
  });

  it.each(keptFailures(sort))('%s, which once was not', (_, text) => answers(text));
});
