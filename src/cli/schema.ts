import { layoutJsonSchema } from '../document.ts';
import { parse } from './arguments.ts';
import { type Command, json, Refusal } from './command.ts';

export const schema: Command = {
  usage: '',
  says: 'the JSON Schema of a layout document',
  run(args) {
    const { positionals } = parse(args, {});
    if (positionals.length > 0)
      throw new Refusal(`schema reads no file; ${JSON.stringify(positionals[0])} is one too many`);
    return { text: json(layoutJsonSchema()), exit: 0 };
  },
};
