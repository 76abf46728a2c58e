import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { layoutJsonSchema } from '../../src/document.ts';

interface Schema {
  readonly properties?: Record<string, Schema>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly additionalProperties?: unknown;
}

const root = layoutJsonSchema() as Schema;

function at(...keys: string[]): Schema {
  let schema: Schema = root;
  for (const key of keys) {
    const next: Schema | undefined = schema.properties?.[key];
    if (!next) throw new Error(`no ${key}`);
    schema = next.items ?? next;
  }
  return schema;
}

/** Field names and which of them must be there, read from the interfaces of the contract in layout.ts. */
function contract(name: string): { all: string[]; required: string[] } {
  const source = readFileSync(new URL('../../src/layout/layout.ts', import.meta.url), 'utf8');
  const body = new RegExp(`export interface ${name} \\{([\\s\\S]*?)\\n\\}`).exec(source)?.[1] ?? '';
  const fields = [...body.matchAll(/^ {2}readonly (\w+)(\?)?:/gm)];
  return {
    all: fields.map(([, field]) => field as string),
    required: fields.filter(([, , optional]) => !optional).map(([, field]) => field as string),
  };
}

describe('the JSON Schema', () => {
  it.each([
    ['Layout', []],
    ['Kit', ['kit']],
    ['Voltage', ['kit', 'voltages']],
    ['Bus', ['kit', 'buses']],
    ['ModuleKind', ['kit', 'modules']],
    ['Header', ['kit', 'modules', 'headers']],
    ['RibbonKind', ['kit', 'ribbons']],
    ['Connector', ['kit', 'ribbons', 'connectors']],
    ['Take', ['takes']],
    ['Row', ['takes', 'rows']],
    ['Supply', ['takes', 'supplies']],
    ['Board', ['takes', 'supplies', 'boards']],
    ['BoardHeader', ['takes', 'supplies', 'boards', 'headers']],
    ['Module', ['takes', 'modules']],
    ['Ribbon', ['takes', 'ribbons']],
    ['Seat', ['takes', 'ribbons', 'seats']],
    ['Acceptance', ['takes', 'accepted']],
  ] as [string, string[]][])('names every field of %s, and those that must be there', (name, keys) => {
    const { all, required } = contract(name);
    const schema = at(...keys);
    expect(all.length).toBeGreaterThan(0);
    expect(Object.keys(schema.properties ?? {}).sort()).toEqual(all.sort());
    expect([...(schema.required ?? [])].sort()).toEqual(required.sort());
    expect(schema.additionalProperties).not.toBe(false);
  });

  it('names every limit', () => {
    const { all } = contract('Limits');
    expect(Object.keys(at('kit', 'limits').properties ?? {}).sort()).toEqual(all.sort());
  });
});
