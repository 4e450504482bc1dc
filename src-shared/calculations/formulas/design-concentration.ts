import { DESIGN_SETS } from '../../model/basis-of-design.ts';
import type { Basis } from '../topic.ts';
import type { InertAgent } from './specific-volume.ts';

/** Surface fires of solids, higher hazard solids, liquids, energized electrical equipment. */
export const HAZARD_CLASSES = ['A-surface', 'A-higher', 'B', 'C'] as const;
export type HazardClass = (typeof HAZARD_CLASSES)[number];

/** Whose rules: ISO 14520 from 2015 with EN 15004 from 2019, EN 15004:2008 with ISO 14520 of that time, NFPA 2001 of 2012 to 2018, NFPA 2001 up to 2008. */
export { DESIGN_SETS };
export type DesignSet = (typeof DESIGN_SETS)[number];

/** Minimum design concentration [vol %]; a class that is missing has no figure in the set. */
type Figures = Readonly<Partial<Record<HazardClass, number>>>;

/** 1.3 times the highest of the tests, higher hazard 95 % of class B. Energized equipment has no class of its own. */
const EN_15004: Readonly<Record<InertAgent, Figures>> = {
  'IG-100': { 'A-surface': 40.3, 'A-higher': 45.2, B: 47.6 },
  'IG-01': { 'A-surface': 41.9, 'A-higher': 49.2, B: 51.7 },
  'IG-55': { 'A-surface': 40.3, 'A-higher': 45.2, B: 47.6 },
  'IG-541': { 'A-surface': 39.9, 'A-higher': 45.7, B: 48.1 },
};

const FIGURES: Readonly<Record<DesignSet, Readonly<Record<InertAgent, Figures>>>> = {
  'iso-14520-2015': EN_15004,
  'en-15004-2008': EN_15004,
  // Class B 1.3 times heptane, class A 1.2 times and class C 1.35 times the extinguishing concentration of class A.
  'nfpa-2001-2012': {
    'IG-100': { 'A-surface': 37.2, B: 40.3, C: 41.9 },
    'IG-01': { B: 54.6 },
    'IG-55': { 'A-surface': 37.9, B: 45.5, C: 42.7 },
    'IG-541': { 'A-surface': 34.2, B: 40.3, C: 38.5 },
  },
  // Class C as class A.
  'nfpa-2001-2008': {
    'IG-100': { 'A-surface': 37.2, B: 40.3, C: 37.2 },
    'IG-01': { B: 54.6 },
    'IG-55': { 'A-surface': 37.9, B: 45.5, C: 37.9 },
    'IG-541': { 'A-surface': 34.2, B: 40.3, C: 34.2 },
  },
};

/** How the minimum design concentration follows from the tests. */
export const designConcentrationBases: Readonly<Record<DesignSet, Basis>> = {
  'iso-14520-2015': {
    formula: '1.3 × extinguishing concentration, every class; higher hazard A 95 % of class B',
    source: 'ISO 14520 parts from 2015 and EN 15004 parts from 2019: figures of EN 15004-7, -8 and -10:2008 Table 4 taken as unchanged, memory; IG-55 memory',
    caution: 'Compare with the adopted edition. No figure for energized electrical equipment as a class: it is then not checked.',
  },
  'en-15004-2008': {
    formula: '1.3 × extinguishing concentration, every class; higher hazard A 95 % of class B',
    source: 'EN 15004-7, -8 and -10:2008 Table 4; IG-55 of EN 15004-9:2008 is memory',
    caution: 'No figure for energized electrical equipment as a class: it is then not checked.',
  },
  'nfpa-2001-2012': {
    formula: 'class A 1.2 × extinguishing, not below that of heptane; class B 1.3 × cup burner; class C 1.35 × class A extinguishing; class A released by hand only 1.3 ×',
    source: 'NFPA 2001:2012 to 2018 Tables A.5.4.2.2(a) and (b), memory; IG-100 class A and C with low confidence (31.0 % extinguishing)',
    caution: 'Above 480 V class C needs a risk analysis or a test. No figure for higher hazard class A: it is then not checked. Compare with the listing of the unit.',
  },
  'nfpa-2001-2008': {
    formula: 'class A 1.2 × extinguishing; class B 1.3 × cup burner; class C as class A',
    source: 'NFPA 2001 up to 2008, memory, with the extinguishing concentrations of the later editions',
    caution: 'No figure for higher hazard class A: it is then not checked. Compare with the listing of the unit.',
  },
};

/**
 * Least concentration that a set of rules asks for.
 *
 * @param agent   which agent [-]
 * @param hazard  class of the fire [-]
 * @param set     whose rules [-]
 * @returns concentration; undefined where the set has no figure [vol %]
 * @example minimumDesign_pct('IG-100', 'A-surface', 'en-15004-2008') // 40.3
 */
export function minimumDesign_pct(agent: InertAgent, hazard: HazardClass, set: DesignSet): number | undefined {
  return FIGURES[set][agent][hazard];
}

/**
 * Where that figure comes from, and whether it was read or is memory.
 *
 * @param agent  which agent [-]
 * @param set    whose rules [-]
 * @returns source [-]
 * @example designSourceOf('IG-100', 'en-15004-2008') // 'EN 15004-8:2008 Table 4'
 */
export function designSourceOf(agent: InertAgent, set: DesignSet): string {
  if (set === 'iso-14520-2015') return `${designSourceOf(agent, 'en-15004-2008')}, taken as unchanged in ISO 14520 from 2015, memory`;
  if (set === 'en-15004-2008') return { 'IG-100': 'EN 15004-8:2008 Table 4', 'IG-01': 'EN 15004-7:2008 Table 4', 'IG-55': 'EN 15004-9:2008, memory', 'IG-541': 'EN 15004-10:2008 Table 4' }[agent];
  const edition = set === 'nfpa-2001-2012' ? 'NFPA 2001:2012 to 2018' : 'NFPA 2001 up to 2008';
  return `${edition}, memory${agent === 'IG-100' ? ', low confidence in class A and C' : ''}`;
}

export const dischargeLimitBasis: Basis = {
  formula: '95 % of the minimum design concentration within 60 s; from 2012 class A surface fires and class C within 120 s',
  source: 'ISO 14520-1:2006 and NFPA 2001 up to 2008: 60 s; ISO 14520-1 from 2015, EN 15004-1:2019 and NFPA 2001 from 2012: 60 s, and 120 s for surface fires of class A (NFPA also class C); memory',
  caution: 'Time from the first gas at a nozzle. 30 s where a rule of OSHA, 29 CFR 1910.162, requires the system.',
};
/**
 * Longest time to 95 % of the minimum design concentration.
 *
 * @param hazard  class of the fire [-]
 * @param set     whose rules [-]
 * @returns time; undefined where the set has no figure [s]
 * @example dischargeLimit_s('A-surface', 'nfpa-2001-2012') // 120
 */
export function dischargeLimit_s(hazard: HazardClass, set: DesignSet): number | undefined {
  if (set === 'iso-14520-2015') return hazard === 'A-surface' ? 120 : 60;
  if (set !== 'nfpa-2001-2012' || hazard === 'B') return 60;
  return hazard === 'A-higher' ? undefined : 120;
}
