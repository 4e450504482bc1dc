import { describe, expect, test } from 'vitest';
import { addSupport } from '#shared/commands/add-support';
import { derivePlan } from '#shared/derived/derive-plan';
import { type Plan, type Ref, type RefOf, refKey } from '#shared/model/plan';
import { changedThings } from '../../../src-renderer/canvas/changed-things.ts';
import { cutSection } from '../../../src-renderer/canvas/section-cut.ts';
import { heightCommand, heightHandleOf } from '../../../src-renderer/canvas/section-heights.ts';
import { findSectionPath } from '../../../src-renderer/canvas/section-path.ts';
import { heightHandleAt, sectionThingAt } from '../../../src-renderer/canvas/section-pick.ts';
import { fittedSection, sectionPx } from '../../../src-renderer/canvas/section-view.ts';
import { thingShape } from '../../../src-renderer/canvas/thing-shape.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const bare = planBuilder()
  .room(6, 4, 2.7)
  .network()
  .run([place3(1, 2, 2.4), place3(4, 2, 2.4), place3(4, 2, 0.4)])
  .nozzle(4, 2, 0.4).plan;
const network = Object.keys(bare.networks)[0] ?? '';

function put(plan: Plan, x: number, z: number): { readonly plan: Plan; readonly ref: RefOf<'support'> } {
  const outcome = addSupport(network, { x, y: 2, z }, 'rigid')(plan);
  const made = outcome.ok ? outcome.created[0] : undefined;
  if (!outcome.ok || made?.kind !== 'support') throw new Error('The support finds its pipe.');
  return { plan: outcome.next, ref: { ...made, kind: 'support' } };
}
const level = put(bare, 2, 2.4);
const drop = put(level.plan, 4, 1.2);
const { plan } = drop;

const sections = [
  ['unfolded along the run', [drop.ref] as readonly Ref[]],
  ['through the middle of the room', [] as readonly Ref[]],
] as const;

describe.each(sections)('supports in a section %s', (_, selection) => {
  const derived = derivePlan(plan);
  const path = findSectionPath(derived, { level: 'level-0', cut: null, selection });
  if (!path) throw new Error('There is a way.');
  const cut = cutSection(derived, path, 'level-0');
  const view = fittedSection(cut, 1000, 300);
  const pxOf = (ref: Ref) => {
    const found = cut.supports.find((support) => support.ref.id === ref.id);
    if (!found) throw new Error('The support is shown.');
    return sectionPx(view, found.at);
  };

  test('they stand where they stand on their pipe', () => {
    expect(cut.supports.map(({ at }) => at.z)).toEqual([2.4, 1.2]);
    const [one, two] = cut.supports;
    expect((two?.at.s ?? 0) - (one?.at.s ?? 0)).toBeCloseTo(2, 9);
  });

  test('they are picked before their pipe; only on upright pipe has one a height to drag or type', () => {
    expect(sectionThingAt(cut, view, pxOf(level.ref), 8)).toEqual(level.ref);
    expect(heightHandleAt(cut, view, pxOf(level.ref), 8)).toBeUndefined();
    expect(heightHandleAt(cut, view, pxOf(drop.ref), 8)).toMatchObject({ kind: 'support', ref: drop.ref, z_m: 1.2 });
    expect(heightHandleOf(cut, [level.ref])).toBeUndefined();
    const handle = heightHandleOf(cut, [drop.ref]);
    const outcome = handle && heightCommand(handle, 0.9)(plan);
    expect(outcome?.ok && outcome.next.networks[network]?.supports[drop.ref.id]?.at).toEqual({ x: 4, y: 2, z: 0.9 });
    expect(handle && heightCommand(handle, 3)(plan).ok).toBe(false);
  });
});

test('a support that was put there, and only it, is drawn anew', () => {
  expect(changedThings(level.plan, drop.plan)).toEqual([refKey(drop.ref)]);
});

test('it is marked at its place', () => {
  expect(thingShape(plan, level.ref).points).toMatchObject([{ x: 2, y: 2 }]);
});
