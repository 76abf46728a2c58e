import type { DerivedTake } from '../../wiring/derived-take.ts';
import type { DoubleUse } from '../../wiring/joints.ts';
import type { Joint } from '../../wiring/laid-ribbon.ts';
import type { About, Check, Examples, Found, Subject } from '../check.ts';
import { along, example, ribbon } from '../example.ts';
import { jointSpots } from '../spots.ts';
import { connectorName, list, ribbonSubject, targetName, targetSubject } from '../words.ts';

/** What a joint joins a doubly used connector with: the other connector, or a header. */
function otherEnd(joint: Joint, use: DoubleUse & { type: 'connector' }): { name: string; subject: Subject } {
  const isTarget =
    joint.on.type === 'connector' && joint.on.ribbon === use.ribbon && joint.on.connector === use.connector;
  if (isTarget) return { name: connectorName(joint), subject: ribbonSubject(joint.ribbon) };
  return { name: targetName(joint.on), subject: targetSubject(joint.on) };
}

/** A socket that holds two connectors is named with their ribbons only; one seated twice, with both things. */
function connectorFound(use: DoubleUse & { type: 'connector' }): Found {
  const ends = use.joints.map((joint) => otherEnd(joint, use));
  const plugs = ends.filter((_, i) => isPluggedInto(use.joints[i] as Joint, use));
  const named = plugs.length > 0 ? plugs : ends;
  return {
    subjects: [ribbonSubject(use.ribbon), ...named.map(({ subject }) => subject)],
    part: `${use.ribbon.id} ${use.connector}`,
    headline: `${connectorName(use)} is used twice`,
    detail: `It would sit on ${list(ends.map(({ name }) => name))} at once; a connector has one side.`,
    remedy: 'Lift one of the seats.',
    measure: { uses: use.joints.length },
    spots: use.joints.flatMap(jointSpots).slice(0, 1),
  };
}

const isPluggedInto = (joint: Joint, use: DoubleUse & { type: 'connector' }): boolean =>
  joint.on.type === 'connector' && joint.on.ribbon === use.ribbon && joint.on.connector === use.connector;

function headerFound(use: DoubleUse & { type: 'header' }): Found {
  const [first] = use.joints as readonly [Joint];
  return {
    subjects: [...use.joints.map(({ ribbon: own }) => ribbonSubject(own)), targetSubject(first.on)],
    part: use.header.id,
    headline: `${targetName(first.on)} holds ${use.joints.length} connectors`,
    detail: `${list(use.joints.map(connectorName))} claim the same pins. The first is counted, the others join nothing.`,
    remedy: 'Move one of them to a free header.',
    measure: { uses: use.joints.length },
    spots: jointSpots(first),
  };
}

export const about: About = {
  title: 'Two connectors in one place',
  why: 'A header takes one connector and a connector one header; the second has nowhere to go.',
  source: 'common practice, no source',
};

export const doubleSeat: Check = {
  id: 'double-seat',
  level: 'fault',
  find: ({ wiring }: DerivedTake) =>
    wiring.doubleUses.map((use) => (use.type === 'header' ? headerFound(use) : connectorFound(use))),
};

const twoRibbons = (second: readonly string[]) =>
  example({
    modules: [
      ['a', 'voice', 10],
      ['b', 'voice', 5],
      ['c', 'voice', 0],
      ['d', 'voice', 15],
    ],
    ribbons: [ribbon('r', 'stiff', along('a', 'b')), ribbon('s', 'stiff', along(...second))],
  });

export const examples: Examples = { good: () => twoRibbons(['d', 'c']), bad: () => twoRibbons(['b', 'c']) };
