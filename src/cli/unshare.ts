import { writeLayout } from '../document.ts';
import { describeLinkFailure, openLink } from '../share/link.ts';
import { parse, readText } from './arguments.ts';
import { type Command, Refusal } from './command.ts';

export const unshare: Command = {
  usage: 'LINK',
  says: 'the layout that a link carries',
  run(args) {
    const { positionals } = parse(args, {});
    const [link, ...more] = positionals;
    if (link === undefined) throw new Refusal('name a link, or - for standard input');
    if (more.length > 0) throw new Refusal(`one link at a time; ${JSON.stringify(more[0])} is one too many`);
    const opened = openLink(link === '-' ? readText('-') : link);
    if (!opened.ok) throw new Refusal(describeLinkFailure(opened.error));
    return { text: writeLayout(opened.value), exit: 0 };
  },
};
