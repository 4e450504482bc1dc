import { describe, expect, test } from 'vitest';
import { d05ProfileComplete } from '#shared/rules/document/d05-profile-complete';
import { n01WallClearance } from '#shared/rules/nozzle/n01-wall-clearance';
import { check, checkOne, layout } from '../../../support/layout.ts';

const rule = d05ProfileComplete([n01WallClearance]);
const real = (plan: ReturnType<typeof layout>) => {
  for (const profile of Object.values(plan.profiles)) profile.isSample = false;
  return plan;
};

describe('D5', () => {
  test('a complete profile is kept', () => {
    expect(checkOne(rule, real(layout({})))).toMatchObject({ verdict: 'ok', measured: 0 });
  });
  test('a sample is a warning', () => {
    expect(checkOne(rule, layout({})).verdict).toBe('warn');
  });
  test('a blank figure that a check needs is a stop, and is named', () => {
    const finding = checkOne(rule, real(layout({ limits: { nozzleToWall_m: null } })));
    expect(finding).toMatchObject({ verdict: 'stop', measured: 1 });
    expect(finding.text).toContain('Least distance to a wall');
  });
  test('a blank figure that no check needs is no fault', () => {
    expect(checkOne(rule, real(layout({ limits: { solenoidVoltage_V: null } }))).verdict).toBe('ok');
  });
  test('a blank coverage is a stop', () => {
    expect(checkOne(rule, real(layout({ footprint: null }))).verdict).toBe('stop');
  });
  test('a lost profile is not checked; without a network there is nothing to ask', () => {
    const plan = layout({});
    plan.profiles = {};
    expect(checkOne(rule, plan).verdict).toBe('not-checked');
    plan.networks = {};
    expect(check(rule, plan)).toEqual([]);
  });
});
