import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import { evaluate } from '#shared/evaluate';
import { ALTITUDE_METHODS, DESIGN_SETS, LOSS_SETS, PIPE_SPECIFICATIONS, STRESS_SETS, SUPPORT_TABLES } from '#shared/model/basis-of-design';
import type { Plan } from '#shared/model/plan';
import { LIMIT_KEYS } from '#shared/profile/limit-catalogue';
import { sheetLayout } from '#shared/sheets/frame';
import { calculationBlocks } from '#shared/sheets/calculation-tables';
import { flowTables } from '#shared/sheets/flow';
import { PAPERS } from '#shared/paper/papers';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { missedResult } from '../../../support/written-sum.ts';

let hut: Plan;
beforeAll(async () => {
  hut = (await buildDemo('F1')).plan;
});

const rooms = (plan: Plan) => Object.values(plan.levels).flatMap((level) => Object.values(level.enclosures));
const networks = (plan: Plan) => Object.values(plan.networks);
type Change = (plan: Plan) => void;

/** Ways in which a plan may be half known or unusual. */
const changes: readonly fc.Arbitrary<Change>[] = [
  fc.constantFrom<Change>(
    (plan) => { for (const room of rooms(plan)) room.height_m = null; },
    (plan) => { for (const room of rooms(plan)) room.temperature = null; },
    (plan) => { for (const room of rooms(plan)) room.concentration_pct = null; },
    (plan) => { for (const room of rooms(plan)) room.hazardClass = 'unknown'; },
    (plan) => { for (const room of rooms(plan)) room.leakage = { kind: 'unknown' }; },
    (plan) => { for (const room of rooms(plan)) room.leakage = { kind: 'door-fan', readings: [10, 20, 30, 40, 50].flatMap((pressure_Pa) => (['in', 'out'] as const).map((direction) => ({ direction, pressure_Pa, flow_m3_s: 0.004 * pressure_Pa ** 0.62 }))) }; },
    (plan) => { for (const room of rooms(plan)) room.lowestProtected_m = null; },
    (plan) => { for (const room of rooms(plan)) room.people = { exposure: 'none', egress_s: null, delay_s: null }; },
    (plan) => { for (const room of rooms(plan)) for (const opening of Object.values(room.openings)) opening.freeArea_m2 = null; },
    (plan) => { for (const network of networks(plan)) network.release = null; },
    (plan) => { for (const network of networks(plan)) network.assembly = []; },
    (plan) => { for (const network of networks(plan)) for (const nozzle of Object.values(network.nozzles)) nozzle.orificeArea_m2 = null; },
    (plan) => { for (const network of networks(plan)) for (const cylinder of Object.values(network.cylinders)) cylinder.anchors = null; },
    (plan) => { for (const network of networks(plan)) network.supports = {}; },
    (plan) => { for (const network of networks(plan)) network.cylinders = {}; },
    (plan) => { for (const network of networks(plan)) network.nozzles = {}; },
    (plan) => { plan.profiles = {}; },
  ),
  fc.constantFrom(...LIMIT_KEYS).map((key): Change => (plan) => { for (const profile of Object.values(plan.profiles)) delete profile.limits[key]; }),
  fc.double({ min: -1000, max: 6000, noNaN: true }).map((altitude_m): Change => (plan) => { for (const room of rooms(plan)) room.altitude_m = altitude_m; }),
  fc.double({ min: 0.1, max: 99, noNaN: true }).map((concentration_pct): Change => (plan) => { for (const room of rooms(plan)) room.concentration_pct = concentration_pct; }),
  fc.tuple(fc.constantFrom(...DESIGN_SETS), fc.constantFrom(...ALTITUDE_METHODS), fc.constantFrom(...LOSS_SETS), fc.constantFrom(...STRESS_SETS), fc.constantFrom(...PIPE_SPECIFICATIONS), fc.constantFrom(...SUPPORT_TABLES), fc.constantFrom('sharp' as const, 'wide' as const, 'mixing' as const), fc.boolean()).map(
    ([designSet, altitudeMethod, lossSet, stressSet, pipeSpecification, supportTable, holdModel, isCounted]): Change => (plan) => {
      Object.assign(plan.basis, { designSet, altitudeMethod, lossSet, stressSet, pipeSpecification, supportTable, holdModel, ventCountsLeakage: isCounted, ventFlow: isCounted ? 'calculated' : 'manual' });
    },
  ),
];

test('however little is known, every calculation says figures or why there are none, and goes on paper', () => {
  const discharges = workedDischarge();
  fc.assert(
    fc.property(fc.array(fc.oneof(...changes), { minLength: 1, maxLength: 4 }), fc.constantFrom('feet' as const, 'metric' as const), (list, lengths) => {
      const plan = structuredClone(hut);
      plan.settings.lengths = lengths;
      for (const change of list) change(plan);
      const evaluation = evaluate(plan, discharges);
      for (const { title, lines, missing } of calculationsOf(evaluation)) {
        expect(lines.length + missing.length, title).toBeGreaterThan(0);
        for (const line of lines) {
          expect(`${line.label} ${line.numbers} ${line.result}`, title).not.toMatch(/NaN|undefined|Infinity|null|\bnot known\b.*\d/);
          expect(missedResult(line), title).toBeUndefined();
        }
        for (const sentence of missing) expect(sentence).toMatch(/^Not worked out \(.+\): .+[.!?]$/);
      }
      const layout = sheetLayout(PAPERS.A3);
      const pages = flowTables(calculationBlocks(evaluation, layout), layout.area, layout.tableColumns, layout.sizes);
      expect(JSON.stringify(pages)).not.toMatch(/null|NaN/);
    }),
    { numRuns: 60 },
  );
});
