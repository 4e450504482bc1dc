import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyCure } from '#shared/commands/apply-cure';
import type { PlanPoint3 } from '#shared/geometry/point';
import type { Plan } from '#shared/model/plan';
import { p25DirtTrap as rule } from '#shared/rules/pipe/p25-dirt-trap';
import { type LayoutSpec, anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';
import { done } from '../../../support/try-command.ts';

const IN = 0.0254;
/**
 * NPS 3/4 Class 300: a tee is 1.44 in from centre to end (ASME B16.3) and takes 9/16 in of thread (pipe-trade table);
 * with 2 in of pipe left (NFPA 2001:2018) the cap is this far from the middle of the tee.
 */
const LEAST_m = (2 + 1.44 - 9 / 16) * IN;

/** Says of the node at a place that it holds a dirt trap. */
function trapped(plan: Plan, is: (at: PlanPoint3) => boolean): Plan {
  for (const node of Object.values(plan.networks.net?.nodes ?? {})) if (is(node.at)) node.part = 'dirt-trap';
  return plan;
}
/** Along to x = 4, down to N1; with `trap_m` the main goes on as far. */
const line = (trap_m: number): LayoutSpec => ({
  runs: [{ places: [at3(1, 2, 2), at3(1, 2, 2.5), at3(4, 2, 2.5), at3(4, 2, 2.2)] }, ...(trap_m > 0 ? [{ places: [at3(4, 2, 2.5), at3(4 + trap_m, 2, 2.5)] }] : [])],
  nozzles: [{ at: at3(4, 2, 2.2) }],
});

describe('P25', () => {
  test.each([
    ['at the limit', LEAST_m, 'ok'],
    ['just inside', LEAST_m + 1e-5, 'ok'],
    ['just outside', LEAST_m - 1e-5, 'stop'],
    ['without a trap', 0, 'stop'],
  ])('%s', (_, trap_m, verdict) => {
    expect(checkOne(rule, trapped(layout(line(trap_m)), ({ x }) => x > 4)).verdict).toBe(verdict);
  });

  test('a capped leg that nobody calls a dirt trap is none', () => {
    expect(check(rule, layout(line(0.2))).map(({ verdict }) => verdict)).not.toContain('ok');
  });

  test('while the tee’s length is not known only what cannot be doubted is passed or stopped', () => {
    const welded = (trap_m: number) => {
      const plan = trapped(layout(line(trap_m)), ({ x }) => x > 4);
      for (const pipe of Object.values(plan.networks.net?.pipes ?? {})) pipe.joint = 'welded';
      return checkOne(rule, plan).verdict;
    };
    // NPS 3/4 is 1.050 in outside (ASME B36.10M): twice that and 2 in is 4.1 in.
    expect(welded(4.2 * IN)).toBe('ok');
    expect(welded(3 * IN)).toBe('not-checked');
    expect(welded(1.9 * IN)).toBe('stop');
  });

  test('only the last nozzle of a line is asked; of a tee fed through its branch both are', () => {
    const two: LayoutSpec = {
      runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(5, 2, 2.5), at3(5, 2, 2.2)] }, { places: [at3(3, 2, 2.5), at3(3, 2, 2.2)] }],
      nozzles: [{ at: at3(3, 2, 2.2) }, { at: at3(5, 2, 2.2) }],
    };
    expect(check(rule, layout(two)).map(({ name, verdict }) => [name, verdict])).toEqual([['N2', 'stop']]);
    const straight: LayoutSpec = { runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(5, 2, 2.5)] }, { places: [at3(3, 2, 2.5), at3(3, 2, 2.2)] }], nozzles: [{ at: at3(3, 2, 2.2) }, { at: at3(5, 2, 2.5) }] };
    expect(check(rule, layout(straight)).map(({ name, verdict }) => [name, verdict])).toEqual([['N2', 'stop']]);
    const bull: LayoutSpec = { runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5), at3(3, 3, 2.5)] }, { places: [at3(3, 2, 2.5), at3(3, 1, 2.5)] }], nozzles: [{ at: at3(3, 3, 2.5) }, { at: at3(3, 1, 2.5) }] };
    expect(check(rule, layout(bull)).map(({ name, verdict, cure }) => [name, verdict, cure?.kind])).toEqual([['N1', 'stop', 'advice'], ['N2', 'stop', 'advice']]);
  });

  test('pipe straight to the nozzle has no trap; a nozzle without pipe is not checked', () => {
    expect(checkOne(rule, layout({ runs: [{ places: [at3(1, 2, 2.5), at3(3, 2, 2.5)] }], nozzles: [{ at: at3(3, 2, 2.5) }] })).text).toContain('Its pipe runs straight to it');
    expect(checkOne(rule, layout({ nozzles: [{ at: at3(3, 2, 2.5) }] })).verdict).toBe('not-checked');
  });

  test('its cure puts one there in one step', () => {
    const plan = layout(line(0));
    const { cure, text } = checkOne(rule, plan);
    expect(text).toBe('Its line ends without a dirt trap: dirt in the pipe goes to its orifice. Let the line go on at least 51 mm to a cap.');
    expect(cure).toMatchObject({ kind: 'add-dirt-trap', text: 'Put a dirt trap at the last elbow' });
    if (cure) expect(checkOne(rule, done(plan, applyCure(cure)).next).verdict).toBe('ok');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        for (const [trap_m, verdict] of [[LEAST_m + 1e-5, 'ok'], [LEAST_m - 1e-5, 'stop']] as const) {
          const plan = placedLayout(line(trap_m), placing);
          const cap = plan.networks.net?.pipes.p4?.to ?? '';
          const node = plan.networks.net?.nodes[cap];
          if (node) node.part = 'dirt-trap';
          expect(checkOne(rule, plan).verdict).toBe(verdict);
        }
      }),
      { numRuns: 20 },
    );
  });
});
