import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import { p21RigidAtThrust as rule } from '#shared/rules/pipe/p21-rigid-at-thrust';
import { at3 } from '../../../support/layout.ts';
import { checkSumsOnce } from '../../../support/network-sums.ts';
import { type Held, heldOn, supportSums, supportedRun } from '../../../support/supported-run.ts';

/** Supports with the pipe that each holds; the last one is the nozzle's unless it is said to have none. */
const asked = (supports: readonly (Held & { readonly pipe: string })[], hasNozzleSupport = true) =>
  checkSumsOnce(rule, supportedRun(supports), (network) => {
    const held = heldOn(network, Object.fromEntries(supports.map(({ pipe }, i) => [`s${i + 1}`, pipe])));
    const support = hasNozzleSupport ? held.at(-1) : undefined;
    return {
      supports: worked(
        supportSums({
          held,
          nozzles: network.nozzles.map(({ ref, nozzle }) => ({ ref, name: nozzle.name, distance_m: 0.1, allowed_m: 0.1, support })),
          turns: network.fittings.map((fitting) => ({ fitting, distance_m: 0.1, allowed_m: 0.3 })),
        }),
      ),
    };
  });
const elbow = { at: at3(2.9, 0, 2), pipe: 'p1' };
const nozzle = { at: at3(3, 1.9, 2), pipe: 'p2' };

describe('P21', () => {
  test.each([
    ['rigid', 'ok'],
    ['guide', 'ok'],
    ['hanger', 'stop'],
    ['sling', 'stop'],
  ] as const)('a %s at the nozzle, and at the turn', (kind, verdict) => {
    expect(asked([elbow, { ...nozzle, kind }]).verdict).toBe(verdict);
    expect(asked([{ ...elbow, kind }, nozzle]).verdict).toBe(verdict);
  });

  test('names the first and counts them all', () => {
    const both = asked([{ ...elbow, kind: 'hanger' }, { ...nozzle, kind: 'sling' }]);
    expect(both).toMatchObject({ measured: 2, margin: -2, text: 'A sling is all that holds the pipe at nozzle N1 (1 more), where gas pushes. Use a rigid support.' });
    expect(both.place?.at).toEqual([
      { x: 3, y: 1.9 },
      { x: 2.9, y: 0 },
    ]);
  });

  test('only the nearest support takes the thrust of a turn, from either side', () => {
    const hanger = { at: at3(2.5, 0, 2), pipe: 'p1', kind: 'hanger' } as const;
    expect(asked([hanger, elbow, nozzle]).verdict).toBe('ok');
    expect(asked([hanger, { at: at3(3, 0.4, 2), pipe: 'p2' }, nozzle]).verdict).toBe('ok');
    expect(asked([hanger, { at: at3(3, 0.6, 2), pipe: 'p2' }, nozzle]).verdict).toBe('stop');
  });

  test('of two that are equally near the firmer one counts', () => {
    expect(asked([{ ...elbow, kind: 'hanger' }, { at: at3(3, 0.1, 2), pipe: 'p2' }, nozzle]).verdict).toBe('ok');
  });

  test('a hanger that holds no pipe counts for nothing', () => {
    expect(asked([{ at: at3(2.95, 0.3, 2), pipe: 'none', kind: 'hanger' }, elbow, nozzle]).verdict).toBe('ok');
  });

  test('a nozzle without support is not checked, unless something else is at fault', () => {
    expect(asked([elbow], false)).toMatchObject({ verdict: 'not-checked', text: 'Not checked: no support holds the pipe of nozzle N1.' });
    expect(asked([{ ...elbow, kind: 'sling' }], false).verdict).toBe('stop');
  });

  test('no support at all, or sums not known: not checked', () => {
    expect(checkSumsOnce(rule, supportedRun([]), { supports: worked(supportSums({})) }).verdict).toBe('not-checked');
    expect(checkSumsOnce(rule, supportedRun([nozzle]), { supports: notWorked('no pipe leads to a nozzle yet.') }).verdict).toBe('not-checked');
  });
});
