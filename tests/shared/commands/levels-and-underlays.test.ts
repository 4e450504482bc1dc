import { describe, expect, test } from 'vitest';
import { addKnownLength } from '#shared/commands/add-known-length';
import { addLevel } from '#shared/commands/add-level';
import { addUnderlay } from '#shared/commands/add-underlay';
import { calibrateUnderlay } from '#shared/commands/calibrate-underlay';
import { editLevel } from '#shared/commands/edit-level';
import { editUnderlay } from '#shared/commands/edit-underlay';
import { placeUnderlay } from '#shared/commands/place-underlay';
import { removeLevel } from '#shared/commands/remove-level';
import { refuseLocked, rescale, soundKnownLength } from '#shared/commands/underlay-scale';
import { type KnownLength, type Plan, type Underlay, newPlan } from '#shared/model/plan';
import { planBuilder } from '../../support/plan-builder.ts';
import { done, doneAll, levelIn, only, refusal } from '../../support/try-command.ts';

const laid = planBuilder().underlay();
const ref = laid.onLevel('underlay');
const underlayIn = (plan: Plan): Underlay => only(levelIn(plan).underlays);
const known = (bx: number, by: number, distance_m: number): KnownLength => ({ a: { x: 10, y: 0 }, b: { x: bx, y: by }, distance_m });
const placeOf = ({ at, rotation_rad, metresPerUnit }: Underlay, x: number, y: number) => {
  const scale = metresPerUnit ?? 1;
  return [at.x + scale * (x * Math.cos(rotation_rad) - y * Math.sin(rotation_rad)), at.y + scale * (x * Math.sin(rotation_rad) + y * Math.cos(rotation_rad))];
};

describe('levels', () => {
  test('are added, changed and taken away', () => {
    const { next } = done(newPlan(), addLevel('Level 2', 3.2));
    const id = Object.keys(next.levels)[1] ?? '';
    expect(next.levels[id]).toMatchObject({ name: 'Level 2', floorElevation_m: 3.2, enclosures: {} });
    expect(done(next, editLevel(id, { name: 'Roof', floorElevation_m: -1 })).next.levels[id]).toMatchObject({ name: 'Roof', floorElevation_m: -1 });
    expect(done(next, removeLevel(id)).next.levels).toEqual(newPlan().levels);
  });
  test('take their networks and what served them along', () => {
    const built = planBuilder().level('Upper', 3).room(6, 4, 2.7).network().nozzle(1, 1, 2);
    const upper = built.levelId;
    const served = { ...built.plan, networks: { ...built.plan.networks } };
    expect(done(served, removeLevel(upper)).next.networks).toEqual({});
    const lower = planBuilder().level('Upper', 3).room(6, 4, 2.7);
    const { enclosure, plan } = lower;
    plan.networks.n = { manifold: null, installation: { bonding: 'unknown', marking: '', finish: '' }, id: 'n', name: 'N', level: 'level-0', profile: 'sample-80', source: null, cylinders: {}, assembly: [], nodes: { k: { part: null, id: 'k', at: { x: 0, y: 0, z: 2 } } }, pipes: {}, nozzles: { z: { id: 'z', name: 'N1', node: 'k', holes_rad: [], rotation_rad: 0, tilt_rad: 0, orificeArea_m2: null, serves: { enclosure: enclosure.id, space: 'room' } } }, supports: {}, release: null };
    expect(done(plan, removeLevel(lower.levelId)).next.networks.n?.nozzles.z?.serves).toBeNull();
  });
  test('are refused without a name or a height, and the last one stays', () => {
    expect(refusal(newPlan(), addLevel('  ', 0))).toContain('needs a name');
    expect(refusal(newPlan(), addLevel('Level 2', Number.NaN))).toContain('too far off');
    expect(refusal(newPlan(), editLevel('level-0', { name: '' }))).toContain('needs a name');
    expect(refusal(newPlan(), editLevel('level-0', { floorElevation_m: 1e9 }))).toContain('Floor elevation');
    expect(refusal(newPlan(), editLevel('gone', { name: 'x' }))).toBe('This level is no longer in the plan.');
    expect(refusal(newPlan(), editLevel('toString', { name: 'x' }))).toBe('This level is no longer in the plan.');
    expect(refusal(newPlan(), removeLevel('level-0'))).toContain('at least one level');
  });
});

describe('addUnderlay', () => {
  const asset = { name: 'Ground floor.pdf', file: 'ground.pdf', sha256: 'b'.repeat(64) };
  const start = { kind: 'pdf', page: 2, metresPerUnit: null, calibration: 'none', name: 'Ground floor' } as const;
  test('lays the file under the level and names it', () => {
    const { next, created } = done(newPlan(), addUnderlay('level-0', asset, start));
    expect(created).toEqual([{ kind: 'underlay', level: 'level-0', id: underlayIn(next).id }]);
    expect(underlayIn(next)).toMatchObject({ ...start, at: { x: 0, y: 0 }, locked: false, visible: true });
    expect(only(next.assets)).toMatchObject(asset);
  });
  test('holds a file once, however often it is shown', () => {
    const next = doneAll(newPlan(), addUnderlay('level-0', asset, start), addUnderlay('level-0', asset, { ...start, page: 3 }));
    expect(Object.keys(levelIn(next).underlays)).toHaveLength(2);
    expect(Object.keys(next.assets)).toHaveLength(1);
  });
  test('has no calibration without a scale', () => {
    expect(underlayIn(done(newPlan(), addUnderlay('level-0', asset, { ...start, calibration: 'file-units' })).next).calibration).toBe('none');
  });
  test('is refused without scale, page or level', () => {
    expect(refusal(newPlan(), addUnderlay('level-0', asset, { ...start, metresPerUnit: 0 }))).toContain('scale');
    expect(refusal(newPlan(), addUnderlay('level-0', asset, { ...start, page: 0 }))).toContain('from 1');
    expect(refusal(newPlan(), addUnderlay('gone', asset, start))).toContain('no longer');
    expect(refusal(newPlan(), addUnderlay('level-0', { ...asset, file: '../x' }, start))).toContain('cannot be kept');
    expect(refusal(newPlan(), addUnderlay('level-0', { ...asset, sha256: 'x' }, start))).toContain('cannot be kept');
  });
});

describe('scale of a floor plan', () => {
  test('comes from two places, and the first of them stays where it was', () => {
    const turned = doneAll(laid.plan, placeUnderlay(ref, { at: { x: 2, y: 3 }, rotation_rad: 0.7 }));
    const { next } = done(turned, calibrateUnderlay(ref, known(10, 200, 5)));
    expect(underlayIn(next)).toMatchObject({ metresPerUnit: 0.025, calibration: 'two-points', knownLengths: [known(10, 200, 5)] });
    const [x = 0, y = 0] = placeOf(underlayIn(turned), 10, 0);
    const [toX, toY] = placeOf(underlayIn(next), 10, 0);
    expect(toX).toBeCloseTo(x, 9);
    expect(toY).toBeCloseTo(y, 9);
  });
  test('set anew, the first length is replaced and the checks stay', () => {
    const next = doneAll(laid.plan, calibrateUnderlay(ref, known(20, 0, 1)), addKnownLength(ref, known(30, 0, 2)), calibrateUnderlay(ref, known(40, 0, 6)));
    expect(underlayIn(next)).toMatchObject({ metresPerUnit: 0.2, knownLengths: [known(40, 0, 6), known(30, 0, 2)] });
  });
  test('is refused without two places, a distance, or a scale to check', () => {
    expect(refusal(laid.plan, calibrateUnderlay(ref, known(10, 0, 5)))).toContain('two places');
    expect(refusal(laid.plan, calibrateUnderlay(ref, known(20, 0, 0)))).toContain('more than 0');
    expect(refusal(laid.plan, calibrateUnderlay(ref, known(20, 0, Number.NaN)))).toContain('more than 0');
    expect(refusal(laid.plan, calibrateUnderlay(ref, known(10 + 1e-7, 0, 1e5)))).toContain('larger than any building');
    const without = done(laid.plan, editUnderlay(ref, { metresPerUnit: null, calibration: 'none' })).next;
    expect(refusal(without, addKnownLength(ref, known(20, 0, 5)))).toContain('Set its scale first');
    const full = doneAll(laid.plan, ...Array.from({ length: 20 }, (_, i) => addKnownLength(ref, known(20, 10 * i, 5))));
    expect(refusal(full, addKnownLength(ref, known(20, 200, 5)))).toContain('20');
  });
  test('is not proved by the two places that set it', () => {
    const scaled = done(laid.plan, calibrateUnderlay(ref, known(20, 0, 1))).next;
    expect(refusal(scaled, addKnownLength(ref, known(20, 0, 1)))).toContain('cannot prove itself');
    const checked = doneAll(laid.plan, addKnownLength(ref, known(20, 0, 2)), addKnownLength(ref, known(30, 0, 3)), calibrateUnderlay(ref, known(20, 0, 2)));
    expect(underlayIn(checked).knownLengths).toEqual([known(20, 0, 2), known(30, 0, 3)]);
  });
  test('the parts refuse on their own', () => {
    expect(() => refuseLocked({ ...underlayIn(laid.plan), locked: true })).toThrow('locked');
    expect(() => rescale(structuredClone(underlayIn(laid.plan)), -1, { x: 0, y: 0 })).toThrow('larger than any building');
    expect(soundKnownLength(known(20, 0, 5))).toEqual(known(20, 0, 5));
  });
});

describe('placeUnderlay and editUnderlay', () => {
  test('change place, turn and looks', () => {
    const next = doneAll(laid.plan, placeUnderlay(ref, { at: { x: 1, y: 2 } }), placeUnderlay(ref, { rotation_rad: -Math.PI / 2 }), editUnderlay(ref, { opacity: 0.3, hiddenLayers: ['A-DIM'], visible: false, name: 'Old floor' }));
    expect(underlayIn(next)).toMatchObject({ at: { x: 1, y: 2 }, opacity: 0.3, hiddenLayers: ['A-DIM'], visible: false, name: 'Old floor' });
    expect(underlayIn(next).rotation_rad).toBeCloseTo(1.5 * Math.PI, 12);
  });
  test('a scale of the file’s units keeps the origin', () => {
    expect(underlayIn(done(laid.plan, editUnderlay(ref, { metresPerUnit: 0.001, calibration: 'file-units' })).next)).toMatchObject({ metresPerUnit: 0.001, at: { x: 0, y: 0 } });
  });
  test('a locked floor plan stays where it is', () => {
    const { next } = done(laid.plan, editUnderlay(ref, { locked: true }));
    for (const attempt of [placeUnderlay(ref, { at: { x: 1, y: 1 } }), calibrateUnderlay(ref, known(20, 0, 1)), editUnderlay(ref, { metresPerUnit: 2 })]) expect(refusal(next, attempt)).toContain('locked');
    expect(underlayIn(done(next, editUnderlay(ref, { locked: false })).next).locked).toBe(false);
  });
  test('refuse what would not fit', () => {
    expect(refusal(laid.plan, editUnderlay(ref, { opacity: 2 }))).toContain('Opacity must be at most 1');
    expect(refusal(laid.plan, editUnderlay(ref, { name: '' }))).toContain('needs a name');
    expect(refusal(laid.plan, editUnderlay(ref, { metresPerUnit: null }))).toContain('where the scale comes from');
    const scaled = done(laid.plan, calibrateUnderlay(ref, known(20, 0, 1))).next;
    expect(refusal(scaled, editUnderlay(ref, { knownLengths: [] }))).toContain('sets the scale');
    expect(refusal(laid.plan, placeUnderlay(ref, { at: { x: Number.NaN, y: 0 } }))).toContain('too far off');
    expect(refusal(laid.plan, placeUnderlay(ref, { rotation_rad: Number.POSITIVE_INFINITY }))).toContain('degrees');
    expect(refusal(laid.plan, placeUnderlay({ ...ref, id: 'gone' }, {}))).toContain('floor plan is no longer');
  });
});
