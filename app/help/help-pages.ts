import { catalogue } from '../../src/help.ts';
import { checks } from '../../src/index.ts';
import { GLOSSARY } from './glossary.ts';
import { GUIDE } from './guide.ts';

export type HelpGroup = 'Start here' | 'Damage' | 'Faults' | 'Reminders';

/** A page of the help; its id is where it lies: `session.help`. */
export interface HelpPage {
  readonly id: string;
  readonly group: HelpGroup;
  readonly label: string;
  /** All that the search looks through besides the label. */
  readonly words: string;
}

const GROUP_OF = { damage: 'Damage', fault: 'Faults', reminder: 'Reminders' } as const;

export const GROUPS: readonly HelpGroup[] = ['Start here', 'Damage', 'Faults', 'Reminders'];

export const HELP_PAGES: readonly HelpPage[] = [
  {
    id: 'guide',
    group: 'Start here',
    label: 'From a box of modules to a case that works',
    words: GUIDE.map(({ title, text }) => `${title} ${text}`).join(' '),
  },
  {
    id: 'glossary',
    group: 'Start here',
    label: 'Words of the trade',
    words: GLOSSARY.map(({ word, means }) => `${word} ${means}`).join(' '),
  },
  { id: 'keys', group: 'Start here', label: 'Keys', words: 'shortcuts keyboard change' },
  ...checks.map(({ id, level }): HelpPage => {
    const { title = id, why = '' } = catalogue[id]?.about ?? {};
    return { id: `check/${id}`, group: GROUP_OF[level], label: title, words: why };
  }),
];
