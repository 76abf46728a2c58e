import {
  type Defect,
  defectsOfSuspect,
  type Joint,
  type LaidRibbon,
  type Link,
  type Suspect,
  type WholeTake,
} from '../../src/index.ts';

/** Something that the user broke, to see what follows. */
export type Breakage =
  | Suspect
  /** One contact or conductor out of several on its line, from 0. */
  | { readonly type: 'pin'; readonly link: Link; readonly pin: number };

/** The conducting seat that a connector makes, or that is made to it. */
export const jointAt = (ribbon: LaidRibbon | undefined, connector: number): Joint | undefined =>
  ribbon?.uses[connector]?.find(({ conducts }) => conducts);

export function defectsOfBreakage(breakage: Breakage, take: WholeTake): readonly Defect[] {
  if (breakage.type !== 'pin') return defectsOfSuspect(breakage, take);
  const { link, pin } = breakage;
  if (link.type === 'seat') {
    const { ribbon, connector } = link.joint;
    return [{ type: 'open-contact', ribbon: ribbon.id, connector, contact: pin }];
  }
  return link.type === 'span'
    ? [{ type: 'open-conductor', ribbon: link.ribbon.id, from: link.from, conductor: pin }]
    : [];
}
