import type { Layout } from './layout.ts';
import { layoutSchema } from './schema.ts';

/** The parts of a schema node that tell the order of keys. */
interface Node {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Node>>;
  /** What a value may be instead of one thing. */
  readonly options?: readonly (Node | string)[];
  readonly item?: Node;
  readonly value?: Node;
  readonly wrapped?: Node;
}

type Data = Readonly<Record<string, unknown>>;

/** The node that tells of this very value: not of it or nothing, nor of it or something else. */
function nodeFor(value: object, node: Node | undefined): Node | undefined {
  if (node?.wrapped) return nodeFor(value, node.wrapped);
  const options = node?.options?.filter((option) => typeof option !== 'string');
  return options ? options.find((option) => fits(value, option)) : node;
}

const fits = (value: object, { entries = {} }: Node): boolean =>
  Object.keys(entries).every((key) => Object.hasOwn(value, key));

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Known keys in the order of the schema, then all others by code unit. */
function keysInOrder(object: Data, node: Node | undefined): string[] {
  const known = Object.keys(node?.entries ?? {});
  const rank = new Map(known.map((key, i) => [key, i]));
  const keys = Object.keys(object).filter((key) => object[key] !== undefined);
  return keys.sort(
    (a, b) => (rank.get(a) ?? known.length) - (rank.get(b) ?? known.length) || byCodeUnit(a, b),
  );
}

/** Of a record every key has the same; nothing is known of a key that the schema does not name. */
function childOf(node: Node | undefined, key: string): Node | undefined {
  if (!node?.entries) return node?.value;
  return Object.hasOwn(node.entries, key) ? node.entries[key] : undefined;
}

/** As the language writes it, which forgets the sign of zero. */
const scalar = (value: unknown): string => (Object.is(value, -0) ? '-0' : JSON.stringify(value));

/** Lines up to this long hold a whole object or list. */
const LINE = 110;

function write(value: unknown, schema: Node | undefined, indent: string): string {
  if (typeof value !== 'object' || value === null) return scalar(value);
  const node = nodeFor(value, schema);
  const inner = `${indent}  `;
  const isList = Array.isArray(value);
  const parts = isList
    ? value.map((item) => write(item, node?.item, inner))
    : keysInOrder(value as Data, node).map(
        (key) => `${JSON.stringify(key)}: ${write((value as Data)[key], childOf(node, key), inner)}`,
      );
  if (parts.length === 0) return isList ? '[]' : '{}';
  const short = isList ? `[${parts.join(', ')}]` : `{ ${parts.join(', ')} }`;
  if (indent.length + short.length <= LINE && !short.includes('\n')) return short;
  const body = parts.map((part) => inner + part).join(',\n');
  return isList ? `[\n${body}\n${indent}]` : `{\n${body}\n${indent}}`;
}

/**
 * A layout as the text of a file. The same layout gives the same text, whatever the order of its keys: known
 * keys as in the contract, unknown ones after them; short objects on one line, so that people can read it.
 */
export const writeLayout = (layout: Layout): string =>
  `${write(layout, layoutSchema as unknown as Node, '')}\n`;
