import { z } from '../profile/zod.ts';
import { planSchema } from './schema.ts';

/**
 * The JSON Schema (draft 2020-12) of a plan.json, for programs that read or write plans. It is kept in
 * resources/schema/plan.schema.json; a test says when that file is behind and rewrites it when asked.
 */
export const planJsonSchema = (): Record<string, unknown> => ({
  title: 'Nozzlewright plan',
  description: 'Lengths in metres, angles in radians counter-clockwise from east, pressures absolute in pascals; other units stand in the names.',
  ...z.toJSONSchema(planSchema, { io: 'input' }),
});
