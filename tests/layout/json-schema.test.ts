import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { layoutJsonSchema, openDocument } from '../../src/document.ts';
import { demoLayout } from '../../src/layout/demo.ts';
import { changed, FIXTURE, type Path } from '../support/fixture.ts';
import { fitsSchema, type JsonSchemaNode } from '../support/json-schema-check.ts';

interface Schema {
  readonly $ref?: string;
  readonly $defs?: Record<string, Schema>;
  readonly properties?: Record<string, Schema>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly additionalProperties?: unknown;
}

const root = layoutJsonSchema() as Schema;

const resolved = (schema: Schema): Schema =>
  root.$defs?.[schema.$ref?.slice('#/$defs/'.length) ?? ''] ?? schema;

function at(...keys: string[]): Schema {
  let schema: Schema = root;
  for (const key of keys) {
    const next: Schema | undefined = schema.properties?.[key];
    if (!next) throw new Error(`no ${key}`);
    schema = resolved(next.items ?? next);
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
    ['Built', ['takes', 'built']],
    ['HarnessTest', ['takes', 'built', 'harnessTests']],
    ['DoneStep', ['takes', 'built', 'doneSteps']],
    ['MeterReading', ['takes', 'built', 'readings']],
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

describe('read by somebody else, the JSON Schema', () => {
  const fits = (data: unknown): boolean => fitsSchema(data, layoutJsonSchema() as JsonSchemaNode);

  it('takes the file of version 1, and the demo', () => {
    expect(fits(JSON.parse(FIXTURE))).toBe(true);
    expect(fits(demoLayout())).toBe(true);
  });

  it.each([
    [['title'], undefined],
    [['takes'], []],
    [['kit', 'voltages', 0, 'id'], 'GND'],
    [['kit', 'voltages', 0, 'volts'], 0],
    [['kit', 'modules', 0, 'widthHp'], 5.25],
    [['kit', 'modules', 0, 'draws'], []],
    [['kit', 'modules', 0, 'draws', '+12'], -1],
    [['kit', 'modules', 0, 'known'], 'heard'],
    [['kit', 'ribbons', 0, 'connectors'], [{ atMm: 0 }]],
    [['kit', 'limits', 'contactMilliohm'], 0],
    [['takes', 0, 'modules', 0, 'atHp'], '3'],
    [['takes', 0, 'ribbons', 0, 'seats', 0, 'on'], { module: 'cobble-1' }],
    [['takes', 0, 'ribbons', 0, 'seats', 0, 'on'], { ribbon: 'l1', connector: 0.5 }],
  ] as [Path, unknown][])('refuses what opening refuses: %j = %j', (path, value) => {
    const data = changed(path, value);
    expect(openDocument(data).ok).toBe(false);
    expect(fits(data)).toBe(false);
  });
});
