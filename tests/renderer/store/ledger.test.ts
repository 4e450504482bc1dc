import { describe, expect, test } from 'vitest';
import { feet_m } from '#shared/units/convert';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { selectLedger } from '../../../src-renderer/store/selectors.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { Enclosure, Plan } from '#shared/model/plan';
import { planBuilder } from '../../support/plan-builder.ts';

const ledger = (plan: Plan) => selectLedger(makeStore(plan, startSession('test')).get());

describe('the ledger', () => {
  test('of the signal hut: 39.87 m³, 12-9 of pipe, three elbows of nine', async () => {
    const { plan } = await buildDemo('F1');
    const { netVolume_m3, longestPath_m, elbowsLeft, nozzles, cylinders, stops } = ledger(plan);
    expect(netVolume_m3).toBeCloseTo(39.87, 2);
    expect(longestPath_m).toBeCloseTo(3.886, 3);
    expect({ elbowsLeft, nozzles, cylinders, stops }).toEqual({ elbowsLeft: 6, nozzles: 1, cylinders: 1, stops: 0 });
  });

  test('of the archive annex: 199.84 m³ with its under-floor void and without its beams', async () => {
    const { plan } = await buildDemo('F2');
    const { netVolume_m3, longestPath_m, pathLeft_m, nozzles, cylinders } = ledger(plan);
    expect(netVolume_m3).toBeCloseTo(199.84, 1);
    expect({ nozzles, cylinders }).toEqual({ nozzles: 8, cylinders: 5 });
    // N2 has 37.33 ft; the under-floor U2 has a little more.
    expect(longestPath_m).toBeGreaterThanOrEqual(feet_m(37.33));
    expect(pathLeft_m).toBeCloseTo(30 - (longestPath_m ?? 0), 9);
  });

  test('of the signal hut: 24.13 kg needed of 24.7 kg, 12.15 % oxygen when hottest, one full cylinder fits', async () => {
    const { agent, oxygenHot_pct, fill } = ledger((await buildDemo('F1')).plan);
    expect(agent?.needed_kg).toBeCloseTo(24.13, 2);
    expect(agent).toMatchObject({ installed_kg: 24.7, short: 0 });
    expect(oxygenHot_pct).toBeCloseTo(12.15, 2);
    expect(fill).toBe('fits');
  });

  test('tells agent only when every room is worked out, and how many rooms are short of it', async () => {
    const of = async (change: Partial<Enclosure>): Promise<Plan> => {
      const { plan } = await buildDemo('F1');
      for (const room of Object.values(plan.levels['level-0']?.enclosures ?? {})) Object.assign(room, change);
      return plan;
    };
    expect(ledger(await of({ concentration_pct: 60 }))).toMatchObject({ agent: { short: 1 }, fill: 'fits no volume' });
    expect(ledger(await of({ temperature: null }))).toMatchObject({ agent: undefined, oxygenHot_pct: undefined, fill: undefined });
  });

  test('of an empty plan knows nothing, and does not say nought', () => {
    expect(ledger(planBuilder().plan)).toMatchObject({ netVolume_m3: undefined, longestPath_m: undefined, pathLeft_m: undefined, elbowsLeft: undefined, nozzles: 0, agent: undefined, oxygenHot_pct: undefined, fill: undefined });
  });

  test('with one unknown height the volume of the whole is unknown', () => {
    expect(ledger(planBuilder().room(4, 4, 2.5).room(4, 4, null, { x: 10, y: 0 }).plan).netVolume_m3).toBeUndefined();
  });
});
