import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { About, Check, Examples } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { groupSpots, participantNames } from '../group-words.ts';
import { ribbonSubjects } from '../words.ts';

/** Buses that some kind of the kit hosts, placed or not. */
function hostedBuses({ kit }: DerivedTake): Set<string> {
  const headers = kit.kit.modules.flatMap((kind) => kind.headers);
  return new Set(headers.filter(({ role }) => role === 'host').map(({ bus }) => bus));
}

export const about: About = {
  title: 'Members without a host',
  why: 'Members send to a host; linked only to one another they play for nobody.',
  source: 'common practice, no source',
};

export const noHost: Check = {
  id: 'no-host',
  level: 'fault',
  *find(take: DerivedTake) {
    const hosted = hostedBuses(take);
    for (const group of take.linkGroups) {
      for (const { bus: facts, hosts, members } of group.links) {
        const { bus } = facts;
        if (members.length === 0 || hosts.length > 0 || !hosted.has(bus.id)) continue;
        yield {
          subjects: ribbonSubjects(group.ribbons),
          part: bus.id,
          headline: `${participantNames(members)} ${members.length === 1 ? 'has' : 'have'} no host`,
          detail: `Nothing on this link is a host of the ${bus.name} bus.`,
          remedy: 'Seat the ribbon on a host too.',
          measure: { members: members.length },
          spots: groupSpots([], group),
        };
      }
    }
  },
};

const linked = (first: string) =>
  example({
    modules: [
      ['a', first, 5],
      ['b', 'voice', 0],
    ],
    ribbons: [ribbon('r', 'stiff', along('a', 'b'))],
  });

export const examples: Examples = { good: () => linked('collector'), bad: () => linked('voice') };
