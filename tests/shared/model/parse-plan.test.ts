import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { DEEPEST_JSON, LONGEST_JSON } from '#shared/model/guarded-json';
import { parsePlan } from '#shared/model/parse-plan';
import { type Plan, newPlan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { PLAN_VERSION } from '#shared/model/schema';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const drawn = () =>
  planBuilder()
    .room(6, 4, 2.7)
    .hole(rectangle(1, 1, { x: 2, y: 1 }))
    .opening(0, 2, 1)
    .ceilingZone(rectangle(2, 2), 2.4)
    .obstruction('beam', rectangle(0.3, 4, { x: 3, y: 0 }), 2.4, 2.7)
    .underlay()
    .dimension({ x: 0, y: 0 }, { x: 6, y: 0 })
    .note(1, 1, 'Check on site')
    .network()
    .cylinder(0.2, 2, Math.PI)
    .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(4, 2, 2.5), place3(4, 2, 2.3)])
    .nozzle(4, 2, 2.3);

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Change = [path: string, value: Json | undefined | ((old: Json) => Json)];

/** The drawn plan as JSON text after changes by hand. A `*` on the way is the first part; undefined takes a part away. */
function handmade(...changes: Change[]): string {
  const plan: Json = JSON.parse(JSON.stringify(drawn().plan));
  for (const [path, value] of changes) {
    let owner: Json = plan;
    const parts = path.split('/');
    const keyOf = (part: string | undefined) => (part === '*' ? Object.keys(owner ?? {})[0] : part) ?? '';
    for (const part of parts.slice(0, -1)) owner = (owner as { [key: string]: Json })[keyOf(part)] ?? null;
    const last = keyOf(parts.at(-1));
    const held = owner as { [key: string]: Json };
    const next = typeof value === 'function' ? value(held[last] ?? null) : value;
    if (next === undefined) delete held[last];
    else held[last] = next;
  }
  return JSON.stringify(plan);
}
const NETWORK = 'networks/*';
const LEVEL = 'levels/*';
const ROOM = `${LEVEL}/enclosures/*`;
const oneMore = (id: string, change: { [key: string]: Json }) => (record: Json) => {
  const held = record as { [key: string]: { [key: string]: Json } };
  return { ...held, [id]: { ...Object.values(held)[0], id, ...change } };
};
const problemOf = (text: string) => {
  const parsed = parsePlan(text);
  if (parsed.ok) throw new Error(`It was read, with remarks: ${parsed.remarks.join(' ')}`);
  expect(parsed.problem.where).not.toBe('');
  expect(parsed.problem.remedy).toMatch(/\.$/);
  return parsed.problem;
};
const read = (text: string): { plan: Plan; remarks: string[] } => {
  const parsed = parsePlan(text);
  if (!parsed.ok) throw new Error(`${parsed.problem.what} ${parsed.problem.where}`);
  return parsed;
};
const firstOf = <T>(record: Record<string, T>): T => Object.values(record)[0] as T;

describe('a sound plan', () => {
  test('is read as it was printed, without remarks', () => {
    const { plan } = drawn();
    expect(read(printPlan(plan))).toEqual({ ok: true, plan, remarks: [] });
    expect(read(printPlan(newPlan()))).toMatchObject({ remarks: [] });
  });

  test('may begin with a byte order mark', () => {
    expect(read(`\ufeff${printPlan(drawn().plan)}`).plan).toEqual(drawn().plan);
  });
});

describe('text that is no plan', () => {
  test.each([
    ['', 'line 1, character 1', 'ends too early'],
    ['{"format": "nozzlewright-plan",\n "version": 1,\n}', 'line 3, character 1', '“}” does not belong'],
    ['{"a": 1\n "b": 2}', 'line 2, character 2', 'does not belong'],
    ['{"a": NaN}', 'line 1, character 7', 'NaN'],
    ['{"a": Infinity}', 'line 1, character 7', 'Infinity'],
    ['{"a": 01}', 'line 1, character 7', 'not understood'],
    ['{"a": "x\ny"}', 'line 1, character 9', 'not understood'],
    ['{"a": "\\x"}', 'line 1, character 8', 'not understood'],
    ['{"a": [1, 2', 'line 1, character 12', 'ends too early'],
    ['{"a": "never closed', 'line 1, character 20', 'ends too early'],
    ["{'a': 1}", 'line 1, character 2', 'not understood'],
    ['[1, 2]]', 'line 1, character 7', 'does not belong'],
    ['[1}', 'line 1, character 3', 'does not belong'],
  ])('%j is damaged at its place', (text, where, what) => {
    const problem = problemOf(text);
    expect(problem).toMatchObject({ code: 'damaged', where: `plan.json, ${where}` });
    expect(problem.what).toContain(what);
  });

  test.each(['null', '3', '"plan"', '[]', '{}', '{"format":"other"}', '{"format":["nozzlewright-plan"]}'])('%s is some other file', (text) => {
    expect(problemOf(text).code).toBe('unsupported');
  });

  test('what it says of any text agrees with the JSON reader', () => {
    const piece = fc.constantFrom('{', '}', '[', ']', ',', ':', '"a"', '1', '-0.5e3', 'true', 'null', ' ', '\n', '"\\u00e4"', 'x', '"');
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }).map((parts) => parts.join('')), (text) => {
        const problem = problemOf(text);
        let isJson = true;
        try {
          JSON.parse(text);
        } catch {
          isJson = false;
        }
        expect(problem.code).toBe(isJson ? 'unsupported' : 'damaged');
      }),
      { numRuns: 3000 },
    );
  });
});

describe('hostile text', () => {
  test('deep nesting is refused before it is read', () => {
    for (const [open, close] of [['[', ']'], ['{"a":', '}']] as const) {
      const depth = 5_000_000 / open.length;
      expect(problemOf(open.repeat(depth)).what).toContain('nested');
      expect(problemOf(`${open.repeat(DEEPEST_JSON + 1)}1${close.repeat(DEEPEST_JSON + 1)}`).what).toContain('nested');
    }
    expect(problemOf(`${'['.repeat(DEEPEST_JSON)}1${']'.repeat(DEEPEST_JSON)}`).code).toBe('unsupported');
    expect(problemOf(`"${'['.repeat(1000)}"`).code).toBe('unsupported');
  });

  test('too long a text, and too many values, are refused', () => {
    expect(problemOf(' '.repeat(LONGEST_JSON + 1)).code).toBe('too-large');
    expect(problemOf(`[${'{},'.repeat(5_000_000)}{}]`).code).toBe('too-large');
  });

  test('a long broken string or number ends in a plain answer', () => {
    expect(problemOf(`{"a": "${'a'.repeat(15_000_000)}`).what).toContain('ends too early');
    expect(problemOf(`{"a": ${'1'.repeat(5_000_000)}.}`).what).toContain('not understood');
    expect(problemOf('\n'.repeat(15_000_000)).where).toContain('line 15000001');
  });

  test.each(['__proto__', 'constructor', 'prototype'])('a key %s is refused wherever it stands', (key) => {
    const inside = `{"format":"nozzlewright-plan","version":1,"networks":{"${key}":{"x":1}}}`;
    expect(problemOf(inside)).toMatchObject({ code: 'damaged', where: expect.stringContaining('line 1') });
    expect(problemOf(`[[{"${key.replace('p', '\\u0070').replace('c', '\\u0063')}":1}]]`).what).toContain(key);
    expect(Object.getPrototypeOf(read(printPlan(drawn().plan)).plan.networks)).toBe(Object.prototype);
    expect('x' in {}).toBe(false);
  });

  test('names that every object has are no parts of a plan, wherever one part names another', () => {
    const own = Object.getOwnPropertyNames(Object.prototype).filter((name) => /^[A-Za-z0-9]/.test(name));
    expect(own.length).toBeGreaterThan(5);
    for (const name of own) expect(problemOf(handmade([`${NETWORK}/profile`, name]))).toMatchObject({ code: 'damaged', where: expect.stringContaining('profile') });
    for (const way of [`${NETWORK}/pipes/*/to`, `${NETWORK}/nozzles/*/node`, `${NETWORK}/source`, `${NETWORK}/level`, `${LEVEL}/underlays/*/asset`, `${ROOM}/openings/*/wall`]) {
      expect(problemOf(handmade([way, 'toString'])).code).toBe('damaged');
    }
  });

  test('a million faults answer as shortly as three', () => {
    const many = Array.from({ length: 100_000 }, (_, i) => `"n-${i}":{}`).join(',');
    const text = handmade([`${NETWORK}/nodes`, 'MANY']).replace('"MANY"', `{${many}}`);
    expect(problemOf(text).what.length).toBeLessThan(1500);
  });

  test('huge rings that cannot be checked in time are refused', () => {
    const comb = (offset: number) => Array.from({ length: 2000 }, (_, i) => ({ x: (i % 2 === 0 ? 0 : 900) + i * 1e-3 + offset, y: Math.floor(i / 2) * 0.2 + (i % 2 === 0 ? 0 : 900) + (i % 4 === 1 ? 0.05 : 0) }));
    const combs = Object.fromEntries(
      Array.from({ length: 60 }, (_, i) => [`o-${i}`, { id: `o-${i}`, name: 'comb', kind: 'other', footprint: comb(i), bottom_m: 0, top_m: 1, isPermeable: false }]),
    );
    const text = handmade([`${LEVEL}/obstructions`, combs]);
    expect(problemOf(text).code).toBe('damaged');
  });
});

describe('validation', () => {
  test.each<[string, Change, string[]]>([
    ['a wrong type', ['info/project', 3], ['info › project', 'must be a text']],
    ['a missing part', ['settings/grid_m', undefined], ['settings › grid_m', 'is missing']],
    ['a part of no plan', ['info/colour', 'red'], ['info', '“colour”']],
    ['a wrong choice', [`${NETWORK}/pipes/*/size`, '7/8'], ['Network 1', 'pipes', 'size', 'one of']],
    ['a number out of range', ['settings/grid_m', 11], ['grid_m', 'at most 10']],
    ['a number that JSON makes infinite', ['settings/grid_m', 'INF'], ['grid_m', 'must be a number']],
    ['a bad id', ['networks', { 'a b': {} }], ['a b', 'a name that is not allowed']],
    ['too few corners', [`${ROOM}/outline`, (old) => (old as Json[]).slice(0, 2)], ['Level 1', 'Room 1', 'outline', 'fewer than 3']],
    ['too many corners', [`${ROOM}/outline`, (old) => Array.from({ length: 2001 }, () => (old as Json[])[0] ?? null)], ['outline', 'more than 2000']],
    ['a null where none may be', ['levels', null], ['levels', 'must be an object']],
    ['a limit of no manual', ['profiles/sample-80/limits/colour_m', { value: 1, source: '' }], ['profiles', 'colour_m']],
    ['a negative limit', ['profiles/sample-80/limits/pathLength_m/value', -1], ['pathLength_m', 'at least 0']],
    ['a footprint of no shape', ['profiles/sample-80/footprint/shape', 'star'], ['footprint']],
  ])('%s is told in words with its place', (_, change, words) => {
    const problem = problemOf(handmade(change).replace('"INF"', '1e999'));
    expect(problem.code).toBe('damaged');
    for (const word of words) expect(`${problem.what} ${problem.where}`).toContain(word);
  });
});

describe('versions', () => {
  test('a newer one says so', () => {
    expect(problemOf(handmade(['version', PLAN_VERSION + 1]))).toMatchObject({ code: 'newer-version', where: expect.stringContaining(`version ${PLAN_VERSION + 1}`) });
  });
  test.each([['1'], [null], [-1], [0.5]])('version %j is none', (version) => {
    expect(problemOf(handmade(['version', version])).what).toContain('which version');
  });
  test('one without a migration is refused', () => {
    expect(problemOf(handmade(['version', 0])).code).toBe('unsupported');
  });
});

describe('what one part names must be there', () => {
  type Case = [string, Change[], (plan: Plan) => void, string];
  const network = (plan: Plan) => firstOf(plan.networks);
  const room = (plan: Plan) => firstOf(firstOf(plan.levels).enclosures);
  const beam = (plan: Plan) => firstOf(firstOf(plan.levels).obstructions);
  test.each<Case>([
    ['a pipe without its node', [[`${NETWORK}/pipes/*/from`, 'node-999']], (p) => expect(Object.keys(network(p).pipes)).toHaveLength(2), 'one of its ends is not in the plan'],
    ['a pipe without length', [[`${NETWORK}/pipes/*`, (old) => ({ ...(old as { from: string }), to: (old as { from: string }).from })]], (p) => expect(Object.keys(network(p).pipes)).toHaveLength(2), 'no length'],
    ['a nozzle without its node', [[`${NETWORK}/nozzles/*/node`, 'node-999']], (p) => expect(network(p).nozzles).toEqual({}), '“N1” was left out'],
    ['two nozzles on a node', [[`${NETWORK}/nozzles`, oneMore('nozzle-3', { name: 'N2' })]], (p) => expect(Object.keys(network(p).nozzles)).toHaveLength(1), 'at the same place'],
    ['a source that is lost', [[`${NETWORK}/source`, 'node-999']], (p) => expect(network(p).source).toBeNull(), 'start of the pipe'],
    ['a profile that is lost', [[`${NETWORK}/profile`, 'other']], (p) => expect(network(p).profile).toBe('other'), 'not checked'],
    ['a space that is lost', [[`${NETWORK}/nozzles/*/serves`, { enclosure: 'gone', space: 'room' }]], (p) => expect(firstOf(network(p).nozzles).serves).toBeNull(), 'hangs in'],
    ['an opening without its wall', [[`${ROOM}/openings/*/wall`, 'gone']], (p) => expect(room(p).openings).toEqual({}), 'the wall that it was in'],
    ['an underlay without its file', [['assets', {}]], (p) => expect(Object.keys(firstOf(p.levels).underlays)).toHaveLength(1), 'Import it again'],
    ['a serial that lags behind', [['nextSerial', 3]], (p) => expect(p.nextSerial).toBe(drawn().plan.nextSerial), 'count of its parts'],
    ['bottom above top', [[`${LEVEL}/obstructions/*/bottom_m`, 3]], (p) => expect(beam(p)).toMatchObject({ bottom_m: 2.7, top_m: 3 }), 'exchanged'],
    ['temperatures the wrong way round', [[`${ROOM}/temperature`, { least_K: 300, greatest_K: 290 }]], (p) => expect(room(p).temperature).toEqual({ least_K: 290, greatest_K: 300 }), 'exchanged'],
  ])('%s is mended with a remark', (_, changes, look, remark) => {
    const { plan, remarks } = read(handmade(...changes));
    expect(remarks.join(' ')).toContain(remark);
    look(plan);
    const again = read(printPlan(plan));
    expect(again.plan).toEqual(plan);
  });

  const places = (change: (p: { x: number; y: number }, i: number) => { x: number; y: number }) => (old: Json) =>
    (old as { x: number; y: number }[]).map((p, i) => ({ ...p, ...change(p, i) }));
  test.each<[string, Change[], string]>([
    ['a network on no level', [[`${NETWORK}/level`, 'gone']], 'not in the plan'],
    ['no level at all', [['levels', {}], ['networks', {}]], 'no level'],
    ['an id under another', [[`${NETWORK}/id`, 'other']], 'another name'],
    ['two corners of one id', [[`${ROOM}/outline/0/id`, 'c'], [`${ROOM}/outline/1/id`, 'c']], 'same name'],
    ['an outline that crosses itself', [[`${ROOM}/outline`, places(({ x, y }, i) => (i === 1 ? { x: 0.5, y: 5 } : { x, y }))]], 'crosses or touches itself'],
    ['an outline that doubles back', [[`${ROOM}/outline`, places(({ x, y }, i) => (i === 2 ? { x: 3, y: 0 } : { x, y }))]], 'crosses or touches itself'],
    ['an outline with two corners in one place', [[`${ROOM}/outline/1/x`, 0]], 'side without length'],
    ['a shaft outside', [[`${ROOM}/holes/0`, places(({ x, y }) => ({ x: x + 10, y }))]], 'past its walls'],
    ['a shaft over another', [[`${ROOM}/holes`, (old) => [(old as Json[])[0] ?? null, (old as { id: string }[][])[0]?.map((c, i) => ({ ...c, id: `h${i}` })) ?? null]]], 'shafts in “Room 1” overlap'],
    ['a beam that crosses itself', [[`${LEVEL}/obstructions/*/footprint`, places(({ x, y }, i) => (i === 1 ? { x, y: 5 } : { x, y }))]], 'footprint of “beam” crosses'],
    ['a file name that leads away', [['assets/*/file', '../secret']], 'file that belongs to the plan'],
    ['no numbers left', [['nextSerial', 999_999_999]], 'used up'],
  ])('%s cannot be mended', (_, changes, what) => {
    expect(problemOf(handmade(...changes)).what).toContain(what);
  });

  test('many remarks are told in short', () => {
    const more = Array.from({ length: 50 }, (_, i): Change => [`${ROOM}/openings`, oneMore(`o-${i}`, { wall: 'gone' })]);
    const { remarks } = read(handmade(...more));
    expect(remarks).toHaveLength(12);
    expect(remarks.at(-1)).toContain('39 more');
  });
});
