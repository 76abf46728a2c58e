import type { KitIndex } from '../layout/kit-index.ts';
import { type Link, linksOf } from '../wiring/joined-lines.ts';
import { type Joint, linesUnder } from '../wiring/laid-ribbon.ts';
import type { Mishap } from '../wiring/mishap.ts';
import { type Misplug, pinMap } from '../wiring/pin-map.ts';
import { linesOn, mishapAt } from '../wiring/rehearse.ts';
import { count, lineName, list } from './words.ts';

/** As its pins are numbered. */
export const AS_NUMBERED: Misplug = { type: 'shifted', rows: 0, pairs: 0 };

/** Lines of the module that touch two or more lines of a tie. */
function through(tie: readonly string[], links: readonly Link[]): string[] {
  const touched = links.filter(({ ribbon }) => tie.includes(ribbon)).map(({ module }) => module);
  return [...new Set(touched)].filter((line) => touched.filter((other) => other === line).length > 1);
}

const tieWords = (tie: readonly string[], links: readonly Link[], whose: string): string =>
  `${whose} ${list(through(tie, links).map(lineName))} would tie ${list(tie.map(lineName))} together`;

/** Voltages on foreign pins first: these are what destroys. */
function meetingWords({ meets }: Mishap, kit: KitIndex, whose: string): string {
  const hurts = (line: string): number => (kit.voltages.has(line) ? 1 : 0);
  const worst = [...meets].sort(
    (a, b) => hurts(b.ribbon) + hurts(b.module) - hurts(a.ribbon) - hurts(a.module),
  );
  const words = worst
    .slice(0, 3)
    .map(({ ribbon, module }) => `${lineName(ribbon)} on ${whose} ${lineName(module)}`);
  const rest = worst.length - words.length;
  return `it would put ${list(words)}${rest > 0 ? `, and ${count(rest, 'more line')} on a wrong pin` : ''}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * What a seat would come to, as a builder would tell it, such as "Reversed, the module's GND would tie +12 V,
 * +5 V and CV together."
 * @param how - the words that it begins with
 */
export function tellMishap(joint: Joint, misplug: Misplug, how: string, kit: KitIndex): string {
  const { on } = joint;
  const mishap = mishapAt(joint, misplug, kit);
  const whose = on.type === 'header' ? `the ${on.header.owner.type}'s` : "the other ribbon's";
  const parts = mishap.shorts.length
    ? tiesIn(joint, misplug, mishap, whose)
    : mishap.meets.length
      ? [meetingWords(mishap, kit, whose)]
      : ['each line would meet its own name'];
  if (mishap.openContacts > 0) {
    parts.push(`${count(mishap.openContacts, 'contact')} would hang free`);
  }
  return capital(`${how ? `${how}, ` : ''}${list(parts)}.`);
}

function tiesIn(joint: Joint, misplug: Misplug, { shorts }: Mishap, whose: string): string[] {
  const [contacts, pins] = [linesOn(joint), linesUnder(joint.on)];
  const links = linksOf(contacts, pins, pinMap(contacts.length, pins.length, misplug));
  return shorts.map((short) => tieWords(short, links, whose));
}
