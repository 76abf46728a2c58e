import type { KitIndex } from '../layout/kit-index.ts';
import type { Joint } from '../wiring/laid-ribbon.ts';
import type { Mishap } from '../wiring/mishap.ts';
import type { Misplug } from '../wiring/pin-map.ts';
import { mishapAt } from '../wiring/rehearse.ts';
import { count, lineName, list } from './words.ts';

const AS_NUMBERED: Misplug = { type: 'shifted', rows: 0, pairs: 0 };

/** What a seat joins as its pins are numbered. */
export const mishapAsSeated = (joint: Joint, kit: KitIndex): Mishap => mishapAt(joint, AS_NUMBERED, kit);

/** Lines of the module that touch two or more lines of a tie. */
function through(tie: readonly string[], { meets }: Mishap): string[] {
  const touched = new Map<string, number>();
  for (const { ribbon, module } of meets) {
    if (module !== '' && tie.includes(ribbon))
      touched.set(module, (touched.get(module) ?? tie.filter((line) => line === module).length) + 1);
  }
  return [...touched].filter(([, lines]) => lines > 1).map(([line]) => line);
}

function tieWords(tie: readonly string[], mishap: Mishap, whose: string): string {
  const by = through(tie, mishap);
  const who = by.length ? `${whose} ${list(by.map(lineName))}` : 'it';
  return `${who} would tie ${list(tie.map(lineName))} together`;
}

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
 * A mishap as a builder would tell it, such as "Reversed, the module's GND would tie +12 V, +5 V and CV
 * together."
 */
export function tellMishap(mishap: Mishap, how: string, kit: KitIndex, on: Joint['on']): string {
  const whose = on.type === 'header' ? `the ${on.header.owner.type}'s` : "the other ribbon's";
  const parts = mishap.shorts.length
    ? mishap.shorts.map((short) => tieWords(short, mishap, whose))
    : mishap.meets.length
      ? [meetingWords(mishap, kit, whose)]
      : ['each line would meet its own name'];
  if (mishap.openContacts > 0) {
    parts.push(`${count(mishap.openContacts, 'contact')} would hang free`);
  }
  return capital(`${how ? `${how}, ` : ''}${list(parts)}.`);
}
