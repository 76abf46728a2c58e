import { tellMishap } from '../checks/consequence.ts';
import { howPlugged } from '../checks/how-plugged.ts';
import { connectorName, count, lineName, list, targetName } from '../checks/words.ts';
import type { KitIndex } from '../layout/kit-index.ts';
import type { Take } from '../layout/layout.ts';
import { deriveTake } from '../wiring/derive.ts';
import type { Joint } from '../wiring/laid-ribbon.ts';
import type { Mishap } from '../wiring/mishap.ts';
import type { Misplug } from '../wiring/pin-map.ts';
import { mishapAt, seatAt } from '../wiring/rehearse.ts';
import { onlyFile, parse, readLayout } from './arguments.ts';
import { type Command, json, pick, Refusal, takesOf } from './command.ts';

const WHOLE = /^-?\d{1,6}$/;

function wholeNumber(text: string | undefined, option: string): number {
  if (text === undefined) throw new Refusal(`name the ${option} with --${option}`);
  if (!WHOLE.test(text) || text.startsWith('-'))
    throw new Refusal(`--${option} takes a number from 0, not ${JSON.stringify(text)}`);
  return Number(text);
}

function misplugOf(reversed: boolean | undefined, shift: string | undefined): Misplug {
  if ((reversed === true) === (shift !== undefined))
    throw new Refusal('say either --reversed or --shift=ROWS,PAIRS');
  if (shift === undefined) return { type: 'reversed' };
  const [rows, pairs, ...more] = shift.split(',');
  if (!WHOLE.test(rows ?? '') || !WHOLE.test(pairs ?? '') || more.length > 0) {
    throw new Refusal(`--shift takes two whole numbers as in --shift=0,-1, not ${JSON.stringify(shift)}`);
  }
  return { type: 'shifted', rows: Number(rows), pairs: Number(pairs) };
}

const sets = (title: string, groups: readonly (readonly string[])[]): string =>
  groups.map((group) => `  ${title}  ${list(group.map(lineName))}\n`).join('');

function peopleText(seat: Joint, mishap: Mishap, misplug: Misplug, kit: KitIndex): string {
  const meets = mishap.meets.map(
    ({ ribbon, module }) => `  meets  ${lineName(ribbon)} of the ribbon on ${lineName(module)}\n`,
  );
  return [
    `${connectorName(seat)}, on ${targetName(seat.on)}\n\n`,
    `${tellMishap(seat, misplug, howPlugged(misplug), kit)}\n\n`,
    ...meets,
    sets('tied ', mishap.ties),
    sets('SHORT', mishap.shorts),
    `  ${count(mishap.openPins, 'pin')} without a contact, ${count(mishap.openContacts, 'contact')} without a pin\n`,
  ].join('');
}

/** The first take that has the ribbon; else the first, so that the refusal names the nearest there. */
function takeWith(ribbon: string, takes: readonly Take[]): Take {
  const take = takes.find(({ ribbons }) => ribbons.some(({ id }) => id === ribbon)) ?? takes[0];
  if (!take) throw new Refusal('the layout has no take');
  return take;
}

export const rehearse: Command = {
  usage: 'FILE --ribbon ID --connector N (--reversed | --shift=ROWS,PAIRS) [--take ID] [--json]',
  says: 'what a connector would join if it were plugged wrongly; connectors count from 0',
  run(args) {
    const { values, positionals } = parse(args, {
      take: { type: 'string' },
      ribbon: { type: 'string' },
      connector: { type: 'string' },
      reversed: { type: 'boolean' },
      shift: { type: 'string' },
      json: { type: 'boolean' },
    });
    const layout = readLayout(onlyFile(positionals));
    if (values.ribbon === undefined) throw new Refusal('name the ribbon with --ribbon');
    const take = takeWith(values.ribbon, takesOf(layout, values.take));
    const { id } = pick(take.ribbons, values.ribbon, 'ribbon');
    const connector = wholeNumber(values.connector, 'connector');
    const misplug = misplugOf(values.reversed, values.shift);
    const derived = deriveTake(layout.kit, take);
    const connectors = derived.wiring.ribbonById.get(id)?.uses.length ?? 0;
    if (connector >= connectors)
      throw new Refusal(`ribbon ${JSON.stringify(id)} has connectors 0 to ${connectors - 1}`);
    const seat = seatAt(derived, id, connector);
    if (!seat) throw new Refusal(`connector ${connector} of ribbon ${JSON.stringify(id)} sits on nothing`);
    const mishap = mishapAt(seat, misplug, derived.kit);
    return { text: values.json ? json(mishap) : peopleText(seat, mishap, misplug, derived.kit), exit: 0 };
  },
};
