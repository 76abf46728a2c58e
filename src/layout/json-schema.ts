import { toJsonSchema } from '@valibot/to-json-schema';
import { layoutSchema } from './schema.ts';

/** The JSON Schema of a layout document. */
export const layoutJsonSchema = (): object => ({
  ...toJsonSchema(layoutSchema, { errorMode: 'ignore' }),
  title: 'Ribbonwright layout, version 1',
  description:
    'Lengths are mm, widths on the rail HP (5.08 mm), currents mA, voltages V. Positions are as seen from the front. Not expressed here: references and ids, pin ends that suit the axis, even pinouts, rising places of connectors.',
});
