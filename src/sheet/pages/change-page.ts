import { takeInCase } from '../../layout/take-in-case.ts';
import { deriveTake } from '../../wiring/derive.ts';
import { changeSheet, STAGE_WORDS, stagesOf } from '../change-sheet.ts';
import type { PageMaker } from '../sheet-page.ts';
import { pagesWith, sentences, toTick } from './table.ts';

/** From the take that is in the case to this one, step by step; none where no other take is in the case. */
export const changePage: PageMaker = ({ layout, take, options }) => {
  const inCase = takeInCase(layout);
  if (!inCase || inCase.id === take.take.id) return [];
  const sheet = changeSheet(deriveTake(layout.kit, inCase), take);
  const way =
    sheet.steps.length === 0
      ? `Nothing has to be changed: ${sheet.to} is wired as ${sheet.from}, which is in the case.`
      : `From ${sheet.from}, which is in the case, to ${sheet.to}.`;
  return pagesWith(
    { id: 'change', title: 'Change sheet', side: 'rear' },
    [
      sentences('From what is in the case', [way]),
      ...stagesOf(sheet).map(({ stage, steps }) =>
        toTick(
          STAGE_WORDS[stage],
          steps.map(({ words }) => words),
        ),
      ),
    ],
    options,
  );
};
