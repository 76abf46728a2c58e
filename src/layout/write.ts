import type { Layout } from './layout.ts';
import { layoutSchema } from './schema.ts';

/** The parts of a schema node that tell the order of keys. */
interface Node {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Node>>;
  readonly item?: Node;
  readonly value?: Node;
  readonly wrapped?: Node;
}

/** A list, and a value that may be absent, stand in the schema as what they hold. */
const unwrap = (node: Node | undefined): Node | undefined => (node?.wrapped ? unwrap(node.wrapped) : node);

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Known keys in the order of the schema, then all others by code unit. */
function keysInOrder(object: Readonly<Record<string, unknown>>, node: Node | undefined): string[] {
  const known = Object.keys(node?.entries ?? {});
  const rank = new Map(known.map((key, i) => [key, i]));
  const keys = Object.keys(object).filter((key) => object[key] !== undefined);
  return keys.sort(
    (a, b) => (rank.get(a) ?? known.length) - (rank.get(b) ?? known.length) || byCodeUnit(a, b),
  );
}

/** Lines up to this long hold a whole object or list. */
const LINE = 110;

function write(value: unknown, schema: Node | undefined, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const node = unwrap(schema);
  const inner = `${indent}  `;
  const isList = Array.isArray(value);
  const parts = isList
    ? value.map((item) => write(item, node?.item, inner))
    : keysInOrder(value as Record<string, unknown>, node).map((key) => {
        const child = node?.entries?.[key] ?? node?.value;
        return `${JSON.stringify(key)}: ${write((value as Record<string, unknown>)[key], child, inner)}`;
      });
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
