import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon, ribbonKind } from '../example.ts';
import { groupSpots, groupSubjects, participantNames } from '../group-words.ts';
import { count } from '../words.ts';

export const about: About = {
  title: 'More members than the host takes',
  why: 'A host is built for so many members: more overload its inputs, its supply pins or its addresses.',
  source: 'common practice, no source',
};

export const overMembers: Check = {
  id: 'over-members',
  level: 'damage',
  *find({ linkGroups }: DerivedTake) {
    for (const group of linkGroups) {
      for (const { bus: facts, hosts, members } of group.links) {
        const { bus } = facts;
        const most = bus.membersPerHost;
        const total = members.reduce((sum, { counts }) => sum + counts, 0);
        if (most === undefined || total <= most) continue;
        yield {
          subjects: groupSubjects(hosts, group),
          part: bus.id,
          headline: hosts.length
            ? `${participantNames(hosts)} has ${count(total, 'member')} and takes ${most}`
            : `${count(total, 'member')} hang on one ${bus.name} link; a host takes ${most}`,
          detail: `On the ${bus.name} bus: ${participantNames(members)}.`,
          remedy: `Link at most ${most}; give the others a host of their own.`,
          measure: { members: total, allowed: most },
          spots: groupSpots(hosts, group),
        };
      }
    }
  },
};

const voices = (n: number) => {
  const names = Array.from({ length: n }, (_, i) => `v${i}`);
  return example({
    ribbonKinds: [
      ribbonKind(
        'row',
        Array.from({ length: n + 1 }, (_, i) => i * 25.4),
      ),
    ],
    modules: [
      ['host', 'collector', n * 5],
      ...names.map((name, i) => [name, 'voice', (n - 1 - i) * 5] as const),
    ],
    ribbons: [ribbon('r', 'row', along('host', ...names))],
  });
};

export const examples: Examples = { good: () => voices(6), bad: () => voices(7) };
