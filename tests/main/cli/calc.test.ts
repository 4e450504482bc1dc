import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { TOPICS } from '#shared/calculations/index';
import { packPlan } from '#shared/model/pack-plan';
import { newPlan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { runCli } from '../../../src-main/cli/run-cli.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';

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

describe('calc discharge', () => {
  test('answers for a plan file and for a plan on standard input alike', async () => {
    const { plan, assets } = await buildDemo('F1');
    const path = join(tempFolder(), 'F1.nzw');
    await writeFile(path, packPlan(plan, Object.fromEntries(assets.map(({ file, bytes }) => [file, bytes]))));
    const byFile = await calc('', 'discharge', path);
    const byText = await calc(printPlan(plan), 'discharge');
    expect([byFile.code, byFile.err, byText.code, byText.err]).toEqual([0, '', 0, '']);
    expect(byText.out).toBe(byFile.out);
    const answer = JSON.parse(byFile.out);
    expect(Object.keys(answer)).toEqual(['timeTo95_s', 'peakFlow_kg_s', 'enclosurePeakPressure_Pa', 'nozzles', 'nodes', 'networks']);
    expect(answer.timeTo95_s).toBeLessThan(120);
    expect(answer.peakFlow_kg_s).toBeLessThanOrEqual(0.35);
    expect(answer.nozzles).toMatchObject([{ network: 'Network 1', name: 'N1', isChoked: true }]);
    expect(answer.nozzles[0].mass_kg).toBeCloseTo(answer.networks[0].massDischarged_kg, 6);
    expect(answer.nodes.length).toBeGreaterThan(1);
  });

  test('a plan that lacks something says what, and no plan says so', async () => {
    const { plan } = structuredClone(await buildDemo('F1'));
    for (const network of Object.values(plan.networks)) for (const nozzle of Object.values(network.nozzles)) nozzle.orificeArea_m2 = null;
    const blank = await calc(printPlan(plan), 'discharge');
    expect([blank.code, blank.out]).toEqual([2, '']);
    expect(blank.err).toContain('the orifice of nozzle N1 is not chosen');
    expect((await calc('{}', 'discharge')).code).toBe(2);
    expect((await calc(printPlan(newPlan()), 'discharge')).err).toContain('no pipe network');
  });

  test('--help says what it takes, what it gives and what it rests on', async () => {
    const { code, out } = await calc('', 'discharge', '--help');
    expect(code).toBe(0);
    for (const word of ['plan.json', 'timeTo95_s', 'enclosurePeakPressure_Pa', 'Source:', 'Preliminary']) expect(out).toContain(word);
  });
});
