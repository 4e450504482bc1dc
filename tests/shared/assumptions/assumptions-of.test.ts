import { describe, expect, test } from 'vitest';
import type { Assumption } from '#shared/assumptions/assumption';
import { assumptionsOf } from '#shared/assumptions/assumptions-of';
import { ASSUMED_CHOICES, NEVER_ASSUMED } from '#shared/assumptions/basis-assumptions';
import { designOf } from '#shared/calculations/design/design-of';
import { derivePlan } from '#shared/derived/derive-plan';
import { usualBasis } from '#shared/model/basis-of-design';
import { type Plan, newPlan } from '#shared/model/plan';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { type LayoutSpec, at3, layout } from '../../support/layout.ts';

const assumed = (plan: Plan): Assumption[] => {
  const derived = derivePlan(plan);
  return assumptionsOf({ derived, design: designOf(derived, () => undefined) });
};
const ids = (plan: Plan): string[] => assumed(plan).map(({ id }) => id);
const SPEC: LayoutSpec = { runs: [{ places: [at3(0.3, 2, 2), at3(0.3, 2, 2.5), at3(3, 2, 2.5), at3(3, 2, 2.3)] }], nozzles: [{ at: at3(3, 2, 2.3) }] };

describe('assumptions', () => {
  test('of an empty plan are the usual choices alone', () => {
    expect(assumed(newPlan()).every(({ topic }) => topic === 'choice')).toBe(true);
  });
  test('every choice of the basis of design is watched, or is blank until somebody knows', () => {
    expect([...ASSUMED_CHOICES, ...NEVER_ASSUMED].toSorted()).toEqual(Object.keys(usualBasis()).toSorted());
  });
  test('a choice that was changed is no longer taken for granted', () => {
    const before = assumed(layout(SPEC)).find(({ id }) => id === 'basis/hold');
    const after = assumed(layout({ ...SPEC, basis: { leakExponent: 0.65 } })).find(({ id }) => id === 'basis/hold');
    expect(before?.taken).toContain('leak exponent of 0.6');
    expect(after?.taken).not.toContain('leak exponent');
  });
  test('each has its own id, whole sentences, and says what it affects and where it is changed', () => {
    const all = assumed(layout({ ...SPEC, height_m: null, obstructions: [{ kind: 'rack', footprint: [{ x: 4, y: 1 }, { x: 5, y: 1 }, { x: 5, y: 3 }] as never, bottom_m: 0, top_m: 2 }] }));
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
    for (const { taken, affects, change, name } of all) {
      expect(name).not.toBe('');
      for (const sentence of [taken, affects, change]) expect(sentence).toMatch(/^[A-Z0-9].*\.$/s);
    }
  });
  test.each<[string, LayoutSpec]>([
    [`sample/${SAMPLE_PROFILE.id}`, {}],
    ['assembly/net', {}],
    ['storage/net', {}],
    ['ceiling/e1', { height_m: null }],
    ['leak-area/e1', { enclosure: { leakage: { kind: 'area', area_m2: 0.01, pressure_Pa: 10 } } }],
    ['walls/level-0', {}],
    ['make/net', {}],
    ['as-drawn/net', {}],
    ['serves/net', {}],
    ['sums/concentrations', {}],
    ['sums/jets', {}],
    ['held-start/net', { network: { supports: { s1: { id: 's1', at: at3(1, 2, 2.5), kind: 'rigid', capacity_N: null, brace: 'none' } } } }],
    ['set-pressure/net', { network: { assembly: [{ id: 'r', kind: 'regulator', name: 'Regulator', length_m: 0.15, setPressure_Pa: null, arrowDownstream: true }] } }],
    ['hose-length/net', { network: { assembly: [{ id: 'h', kind: 'hose', name: 'Hose', length_m: 0, setPressure_Pa: null, arrowDownstream: true }] } }],
  ])('%s is listed', (id, spec) => {
    expect(ids(layout({ ...SPEC, ...spec }))).toContain(id);
  });
  test.each<[string, LayoutSpec]>([
    ['ceiling/e1', {}],
    ['leak-area/e1', {}],
    ['held-start/net', {}],
    ['assembly/net', { network: { assembly: [{ id: 'r', kind: 'regulator', name: 'Regulator', length_m: 0.15, setPressure_Pa: 6e6, arrowDownstream: true }] } }],
    ['sums/concentrations', { basis: { designSet: 'en-15004-2008' } }],
  ])('%s is not, where somebody has said it', (id, spec) => {
    expect(ids(layout({ ...SPEC, ...spec }))).not.toContain(id);
  });
  test('a floor plan is taken at its scale until a second length proves it', () => {
    const plan = newPlan();
    const level = plan.levels['level-0'];
    if (!level) throw new Error('A new plan has its level.');
    const known = { a: { x: 0, y: 0 }, b: { x: 1, y: 0 }, distance_m: 1 };
    const underlay = { id: 'u1', name: 'Floor plan', asset: 'a1', kind: 'dxf' as const, page: 1, at: { x: 0, y: 0 }, rotation_rad: 0, metresPerUnit: 1, opacity: 1, hiddenLayers: [], visible: true, locked: true };
    const taken = (calibration: 'none' | 'file-units' | 'two-points', knownLengths: (typeof known)[]): string | undefined => {
      level.underlays = { u1: { ...underlay, calibration, knownLengths } };
      return assumed(plan).find(({ topic }) => topic === 'survey')?.taken;
    };
    expect(taken('none', [])).toContain('not set');
    expect(taken('file-units', [])).toContain('what the file says');
    expect(taken('two-points', [known])).toContain('one known length');
    expect(taken('two-points', [known, known])).toBeUndefined();
    expect(taken('file-units', [known])).toBeUndefined();
  });
});
