import { describe, expect, test } from 'vitest';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { placedSupportsOf } from '#shared/derived/placed-supports';
import { derivePlan } from '#shared/derived/derive-plan';
import { evaluate } from '#shared/evaluate';
import { area_m2 } from '#shared/geometry/outline';
import { planSchema } from '#shared/model/schema';
import type { Finding } from '#shared/rules/finding';
import { DEMO_NAMES, type DemoName, buildDemo } from '../../../src-main/demos/build-demo.ts';

const FOOT_m = 0.3048;
const INCH_m = 0.0254;
const findingsOf = async (name: DemoName): Promise<readonly Finding[]> => evaluate((await buildDemo(name)).plan, workedDischarge()).findings;
const brief = ({ rule, name }: Finding): string => `${rule} ${name}`;
const faults = (findings: readonly Finding[], verdict: Finding['verdict']): string[] => findings.filter((finding) => finding.verdict === verdict).map(brief).sort();

describe.each(DEMO_NAMES)('demo %s', (name) => {
  test('is a valid plan, and the same bytes every time', async () => {
    const [first, second] = [await buildDemo(name), await buildDemo(name)];
    expect(planSchema.safeParse(first.plan).error).toBeUndefined();
    expect(second.plan).toEqual(first.plan);
    expect(second.assets.map(({ sha256 }) => sha256)).toEqual(first.assets.map(({ sha256 }) => sha256));
  });
});

describe.each(['F1', 'F2', 'F3'] as const)('%s as designed', (name) => {
  test('has no stop; the only warning is its sample profile; nothing is left unchecked', async () => {
    const findings = await findingsOf(name);
    expect(faults(findings, 'stop')).toEqual([]);
    expect(faults(findings, 'warn')).toEqual(['D5 Sample 80 L unit (invented)']);
    expect(faults(findings, 'not-checked')).toEqual([]);
  });
});

describe('F1', () => {
  test('its run is 12 ft 9 in with three elbows', async () => {
    const [network] = derivePlan((await buildDemo('F1')).plan).networks;
    expect(network?.paths[0]?.length_m).toBeCloseTo(12.75 * FOOT_m, 9);
    expect(network?.paths[0]?.elbows).toBe(3);
  });

  test('no support holds the nipple of its dirt trap, and the tee before it turns all of the flow', async () => {
    const { derived, design } = evaluate((await buildDemo('F1')).plan, workedDischarge());
    const [network] = derived.networks;
    if (!network) throw new Error('F1 lost its network.');
    const nipple = network.pipes.find(({ pipe }) => network.network.nodes[pipe.to]?.part === 'dirt-trap');
    expect(placedSupportsOf(network).filter(({ pipe }) => pipe === nipple)).toEqual([]);
    const trap = network.fittings.find(({ isTrap }) => isTrap);
    expect(trap?.turn_rad).toBeCloseTo(Math.PI / 2, 9);
    const [sums] = design.networks;
    expect(sums?.turnThrusts.isKnown && sums.turnThrusts.sums.map(({ fitting }) => fitting.node)).toContain(trap?.node);
  });
});

describe('F2', () => {
  test('its paths are those of the design, in feet', async () => {
    const { networks } = derivePlan((await buildDemo('F2')).plan);
    const [network] = networks;
    const lengths = ['N1', 'N2', 'N3', 'N4', 'N5'].map((name) => {
      const id = network?.nozzles.find(({ nozzle }) => nozzle.name === name)?.nozzle.id;
      return (network?.paths.find(({ nozzle }) => nozzle === id)?.length_m ?? 0) / FOOT_m;
    });
    expect(lengths.map((length_ft) => Math.round(length_ft * 100) / 100)).toEqual([31.83, 37.33, 21.33, 26.83, 9.33]);
  });

  test('its floor is 677.25 sq ft', async () => {
    const room = derivePlan((await buildDemo('F2')).plan).spaces.find(({ kind }) => kind === 'room');
    expect(area_m2(room?.outline ?? []) / FOOT_m ** 2).toBeCloseTo(677.25, 9);
  });

  test('with its beams every nozzle is needed; without them N3 is redundant', async () => {
    const without = async (nozzleName: string, hasBeams: boolean): Promise<string[]> => {
      const { plan } = structuredClone(await buildDemo('F2'));
      for (const network of Object.values(plan.networks)) {
        for (const nozzle of Object.values(network.nozzles)) if (nozzle.name === nozzleName) delete network.nozzles[nozzle.id];
      }
      for (const level of Object.values(plan.levels)) {
        for (const thing of Object.values(level.obstructions)) if (thing.kind === 'beam' && !hasBeams) delete level.obstructions[thing.id];
      }
      return faults(evaluate(plan).findings.filter(({ rule }) => rule === 'N9'), 'stop');
    };
    for (const name of ['N1', 'N2', 'N3', 'N4', 'N5']) expect(await without(name, true), name).not.toEqual([]);
    expect(await without('N3', false)).toEqual([]);
  });
});

describe('F2 with seeded faults', () => {
  test('gives exactly the seeded findings, each with its figure', async () => {
    const findings = await findingsOf('F2-faults');
    expect(faults(findings, 'stop')).toEqual(['N1 N4', 'N2 N5', 'N6 N4']);
    const found = (rule: string, name: string): Finding | undefined => findings.find((finding) => finding.rule === rule && finding.name === name);
    expect(found('N1', 'N4')?.margin).toBeCloseTo(-2 * INCH_m, 9);
    expect(found('N2', 'N5')?.margin).toBeCloseTo(-2 * INCH_m, 9);
    const clashes = findings.filter(({ rule, verdict }) => rule === 'P27' && verdict === 'warn');
    expect(clashes.length).toBeGreaterThan(0);
    for (const { measured } of clashes) expect((measured ?? 0) / INCH_m).toBeCloseTo(0.17, 6);
    expect(new Set(faults(findings, 'warn').map((each) => each.split(' ')[0]))).toEqual(new Set(['D5', 'N14', 'P27']));
    expect(faults(findings, 'warn').filter((each) => each.startsWith('N14'))).toEqual(['N14 N3']);
  });
});

describe('F3 with seeded faults', () => {
  test('the cornered nozzle of 203 is found by the corner and the coverage check, the cylinder of 204 in the swing of its door, the vent of 202 into the corridor and the duct without damper in both its rooms, and nothing else', async () => {
    const findings = await findingsOf('F3-faults');
    expect(faults(findings, 'stop')).toEqual(['C7 204-C1', 'E10 Relief vent, Room 202', 'E13 Duct 201 to 202, no damper, Room 201', 'E13 Duct 201 to 202, no damper, Room 202', 'N5 203-N2', 'N9 Room 203']);
    expect(faults(findings, 'warn')).toEqual(['D5 Sample 80 L unit (invented)']);
  });
});
