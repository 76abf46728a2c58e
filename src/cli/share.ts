import { describeLinkFailure, linkOf } from '../share/link.ts';
import { onlyFile, parse, readLayout } from './arguments.ts';
import { type Command, Refusal } from './command.ts';

export const share: Command = {
  usage: 'FILE [--base URL]',
  says: 'a link that carries the whole layout; without --base, the part to put behind the address of the app',
  run(args) {
    const { values, positionals } = parse(args, { base: { type: 'string' } });
    const { base } = values;
    if (base !== undefined && !isAddress(base))
      throw new Refusal(`--base: ${JSON.stringify(base)} is no address`);
    const link = linkOf(readLayout(onlyFile(positionals)), base);
    if (!link.ok) throw new Refusal(describeLinkFailure(link.error));
    return { text: `${link.value}\n`, exit: 0 };
  },
};

const isAddress = (text: string): boolean => URL.canParse(text) && !/\s/.test(text);
