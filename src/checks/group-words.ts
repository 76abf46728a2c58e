import { groupBy } from '../layout/group-by.ts';
import type { LinkGroup, Participant } from '../wiring/link-group.ts';
import type { Found, Subject } from './check.ts';
import { moduleSpot, moduleSubject, namesOf, ribbonSpots, ribbonSubjects } from './words.ts';

/** Participants of a link group by bus: a ribbon may lie on headers of two buses that carry the same lines. */
export const byBus = ({ participants }: LinkGroup): Map<Participant['bus'], Participant[]> =>
  groupBy(participants, ({ bus }) => bus);

export const hostsOf = (participants: readonly Participant[]): Participant[] =>
  participants.filter(({ role }) => role === 'host');

export const membersOf = (participants: readonly Participant[]): Participant[] =>
  participants.filter(({ role }) => role === 'member');

/** Hosts and ribbons: the subjects of the rules on link groups. */
export const groupSubjects = (hosts: readonly Participant[], { ribbons }: LinkGroup): Subject[] => [
  ...hosts.map(({ module }) => moduleSubject(module)),
  ...ribbonSubjects(ribbons),
];

const modulesOf = (participants: readonly Participant[]) => [
  ...new Set(participants.map(({ module }) => module)),
];

export const participantNames = (participants: readonly Participant[]): string =>
  namesOf(modulesOf(participants));

export function groupSpots(hosts: readonly Participant[], { ribbons }: LinkGroup): Found['spots'] {
  return hosts.length > 0
    ? hosts.map(({ module }) => moduleSpot(module))
    : ribbons.flatMap(ribbonSpots).slice(0, 1);
}
