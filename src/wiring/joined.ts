import type { DerivedTake } from './derived-take.ts';
import { isHeaderJoint } from './harness.ts';
import type { LinkGroup } from './link-group.ts';

/** Ids of modules and ribbons of a take. */
export interface Parts {
  readonly modules: ReadonlySet<string>;
  readonly ribbons: ReadonlySet<string>;
}

/** The modules that a group's ribbons are drawn on, whether or not every seat conducts. */
const modulesOf = ({ ribbons }: LinkGroup): string[] =>
  ribbons.flatMap(({ uses }) =>
    uses
      .flat()
      .flatMap((joint) =>
        isHeaderJoint(joint) && joint.on.header.owner.type === 'module' ? joint.on.header.owner.id : [],
      ),
  );

const sitsOnBoard = ({ uses }: LinkGroup['ribbons'][number]): boolean =>
  uses.flat().some((joint) => isHeaderJoint(joint) && joint.on.header.owner.type === 'board');

/**
 * What is joined with some modules and ribbons: all modules of their link groups, and the ribbons of these that
 * hang on no board. A lead names the module that it feeds. Asked again with the answer, it goes one group further.
 */
export function joinedWith({ linkGroups }: DerivedTake, { modules, ribbons }: Parts): Parts {
  const groups = linkGroups.map((group) => ({ group, within: new Set(modulesOf(group)) }));
  const isNamed = ({ group }: (typeof groups)[number]): boolean =>
    group.ribbons.some(({ id }) => ribbons.has(id));
  const fed = groups.filter((one) => one.within.size === 1 && isNamed(one));
  const start = new Set([...modules, ...fed.flatMap(({ within }) => [...within])]);
  const joined = groups.filter(
    (one) => one.within.size > 1 && (isNamed(one) || [...one.within].some((id) => start.has(id))),
  );
  return {
    modules: new Set([...start, ...joined.flatMap(({ within }) => [...within])]),
    ribbons: new Set([
      ...ribbons,
      ...joined.flatMap(({ group }) =>
        group.ribbons.filter((each) => !sitsOnBoard(each)).map(({ id }) => id),
      ),
    ]),
  };
}
