import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TOPICS } from '#shared/calculations/index';
import { INPUT_UNITS, type Quantity, inUnit, keysOf } from '#shared/calculations/input-units';
import { readTopicValues } from '#shared/calculations/read-values';
import type { Topic } from '#shared/calculations/topic';

const topic: Topic = {
  id: 'probe',
  title: 'Probe',
  inputs: [
    { kind: 'number', name: 'pressure', quantity: 'pressure', least: 1000, greatest: 4e7, help: '' },
    { kind: 'number', name: 'pressureRoom', quantity: 'pressure', least: 1000, greatest: 4e7, standard: 101_325, help: '' },
    { kind: 'number', name: 'bore', quantity: 'length', least: 0, greatest: 1, isOptional: true, help: '' },
    { kind: 'numbers', name: 'temperatures', quantity: 'temperature', least: 200, greatest: 400, isOptional: true, help: '' },
    { kind: 'choice', name: 'gas', choices: ['real', 'ideal'], standard: 'real', help: '' },
    { kind: 'choice', name: 'size', choices: ['1', '2'], isOptional: true, help: '' },
    { kind: 'number', name: 'count', quantity: 'count', least: 1, greatest: 9, standard: 1, help: '' },
    { kind: 'number', name: 'flow', quantity: 'ratio', least: 1, greatest: 1e13, isOptional: true, help: '' },
  ],
  outputs: {},
  bases: [],
  run: () => ({}),
};
const reasonOf = (json: unknown): string => {
  const read = readTopicValues(topic, json);
  return read.ok ? `taken: ${JSON.stringify(read.values)}` : read.reason;
};

describe('reading values', () => {
  test('what is not given stands at its standard, or is absent', () => {
    expect(readTopicValues(topic, { pressure_Pa: 200_000 })).toEqual({ ok: true, values: { pressure: 200_000, pressureRoom: 101_325, gas: 'real', count: 1 } });
  });

  test.each([
    ['an unknown key', { pressure_Pa: 2e5, colour: 1 }, ['colour', 'pressure_Pa', 'bore_m']],
    ['a wrong unit', { pressure_m3: 2 }, ['pressure_m3', 'pressure_bar', 'pressure_psig']],
    ['no unit', { pressure: 2 }, ['pressure ', 'pressure_Pa']],
    ['a unit where there is none', { pressure_Pa: 2e5, count_kg: 2 }, ['count_kg', 'give count']],
    ['two keys for one input', { pressure_Pa: 2e5, pressure_bar: 2 }, ['pressure_Pa and pressure_bar']],
    ['a missing value', {}, ['pressure is missing', 'pressure_Pa']],
    ['null', { pressure_Pa: null }, ['pressure_Pa', 'number']],
    ['text for a number', { pressure_Pa: '200000' }, ['pressure_Pa', 'number']],
    ['a value below the range, in its unit', { pressure_bar: 0.001 }, ['pressure_bar', 'from 0.01 to 400']],
    ['a value below a range that reaches far up', { pressure_Pa: 2e5, flow: 0 }, ['flow', 'from 1 to']],
    ['a gauge value above the range', { pressure_barg: 400 }, ['pressure_barg', '398.987']],
    ['a part of a count', { pressure_Pa: 2e5, count: 1.5 }, ['count', 'whole']],
    ['no choice', { pressure_Pa: 2e5, gas: 'steam' }, ['gas', 'real or ideal']],
    ['no list', { pressure_Pa: 2e5, temperatures_C: 20 }, ['temperatures_C', 'list']],
    ['an empty list', { pressure_Pa: 2e5, temperatures_C: [] }, ['temperatures_C']],
    ['a bad member of a list', { pressure_Pa: 2e5, temperatures_C: [20, 900] }, ['temperatures_C[1]', '126.85']],
    ['no object', [1], ['object']],
    ['nothing', null, ['object']],
  ])('%s is named', (_, json, parts) => {
    for (const part of parts) expect(reasonOf(json)).toContain(part);
    expect(reasonOf(json)).not.toContain('taken');
  });

  test('keys that every object answers to are unknown like others', () => {
    expect(reasonOf(JSON.parse('{"pressure_Pa":200000,"__proto__":1}'))).toContain('__proto__');
    expect(reasonOf({ pressure_Pa: 2e5, constructor: 1 })).toContain('constructor');
    expect(reasonOf({ pressure_constructor: 1 })).toContain('pressure_constructor');
  });

  test('an endless number is no number', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) expect(reasonOf({ pressure_Pa: value })).toContain('pressure_Pa');
  });

  test('a numeral is taken for a choice', () => {
    expect(readTopicValues(topic, { pressure_Pa: 2e5, size: 2 })).toMatchObject({ ok: true, values: { size: '2' } });
  });

  test('any JSON is taken or refused, never thrown upon', () => {
    fc.assert(fc.property(fc.jsonValue(), (json) => TOPICS.every((each) => typeof readTopicValues(each, json).ok === 'boolean')));
  });
});

describe('units of input', () => {
  // NIST SP 811 (2008), appendix B.
  test.each([
    ['pressure', 'bar', 2, 200_000],
    ['pressure', 'kPa', 2, 2000],
    ['pressure', 'psi', 1, 6894.757],
    ['pressure', 'barg', 200, 20_101_325],
    ['pressure', 'psig', 0, 101_325],
    ['pressure', 'atm', 1, 101_325],
    ['pressureDifference', 'psf', 1, 47.88026],
    ['pressureDifference', 'inH2O', 1, 249.082],
    ['temperature', 'C', 20, 293.15],
    ['temperature', 'F', 70, 294.2611],
    ['volume', 'L', 80, 0.08],
    ['volume', 'ft3', 1, 0.02831685],
    ['length', 'mm', 25.4, 0.0254],
    ['length', 'ft', 1, 0.3048],
    ['altitude', 'ft', 10_000, 3048],
    ['length', 'in', 1, 0.0254],
    ['mass', 'lb', 1, 0.4535924],
    ['massFlow', 'lb_s', 1, 0.4535924],
    ['area', 'mm2', 100, 1e-4],
    ['area', 'in2', 1, 6.4516e-4],
    ['area', 'ft2', 1, 0.09290304],
    ['stress', 'MPa', 1, 1e6],
    ['stress', 'psi', 15_000, 103_421_355],
    ['current', 'mA', 500, 0.5],
    ['time', 'min', 10, 600],
  ] as const)('%s in %s', (quantity, unit, value, base) => {
    expect((INPUT_UNITS[quantity][unit]?.(value) ?? Number.NaN) / base).toBeCloseTo(1, 6);
  });

  test('there and back is the same', () => {
    for (const units of Object.values(INPUT_UNITS)) for (const toBase of Object.values(units)) expect(inUnit(toBase(12.5), toBase)).toBeCloseTo(12.5, 6);
  });

  test('the first unit of each quantity is the base', () => {
    for (const quantity of Object.keys(INPUT_UNITS) as Quantity[]) expect(Object.values(INPUT_UNITS[quantity])[0]?.(7)).toBe(7);
  });
});

describe('the calculators', () => {
  test('ids are unlike each other', () => {
    expect(new Set(TOPICS.map(({ id }) => id)).size).toBe(TOPICS.length);
  });

  test.each(TOPICS.map((each) => [each.id, each] as const))('%s: every key means one input, every basis has a source', (_, { inputs, bases, outputs, title }) => {
    const keys = inputs.flatMap((input) => (input.kind === 'number' || input.kind === 'numbers' ? keysOf(input.name, input.quantity) : [input.name]));
    expect(new Set(keys).size).toBe(keys.length);
    expect(bases.length).toBeGreaterThan(0);
    for (const { formula, source } of bases) expect([formula, source]).not.toContain('');
    expect(Object.keys(outputs).length).toBeGreaterThan(0);
    expect(title).not.toBe('');
    for (const input of inputs) expect(input.help, input.name).not.toBe('');
  });
});
