import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { firstIssues } from '#shared/model/first-issues';
import { planSchema } from '#shared/model/schema';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const { plan } = planBuilder()
  .room(6, 4, 2.7, undefined, { temperature: { least_K: 290, greatest_K: 300 }, underFloor: { depth_m: 0.3, isProtected: true, exclusion: null } })
  .hole(rectangle(1, 1, { x: 2, y: 1 }))
  .opening(0, 2, 1)
  .ceilingZone(rectangle(2, 2), 2.4)
  .obstruction('beam', rectangle(0.3, 4, { x: 3, y: 0 }), 2.4, 2.7)
  .underlay()
  .dimension({ x: 0, y: 0 }, { x: 6, y: 0 })
  .note(1, 1, 'Check on site')
  .network({ assembly: [{ id: 'part-1', kind: 'hose', name: 'Hose', length_m: 0.5, setPressure_Pa: null, arrowDownstream: true }] })
  .cylinder(0.2, 2, Math.PI)
  .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(4, 2, 2.5), place3(4, 2, 2.3)])
  .nozzle(4, 2, 2.3);

/** Every way to a value of the plan. */
const PATHS: (string | number)[][] = [];
function collect(value: unknown, path: (string | number)[]): void {
  PATHS.push(path);
  if (typeof value !== 'object' || value === null) return;
  for (const [key, part] of Object.entries(value)) collect(part, [...path, key]);
}
collect(plan, []);

test('nothing is found exactly when the schema takes the value, wherever it was changed', () => {
  expect(firstIssues(planSchema, plan, 3)).toEqual([]);
  const values = fc.constantFrom<unknown>(null, undefined, 0, -1, 1.5, 1e9, 1e300, '', 'x', 'a b', '..', true, [], {}, [1], { x: 1 }, { id: 'a' }, Number.NaN, 'x'.repeat(30_000));
  fc.assert(
    fc.property(fc.constantFrom(...PATHS.slice(1)), values, (path, value) => {
      const changed: unknown = structuredClone(plan);
      const owner = path.slice(0, -1).reduce<unknown>((held, key) => (held as Record<string | number, unknown>)[key], changed) as Record<string | number, unknown>;
      const key = path.at(-1) ?? '';
      owner[key] = value;
      const issues = firstIssues(planSchema, changed, 3);
      expect(issues.length === 0).toBe(planSchema.safeParse(changed).success);
      expect(issues.length).toBeLessThanOrEqual(3);
      for (const issue of issues) {
        expect(issue.text).toMatch(/^(must|is|has) /);
        expect(path.map(String)).toEqual(issue.path.slice(0, path.length).map(String).concat(path.map(String).slice(issue.path.length)));
      }
    }),
    { numRuns: 4000 },
  );
});
