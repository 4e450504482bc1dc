import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { JsonObject } from '#shared/model/guarded-json';
import { MIGRATIONS, type Migration, migrate } from '#shared/model/migrate/index';
import { usualBasis } from '#shared/model/basis-of-design';
import { parsePlan } from '#shared/model/parse-plan';
import { unknownRoom, usualSheets } from '#shared/model/plan';
import { PLAN_VERSION } from '#shared/model/schema';

/** A made-up version 0, in which grids were given in millimetres and levels had no notes. */
const versionZero = readFileSync(join(import.meta.dirname, '../../fixtures/plan-version-0.json'), 'utf8');
const versionOne = readFileSync(join(import.meta.dirname, '../../fixtures/plan-version-1.json'), 'utf8');
const versionTwo = readFileSync(join(import.meta.dirname, '../../fixtures/plan-version-2.json'), 'utf8');
const versionFour = readFileSync(join(import.meta.dirname, '../../fixtures/plan-version-4.json'), 'utf8');
const versionThree = readFileSync(join(import.meta.dirname, '../../fixtures/plan-version-3.json'), 'utf8');
const fromZero: Migration = {
  from: 0,
  remark: 'The grid was given in metres.',
  step(plan) {
    const settings = plan.settings as JsonObject;
    const levels = Object.entries(plan.levels as JsonObject).map(([id, level]) => [id, { ...(level as JsonObject), notes: {} }]);
    return { ...plan, settings: { lengths: settings.lengths ?? null, grid_m: Number(settings.grid_mm) / 1000 }, levels: Object.fromEntries(levels) };
  },
};

describe('migration', () => {
  test('brings an old plan to the present version and says so', () => {
    const parsed = parsePlan(versionZero, [fromZero, ...MIGRATIONS]);
    expect(parsed).toMatchObject({ ok: true, remarks: ['The grid was given in metres.', ...MIGRATIONS.map(({ remark }) => remark)], plan: { version: PLAN_VERSION, settings: { grid_m: 0.05 } } });
  });

  test('what a step makes is validated like anything else', () => {
    const parsed = parsePlan(versionZero, [{ ...fromZero, step: (plan) => plan }, ...MIGRATIONS]);
    expect(parsed).toMatchObject({ ok: false, problem: { code: 'damaged' } });
  });

  test('runs every step in turn, and leaves what it was given as it was', () => {
    const plan: JsonObject = JSON.parse(versionZero);
    const before = JSON.stringify(plan);
    const migrated = migrate(plan, [fromZero, ...MIGRATIONS]);
    expect(migrated).toMatchObject({ ok: true, plan: { version: PLAN_VERSION } });
    expect(JSON.stringify(plan)).toBe(before);
  });

  test('a plan of version 1 gets the usual basis of design, and nothing is guessed of its people, leaks and wiring', () => {
    const parsed = parsePlan(versionOne);
    if (!parsed.ok) throw new Error(parsed.problem.what);
    const { plan, remarks } = parsed;
    expect(remarks).toEqual(MIGRATIONS.map(({ remark }) => remark));
    expect(plan.basis).toEqual(usualBasis());
    const [room] = Object.values(plan.levels).flatMap(({ enclosures }) => Object.values(enclosures));
    expect(room).toMatchObject(unknownRoom());
    expect(room?.outline.every(({ wall }) => wall.capacity_N === null)).toBe(true);
    const [network] = Object.values(plan.networks);
    expect(network).toMatchObject({ supports: {}, release: null });
    expect(Object.values(network?.cylinders ?? {}).map(({ anchors }) => anchors)).toEqual([null]);
  });

  test('a plan of version 2 gets hoses, gauges and built-in parts that are all open', () => {
    const parsed = parsePlan(versionTwo);
    if (!parsed.ok) throw new Error(parsed.problem.what);
    const { plan, remarks } = parsed;
    expect(remarks).toEqual(MIGRATIONS.slice(1).map(({ remark }) => remark));
    expect(plan.basis.seismic).toBe('unknown');
    const [network] = Object.values(plan.networks);
    expect(network).toMatchObject({ manifold: null, installation: { bonding: 'unknown', marking: '', finish: '' } });
    for (const cylinder of Object.values(network?.cylinders ?? {})) expect(cylinder).toMatchObject({ restraints_m: [], outlet_rad: null, hoseEnd: null, gauge: null, storage: null, exposedTo: null });
    expect(Object.values(network?.nodes ?? {}).every(({ part }) => part === null)).toBe(true);
    expect(Object.values(network?.pipes ?? {}).every(({ insulation_m, measured_m }) => insulation_m === 0 && measured_m === null)).toBe(true);
    expect(Object.values(plan.profiles)[0]).toMatchObject({ madeFittings: [], assemblyOrder: null, teeAttitudes: null });
  });

  test('a plan of version 3 gets surroundings that are all open', () => {
    const parsed = parsePlan(versionThree);
    if (!parsed.ok) throw new Error(parsed.problem.what);
    const { plan, remarks } = parsed;
    expect(remarks).toEqual(MIGRATIONS.slice(2).map(({ remark }) => remark));
    expect(plan).toMatchObject({ waivers: {}, lastIssue: null, info: { state: 'design' }, settings: { sheets: { paper: null, scale: null } } });
    const { lockOutValve, batteryStandby_s, extract, smallestScale } = usualBasis();
    expect(plan.basis).toMatchObject({ lockOutValve, batteryStandby_s, extract, smallestScale });
    for (const level of Object.values(plan.levels)) {
      expect(level).toMatchObject({ devices: {}, adjoining: {} });
      for (const room of Object.values(level.enclosures)) {
        expect(room).toMatchObject({ ceiling: { make: 'unknown', clipped_m: null }, shutdowns: {}, dischargedWith: '' });
        expect(room.outline.every(({ wall }) => wall.reaches === 'unknown')).toBe(true);
        for (const opening of Object.values(room.openings)) expect(opening).toMatchObject({ undercut_m: null, ventPath: [] });
      }
    }
    for (const { release } of Object.values(plan.networks)) expect(release).toMatchObject({ endOfLine: 'unknown', battery: null, panel: { isListed: null } });
  });

  test('a plan of version 4 has issued nothing, and keeps what was measured and noted on site', () => {
    const old = JSON.parse(versionFour);
    old.siteRecord.measurements = { 'net-1/nozzle-1/first': { value_m: 2.5, by: 'R. Fenn', at: '2026-03-04', instrument: 'tape' } };
    old.siteRecord.readings = [{ what: 'Battery', value: 26.4, unit: 'V', by: 'R. Fenn', at: '2026-03-04' }];
    const parsed = parsePlan(JSON.stringify(old));
    if (!parsed.ok) throw new Error(parsed.problem.what);
    const { plan, remarks } = parsed;
    expect(remarks).toEqual([MIGRATIONS[3]?.remark]);
    expect(plan).toMatchObject({ issuedSets: [], settings: { sheets: usualSheets() } });
    expect(plan.siteRecord.measurements).toEqual({ 'net-1/nozzle-1/first': { value_m: 2.5, by: 'R. Fenn', at: '2026-03-04', instrument: 'tape', reason: '', approvedBy: '', photos: [] } });
    expect(plan.siteRecord.log).toMatchObject([{ by: 'R. Fenn', note: 'Battery: 26.4 V', value: null, isGood: null }]);
    expect(plan.siteRecord.service.visits).toEqual([]);
  });

  test('there is one step for every version that was ever written', () => {
    expect(MIGRATIONS.map(({ from }) => from)).toEqual(Array.from({ length: PLAN_VERSION - 1 }, (_, i) => i + 1));
  });
});
