import type { LinkGroup, Participant } from '../wiring/link-group.ts';
import type { Spot, Subject } from './check.ts';
import { moduleSpot, ribbonSpots } from './spots.ts';
import { moduleSubject, namesOf, ribbonSubjects } from './words.ts';

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

export function groupSpots(hosts: readonly Participant[], { ribbons }: LinkGroup): readonly Spot[] {
  return hosts.length > 0
    ? hosts.map(({ module }) => moduleSpot(module))
    : ribbons.flatMap(ribbonSpots).slice(0, 1);
}
