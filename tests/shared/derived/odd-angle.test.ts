import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyCure } from '#shared/commands/apply-cure';
import { placeNode } from '#shared/commands/place-node';
import { derivePlan } from '#shared/derived/derive-plan';
import { oddAngleCure, twoPiecesFor } from '#shared/derived/odd-angle';
import { p01Network } from '#shared/rules/pipe/p01-network';
import { moveWords } from '#shared/rules/move-words';
import { wordingFor } from '#shared/rules/wording';
import { check } from '../../support/layout.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { done, networkIn, refusal } from '../../support/try-command.ts';
import type { Plan } from '#shared/model/plan';

const oddBends = (plan: Plan) => derivePlan(plan).networks.flatMap(({ fittings }) => fittings.filter(({ kind }) => kind === 'odd-bend'));
const INCH_m = 0.0254;

/** East, then off at an angle to a nozzle pipe that goes on east: the turn at (4,0) is wrong, and so is that at the far end. */
const crooked = () => planBuilder('feet').network().run([place3(0, 0, 2), place3(0, 0, 2.5), place3(4, 0, 2.5), place3(4.4, 1, 2.5), place3(8, 1, 2.5), place3(8, 1, 2.2)]).nozzle(8, 1, 2.2);

describe('a turn that no fitting makes', () => {
  test('is a stop of P1 in words, with the nearest place that makes it 45°', () => {
    const built = crooked();
    const [finding] = check(p01Network, built.plan);
    // tan⁻¹(1 / 0.4) = 68.2°; square it is 0.4 m further, 45° it would be 0.6 m back.
    expect(finding).toMatchObject({ verdict: 'stop', text: 'Turn 68.2°: no fitting is made for it. (1 more)' });
    expect(finding?.cure).toMatchObject({ kind: 'move-node', text: `Move this place 1'-3 3/4" east and it becomes a 90° turn` });
  });

  test('is built after its cure, in one step that can be undone', () => {
    const built = crooked();
    const cure = check(p01Network, built.plan)[0]?.cure;
    if (!cure) throw new Error('There is no cure.');
    const { next } = done(built.plan, applyCure(cure));
    expect(oddBends(next)).toEqual([]);
    expect(check(p01Network, next)[0]?.verdict).toBe('ok');
  });

  test('the move is the smallest along the pipe: exactly as far as the 45° triangle says', () => {
    const built = planBuilder('feet').network().run([place3(0, 0, 2.5), place3(3.2, 0, 2.5), place3(4.5, 1, 2.5), place3(8, 1, 2.5)]).nozzle(8, 1, 2.5);
    const cure = oddAngleCure(networkIn(built.plan), built.nodeAt(3.2, 0, 2.5).id);
    expect(cure).toEqual({ to: { x: expect.closeTo(3.5, 9), y: expect.closeTo(0, 9), z: expect.closeTo(2.5, 9) }, becomes: 'elbow-45' });
  });

  test('a little off square becomes square, a little off straight becomes straight', () => {
    const square = planBuilder().network().run([place3(0, 0, 2.5), place3(4, 0, 2.5), place3(4.2, 3, 2.5)]).nozzle(4.2, 3, 2.5);
    expect(oddAngleCure(networkIn(square.plan), square.nodeAt(4, 0, 2.5).id)).toMatchObject({ to: { x: expect.closeTo(4.2, 9), y: expect.closeTo(0, 9) }, becomes: 'elbow-90' });
    const straight = planBuilder().network().run([place3(0, 0, 2.5), place3(4, 0.1, 2.5), place3(8, 0, 2.5)]).nozzle(8, 0, 2.5);
    expect(oddAngleCure(networkIn(straight.plan), straight.nodeAt(4, 0.1, 2.5).id)).toMatchObject({ to: { x: expect.closeTo(4, 9), y: expect.closeTo(0, 9) }, becomes: 'straight' });
  });

  test('a tee is squared by sliding it along its run', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.5), place3(4, 0, 2.5), place3(8, 0, 2.5)]).nozzle(8, 0, 2.5).run([place3(4, 0, 2.5), place3(4.6, 3, 2.5)]).nozzle(4.6, 3, 2.5);
    expect(check(p01Network, built.plan)[0]).toMatchObject({ verdict: 'stop', text: expect.stringContaining('no tee is made for it') });
    expect(oddAngleCure(networkIn(built.plan), built.nodeAt(4, 0, 2.5).id)).toMatchObject({ to: { x: expect.closeTo(4.6, 9), y: expect.closeTo(0, 9) }, becomes: 'tee' });
  });

  test('where no move helps, two pieces are named', () => {
    const built = planBuilder().network().run([place3(0, 0, 2.5), place3(2, 0, 2.5), place3(2, 0, 3.5), place3(3, 0.4, 4)]);
    const fault = derivePlan(built.plan).networks[0]?.faults.find(({ kind }) => kind === 'unbuildable');
    expect(twoPiecesFor(networkIn(built.plan), fault?.node ?? '', fault?.pipes ?? [])).toEqual({ onward_m: expect.closeTo(0.5, 9), across_m: expect.closeTo(Math.hypot(1, 0.4), 9) });
  });

  test('a cure never leaves more such turns than there were, and none where it moved', () => {
    const coordinate = fc.integer({ min: 0, max: 24 }).map((eighths) => eighths / 8);
    let cured = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 3, maxLength: 6 }), (corners) => {
        const { plan } = planBuilder().network().run(corners.map(([x, y, z]) => place3(x, y, z)));
        for (const { node } of oddBends(plan)) {
          const cure = oddAngleCure(networkIn(plan), node);
          if (!cure) continue;
          const outcome = placeNode({ kind: 'node', network: networkIn(plan).id, id: node }, cure.to)(plan);
          if (!outcome.ok) continue;
          cured += 1;
          expect(oddBends(outcome.next).length).toBeLessThan(oddBends(plan).length);
          expect(oddBends(outcome.next).some((fitting) => fitting.node === node)).toBe(false);
        }
      }),
    );
    expect(cured).toBeGreaterThan(20);
  });

  test('moves are said as a fitter says them', () => {
    const say = wordingFor('feet');
    expect(moveWords(place3(0, 0, 0), place3(4.5 * INCH_m, 0, 0), say)).toBe('4 1/2" east');
    expect(moveWords(place3(0, 0, 0), place3(-INCH_m, 2 * INCH_m, -3 * INCH_m), say)).toBe('1" west, 2" north and 3" down');
    expect(moveWords(place3(0, 0, 0), place3(0, 0, 0), say)).toBe('0"');
  });

  test('a place that has gone is refused', () => {
    const built = crooked();
    expect(refusal(built.plan, placeNode({ ...built.nodeAt(4, 0, 2.5), id: 'gone' }, place3(0, 0, 0)))).toContain('no longer');
    expect(refusal(built.plan, placeNode(built.nodeAt(4, 0, 2.5), place3(0, 0, 2.5)))).toContain('no length');
  });
});
