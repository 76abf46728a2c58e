/**
 * A small reader of JSON Schema, written from the words of the standard (draft 2020-12, core and validation) and
 * without the library that makes ours: only the keywords that ours has. Throws for any other.
 */
export interface JsonSchemaNode {
  readonly [keyword: string]: unknown;
}

type Check = (value: unknown, keyword: never, root: JsonSchemaNode, node: JsonSchemaNode) => boolean;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const TYPES: Readonly<Record<string, (value: unknown) => boolean>> = {
  object: isObject,
  array: Array.isArray,
  string: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number',
  integer: Number.isInteger,
  boolean: (value) => typeof value === 'boolean',
  null: (value) => value === null,
};

const ofNumbers =
  (holds: (value: number, bound: number) => boolean): Check =>
  (value, bound) =>
    typeof value !== 'number' || holds(value, bound);

const ofLength =
  (type: 'string' | 'array', holds: (length: number, bound: number) => boolean): Check =>
  (value, bound) =>
    !TYPES[type]?.(value) || holds((value as string | readonly unknown[]).length, bound);

const atLeast = (value: number, bound: number): boolean => value >= bound;
const atMost = (value: number, bound: number): boolean => value <= bound;
const holdsAlways: Check = () => true;

const CHECKS: Readonly<Record<string, Check>> = {
  $schema: holdsAlways,
  $defs: holdsAlways,
  title: holdsAlways,
  description: holdsAlways,
  $ref: (value, ref: string, root) => {
    const target = (root.$defs as Readonly<Record<string, JsonSchemaNode>>)[ref.slice('#/$defs/'.length)];
    if (!target) throw new Error(`no ${ref}`);
    return fitsSchema(value, target, root);
  },
  type: (value, type: string) => TYPES[type]?.(value) ?? false,
  const: (value, constant: unknown) => value === constant,
  enum: (value, options: readonly unknown[]) => options.includes(value),
  not: (value, node: JsonSchemaNode, root) => !fitsSchema(value, node, root),
  anyOf: (value, nodes: readonly JsonSchemaNode[], root) =>
    nodes.some((node) => fitsSchema(value, node, root)),
  required: (value, keys: readonly string[]) =>
    !isObject(value) || keys.every((key) => Object.hasOwn(value, key)),
  properties: (value, nodes: Readonly<Record<string, JsonSchemaNode>>, root) =>
    !isObject(value) ||
    Object.entries(nodes).every(
      ([key, node]) => !Object.hasOwn(value, key) || fitsSchema(value[key], node, root),
    ),
  additionalProperties: (value, node: JsonSchemaNode, root, { properties }) => {
    if (properties) throw new Error('only records are known');
    return !isObject(value) || Object.values(value).every((each) => fitsSchema(each, node, root));
  },
  propertyNames: (value, node: JsonSchemaNode, root) =>
    !isObject(value) || Object.keys(value).every((key) => fitsSchema(key, node, root)),
  items: (value, node: JsonSchemaNode, root) =>
    !Array.isArray(value) || value.every((each) => fitsSchema(each, node, root)),
  minItems: ofLength('array', atLeast),
  maxItems: ofLength('array', atMost),
  minLength: ofLength('string', atLeast),
  maxLength: ofLength('string', atMost),
  pattern: (value, source: string) => typeof value !== 'string' || new RegExp(source, 'u').test(value),
  minimum: ofNumbers(atLeast),
  maximum: ofNumbers(atMost),
  exclusiveMinimum: ofNumbers((value, bound) => value > bound),
  multipleOf: ofNumbers((value, step) => Number.isInteger(value / step)),
};

export function fitsSchema(value: unknown, node: JsonSchemaNode, root: JsonSchemaNode = node): boolean {
  return Object.entries(node).every(([keyword, its]) => {
    const check = CHECKS[keyword];
    if (!check) throw new Error(`unknown keyword ${keyword}`);
    return check(value, its as never, root, node);
  });
}
