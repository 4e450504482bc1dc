import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parsePlan } from '#shared/model/parse-plan';
import type { Plan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const drawn = (): Plan =>
  planBuilder()
    .room(6, 4, 2.7)
    .opening(0, 2, 1)
    .network()
    .cylinder(0.2, 2, Math.PI)
    .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(4, 2, 2.5), place3(4, 2, 2.3)])
    .nozzle(4, 2, 2.3).plan;

/** The same value with the entries of every object in another order. */
function shuffled(value: unknown, order: number): unknown {
  if (Array.isArray(value)) return value.map((each) => shuffled(each, order));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, each]) => [key, shuffled(each, order)] as const);
  const turn = entries.length === 0 ? 0 : order % entries.length;
  return Object.fromEntries([...entries.slice(turn), ...entries.slice(0, turn)].reverse());
}

test('equal plans print equally, whatever the order in which they were drawn', () => {
  const text = printPlan(drawn());
  fc.assert(fc.property(fc.nat(50), (order) => printPlan(shuffled(drawn(), order) as Plan) === text), { numRuns: 30 });
});

test('printing what was parsed prints the same text', () => {
  const text = printPlan(drawn());
  const parsed = parsePlan(text);
  expect(parsed.ok && printPlan(parsed.plan)).toBe(text);
});

test('ids stand in the order of their numbers, fields in the order of the schema', () => {
  const plan = drawn();
  for (const id of ['note-100', 'note-20', 'note-3']) {
    const level = plan.levels['level-0'];
    if (level) level.notes[id] = { text: 'x', at: { y: 1, x: 2 }, id };
  }
  const text = printPlan(plan);
  expect([...text.matchAll(/"(note-\d+)": \{/g)].map(([, id]) => id)).toEqual(['note-3', 'note-20', 'note-100']);
  expect(text).toContain('"note-3": { "id": "note-3", "at": { "x": 2, "y": 1 }, "text": "x" }');
  expect(text.indexOf('"format"')).toBeLessThan(text.indexOf('"version"'));
});

test('moving one node changes one line', () => {
  const plan = drawn();
  const before = printPlan(plan).split('\n');
  const node = Object.values(Object.values(plan.networks)[0]?.nodes ?? {})[0];
  if (node) node.at.x += 0.5;
  const after = printPlan(plan).split('\n');
  expect(after).toHaveLength(before.length);
  expect(after.filter((line, i) => line !== before[i])).toHaveLength(1);
});

test('numbers keep every digit', () => {
  fc.assert(
    fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (x) => {
      const plan = drawn();
      const node = Object.values(Object.values(plan.networks)[0]?.nodes ?? {})[0];
      if (node) node.at.x = x;
      const parsed = parsePlan(printPlan(plan));
      const again = parsed.ok ? Object.values(Object.values(parsed.plan.networks)[0]?.nodes ?? {})[0]?.at.x : undefined;
      expect(again === x || again === 0).toBe(true);
    }),
    { numRuns: 50 },
  );
});
