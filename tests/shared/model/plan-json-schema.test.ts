import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { planJsonSchema } from '#shared/model/plan-json-schema';
import { PLAN_VERSION } from '#shared/model/schema';

const FILE = join(import.meta.dirname, '../../../resources/schema/plan.schema.json');

// UPDATE_SCHEMA=1 rewrites the file.
test('resources/schema/plan.schema.json is the schema of the code', () => {
  const text = `${JSON.stringify(planJsonSchema(), null, 1)}\n`;
  if (process.env.UPDATE_SCHEMA) writeFileSync(FILE, text);
  expect(readFileSync(FILE, 'utf8')).toBe(text);
});

test('it says what a reader needs: draft, units, required parts, no strange parts', () => {
  expect(planJsonSchema()).toMatchObject({
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    description: expect.stringContaining('metres'),
    required: expect.arrayContaining(['format', 'version', 'levels', 'networks']),
    additionalProperties: false,
    properties: { format: { const: 'nozzlewright-plan' }, version: { const: PLAN_VERSION } },
  });
});
