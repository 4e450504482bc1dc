import { describe, expect, test } from 'vitest';
import { TOPICS } from '#shared/calculations/index';
import { runCli } from '../../../src-main/cli/run-cli.ts';
import { TEST_TIME } from '../../support/hosts.ts';

async function calc(input: string, ...words: string[]) {
  const lines: string[] = [];
  const asides: string[] = [];
  const out = { line: (text: string) => lines.push(text), aside: (text: string) => asides.push(text), width: 80, now: () => TEST_TIME };
  const code = await runCli(['calc', ...words], '1.2.3', out, async () => input);
  return { code, out: lines.join('\n'), err: asides.join('\n') };
}

const VENT = { massFlow_kg_s: 6.073, allowablePressure_Pa: 500, temperature_C: 20, agent: 'IG-100', dischargeCoefficient: 0.61 };

describe('calc', () => {
  test('takes JSON and answers one line of JSON', async () => {
    const { code, out, err } = await calc(JSON.stringify(VENT), 'relief-vent');
    expect([code, err]).toEqual([0, '']);
    expect(JSON.parse(out)).toEqual({ chainArea_m2: null, enclosurePressure_Pa: null, freeArea_m2: expect.closeTo(0.2966, 4), volumeFlow_m3_s: expect.closeTo(5.2123, 3) });
  });

  test.each([
    ['no JSON', '{', 'not JSON'],
    ['nothing', '', 'not JSON'],
    ['an unknown key', JSON.stringify({ ...VENT, colour: 1 }), 'colour'],
    ['a wrong unit', JSON.stringify({ ...VENT, massFlow_lb: 1 }), 'massFlow_lb'],
    ['a missing value', '{}', 'massFlow'],
    ['a value out of range', JSON.stringify({ ...VENT, temperature_C: 900 }), 'temperature_C'],
  ])('%s is bad input, with one message that names it', async (_, input, named) => {
    const { code, out, err } = await calc(input, 'relief-vent');
    expect([code, out]).toEqual([2, '']);
    expect(err.split('\n')).toHaveLength(1);
    expect(err).toContain(named);
  });

  test('what a formula refuses is bad input as well', async () => {
    const { code, out, err } = await calc(JSON.stringify({ nominalSize: '1', fittingClass: '300', from: 'elbow-90', to: 'tee', centreToCentre_m: 0.05 }), 'cut-length');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('centreToCentre');
  });

  test.each([[['nonsense']], [[]]])('%j is bad input that names the topics', async (words) => {
    const { code, out, err } = await calc('{}', ...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('relief-vent');
  });

  test('--list gives every topic with its keys', async () => {
    const { code, out } = await calc('', '--list');
    expect(code).toBe(0);
    for (const { id, outputs } of TOPICS) for (const word of [id, ...Object.keys(outputs)]) expect(out).toContain(word);
  });

  test.each(TOPICS.map((topic) => [topic.id, topic] as const))('%s --help gives every key with unit, range and source', async (id, topic) => {
    const { code, out, err } = await calc('', id, '--help');
    expect([code, err]).toEqual([0, '']);
    for (const { name } of topic.inputs) expect(out).toContain(name);
    for (const key of Object.keys(topic.outputs)) expect(out).toContain(`${key}:`);
    expect(out).toContain('Source:');
    expect(out).toContain('Preliminary');
  });
});

describe('what must be given', () => {
  const WHOLE: readonly (readonly [topic: string, input: Readonly<Record<string, unknown>>])[] = [
    ['relief-vent', VENT],
    [
      'hold-time',
      { agent: 'IG-55', concentration_pct: 40.3, volume_m3: 240, height_m: 3, protectedHeight_m: 2.5, fanCoefficient: 0.062424, fanExponent: 0.6, lowerLeakFraction: 0.5, endFraction_pct: 85 },
    ],
    ['cut-length', { nominalSize: '1', fittingClass: '300', from: 'elbow-90', to: 'tee', centreToCentre_m: 1 }],
    ['pipe-rating', { nominalSize: '1', schedule: '80', allowableStress_psi: 15_000, joint: 'threaded', millFactor: 0.875, y: 0.4 }],
    ['voltage-drop', { wireGauge: '14', stranding: 'solid', supplyVoltage_V: 20.4, loads: [{ distance_ft: 50, current_A: 0.5 }] }],
    ['conduit-fill', { conduit: 'EMT', tradeSize: '1/2', conductors: [{ type: 'THHN', wireGauge: '14', count: 3 }] }],
  ];

  test.each(WHOLE)('%s answers with all its outputs, and names each key that is missing', async (id, input) => {
    const { code, out } = await calc(JSON.stringify(input), id);
    expect(code).toBe(0);
    expect(Object.keys(JSON.parse(out)).sort()).toEqual(Object.keys(TOPICS.find((topic) => topic.id === id)?.outputs ?? {}).sort());
    for (const key of Object.keys(input)) {
      const { [key]: _, ...rest } = input;
      const without = await calc(JSON.stringify(rest), id);
      expect([without.code, without.out]).toEqual([2, '']);
      expect(without.err).toContain(`${key.split('_')[0]} is missing`);
    }
  });
});
