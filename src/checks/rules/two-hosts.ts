import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { groupSpots, groupSubjects, participantNames } from '../group-words.ts';

export const about: About = {
  title: 'Two hosts joined',
  why: 'Two collectors on one link drive one another’s outputs and share supplies that were never meant to meet.',
  source: 'common practice, no source',
};

export const twoHosts: Check = {
  id: 'two-hosts',
  level: 'damage',
  *find({ linkGroups }: DerivedTake) {
    for (const group of linkGroups) {
      for (const { bus: facts, hosts } of group.links) {
        if (hosts.length < 2) continue;
        const { bus } = facts;
        yield {
          subjects: groupSubjects(hosts, group),
          part: bus.id,
          headline: `${participantNames(hosts)} are joined as hosts of one link`,
          detail: `The ${bus.name} bus has one host in a link group; here are ${hosts.length}.`,
          remedy: 'Give each host a ribbon of its own.',
          measure: { hosts: hosts.length },
          spots: groupSpots(hosts, group),
        };
      }
    }
  },
};

const joined = (other: string) =>
  example({
    modules: [
      ['a', 'collector', 5],
      ['b', other, 0],
    ],
    ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
  });

export const examples: Examples = { good: () => joined('voice'), bad: () => joined('collector') };
