import { parseSync } from 'vite';

export type SourceFacts = {
  /** Every module named by an import or export, static or dynamic, value or type. */
  readonly imports: readonly string[];
  /** Each use of the clock or of chance, in the words of the source. */
  readonly surprises: readonly string[];
};

/**
 * Reads what a TypeScript file imports and whether it asks the clock or chance.
 * @throws If the text does not parse.
 */
export function sourceFacts(path: string, text: string): SourceFacts {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path}: ${errors.map(({ message }) => message).join('; ')}`);
  const nodes = [...nodesOf(program)];
  return {
    imports: nodes.flatMap((node) => importOf(node) ?? []),
    surprises: nodes.flatMap((node) => surpriseOf(node) ?? []),
  };
}

type Node = { readonly type: string; readonly [part: string]: unknown };

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

function* nodesOf(value: unknown): Generator<Node> {
  if (Array.isArray(value)) {
    for (const item of value) yield* nodesOf(item);
  } else if (isNode(value)) {
    yield value;
    for (const part of Object.values(value)) yield* nodesOf(part);
  }
}

const NAMING_A_MODULE = new Set([
  'ImportDeclaration',
  'ImportExpression',
  'ExportAllDeclaration',
  'ExportNamedDeclaration',
  'TSImportType',
]);

const importOf = (node: Node) => (NAMING_A_MODULE.has(node.type) ? literal(node.source) : undefined);

const literal = (value: unknown) =>
  isNode(value) && value.type === 'Literal' && typeof value.value === 'string' ? value.value : undefined;

const BANNED_MEMBERS = new Set(['Date.now', 'Math.random']);

function surpriseOf(node: Node): string | undefined {
  switch (node.type) {
    case 'MemberExpression': {
      const member = `${nameOf(node.object)}.${nameOf(node.property)}`;
      return BANNED_MEMBERS.has(member) ? member : undefined;
    }
    case 'NewExpression':
      return nameOf(node.callee) === 'Date' && isEmpty(node.arguments) ? 'new Date()' : undefined;
    case 'CallExpression':
      return nameOf(node.callee) === 'Date' ? 'Date()' : undefined;
    default:
      return undefined;
  }
}

const nameOf = (value: unknown) =>
  isNode(value) && value.type === 'Identifier' ? value.name : literal(value);

const isEmpty = (value: unknown) => Array.isArray(value) && value.length === 0;
