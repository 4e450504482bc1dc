import { describe, expect, test } from 'vitest';
import { DESIGN_SETS, HAZARD_CLASSES, type HazardClass, designConcentrationBases, designSourceOf, dischargeLimit_s, minimumDesign_pct } from '#shared/calculations/formulas/design-concentration';
import { ALTITUDE_METHODS } from '#shared/calculations/formulas/altitude';
import { EXPOSURE_BANDS } from '#shared/calculations/formulas/exposure';
import { INERT_AGENTS, type InertAgent } from '#shared/calculations/formulas/specific-volume';
import * as basis from '#shared/model/basis-of-design';

describe('minimum design concentration', () => {
  test.each([
    ['EN 15004-8:2008 Table 4', 'IG-100', 40.3, 45.2, 47.6],
    ['EN 15004-7:2008 Table 4', 'IG-01', 41.9, 49.2, 51.7],
    ['EN 15004-9:2008, memory', 'IG-55', 40.3, 45.2, 47.6],
    ['EN 15004-10:2008 Table 4', 'IG-541', 39.9, 45.7, 48.1],
  ] as const)('%s: %s', (source, agent, surface, higher, liquid) => {
    expect(HAZARD_CLASSES.map((hazard) => minimumDesign_pct(agent, hazard, 'en-15004-2008'))).toEqual([surface, higher, liquid, undefined]);
    expect(designSourceOf(agent, 'en-15004-2008')).toBe(source);
  });

  // Room test with heptane and the highest of wood crib, PMMA, PP and ABS, of the same tables.
  test.each([
    ['IG-100', 'B', 36.6],
    ['IG-100', 'A-surface', 31],
    ['IG-01', 'B', 39.8],
    ['IG-01', 'A-surface', 32.2],
    ['IG-55', 'B', 36.6],
    ['IG-55', 'A-surface', 31],
    ['IG-541', 'B', 37],
    ['IG-541', 'A-surface', 30.7],
  ] as const)('EN 15004: %s class %s is 1.3 × %d %%', (agent, hazard, extinguishing_pct) => {
    expect(Math.abs((minimumDesign_pct(agent, hazard, 'en-15004-2008') ?? 0) - 1.3 * extinguishing_pct)).toBeLessThan(0.06);
  });

  test('ISO 14520 from 2015, memory: the concentrations of EN 15004:2008, but 120 s for surface fires', () => {
    for (const agent of INERT_AGENTS) {
      for (const hazard of HAZARD_CLASSES) expect(minimumDesign_pct(agent, hazard, 'iso-14520-2015')).toBe(minimumDesign_pct(agent, hazard, 'en-15004-2008'));
      expect(designSourceOf(agent, 'iso-14520-2015')).toContain('memory');
    }
    expect(HAZARD_CLASSES.map((hazard) => dischargeLimit_s(hazard, 'iso-14520-2015'))).toEqual([120, 60, 60, 60]);
  });

  test.each(INERT_AGENTS)('EN 15004: %s in higher hazard A is 95 %% of class B', (agent) => {
    const liquid_pct = minimumDesign_pct(agent, 'B', 'en-15004-2008') ?? 0;
    expect(Math.abs((minimumDesign_pct(agent, 'A-higher', 'en-15004-2008') ?? 0) - 0.95 * liquid_pct)).toBeLessThan(0.1);
  });

  const heptane: [InertAgent, number, number][] = [
    ['IG-100', 31, 40.3],
    ['IG-541', 31, 40.3],
    ['IG-55', 35, 45.5],
    ['IG-01', 42, 54.6],
  ];
  test.each(heptane)('NFPA 2001 Table A.5.4.2.2(a), memory: %s class B is 1.3 × %d = %d %%', (agent, cupBurner_pct, design_pct) => {
    expect(minimumDesign_pct(agent, 'B', 'nfpa-2001-2012')).toBe(design_pct);
    expect(minimumDesign_pct(agent, 'B', 'nfpa-2001-2008')).toBe(design_pct);
    expect(1.3 * cupBurner_pct).toBeCloseTo(design_pct, 9);
  });

  test.each([
    ['IG-100', 31, 37.2, 41.9],
    ['IG-541', 28.5, 34.2, 38.5],
    ['IG-55', 31.6, 37.9, 42.7],
  ] as const)('NFPA 2001:2012 to 2018 Table A.5.4.2.2(b), memory: %s puts class A out at %d %%', (agent, extinguishing_pct, surface, energized) => {
    expect(minimumDesign_pct(agent, 'A-surface', 'nfpa-2001-2012')).toBe(surface);
    expect(minimumDesign_pct(agent, 'C', 'nfpa-2001-2012')).toBe(energized);
    expect(Math.abs(1.2 * extinguishing_pct - surface)).toBeLessThan(0.06);
    expect(Math.abs(1.35 * extinguishing_pct - energized)).toBeLessThan(0.06);
    expect(minimumDesign_pct(agent, 'A-surface', 'nfpa-2001-2008')).toBe(surface);
    expect(minimumDesign_pct(agent, 'C', 'nfpa-2001-2008')).toBe(surface);
  });

  test('NFPA 2001 from 2012, memory: class A is not below what puts heptane out', () => {
    for (const [agent, cupBurner_pct] of heptane) expect(minimumDesign_pct(agent, 'A-surface', 'nfpa-2001-2012') ?? cupBurner_pct).toBeGreaterThanOrEqual(cupBurner_pct);
  });

  test.each([
    ['IG-100', 'A-higher', 'nfpa-2001-2012'],
    ['IG-100', 'A-higher', 'nfpa-2001-2008'],
    ['IG-01', 'A-surface', 'nfpa-2001-2012'],
    ['IG-01', 'C', 'nfpa-2001-2008'],
    ['IG-541', 'C', 'en-15004-2008'],
  ] as const)('no figure is made up for %s, %s, %s', (agent, hazard, set) => expect(minimumDesign_pct(agent, hazard, set)).toBeUndefined());

  test('what was not read says so', () => {
    for (const agent of INERT_AGENTS) {
      expect(designSourceOf(agent, 'nfpa-2001-2012')).toContain('memory');
      expect(designSourceOf(agent, 'nfpa-2001-2008')).toContain('memory');
    }
    expect(designSourceOf('IG-100', 'nfpa-2001-2012')).toContain('low confidence');
    for (const set of DESIGN_SETS) expect(designConcentrationBases[set].source).toContain('memory');
  });
});

test('a plan chooses among what the formulas know', () => {
  expect(basis.DESIGN_SETS).toEqual(DESIGN_SETS);
  expect(basis.ALTITUDE_METHODS).toEqual(ALTITUDE_METHODS);
  expect(basis.EXPOSURES).toEqual(EXPOSURE_BANDS);
});

describe('discharge limit', () => {
  const limits: [string, (typeof DESIGN_SETS)[number], Partial<Record<HazardClass, number>>][] = [
    ['NFPA 2001:2012, memory', 'nfpa-2001-2012', { 'A-surface': 120, B: 60, C: 120 }],
    ['NFPA 2001 up to 2008', 'nfpa-2001-2008', { 'A-surface': 60, 'A-higher': 60, B: 60, C: 60 }],
    ['ISO 14520-1:2006', 'en-15004-2008', { 'A-surface': 60, 'A-higher': 60, B: 60, C: 60 }],
  ];
  test.each(limits)('%s', (_, set, byClass) => {
    for (const hazard of HAZARD_CLASSES) expect(dischargeLimit_s(hazard, set)).toBe(byClass[hazard]);
  });
});
