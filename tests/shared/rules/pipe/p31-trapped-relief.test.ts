import { describe, expect, test } from 'vitest';
import type { AssemblyPart } from '#shared/model/plan';
import { p31TrappedRelief as rule } from '#shared/rules/pipe/p31-trapped-relief';
import { assemblyPlan, part } from '../../../support/assembly-layout.ts';
import { checkOne } from '../../../support/layout.ts';

const found = (...kinds: AssemblyPart['kind'][]) => checkOne(rule, assemblyPlan({ parts: kinds.map((kind) => part(kind)) }));

describe('P31', () => {
  test.each([
    ['nothing can be shut', ['hose', 'check-valve', 'regulator'], 'ok', 0],
    ['a stop valve behind a check valve, without relief', ['hose', 'check-valve', 'manifold', 'stop-valve'], 'stop', 1],
    ['with relief between', ['hose', 'check-valve', 'relief-valve', 'stop-valve'], 'ok', 0],
    ['with relief behind it', ['hose', 'check-valve', 'stop-valve', 'relief-valve'], 'stop', 1],
    ['two stop valves, relief before the first only', ['check-valve', 'relief-valve', 'stop-valve', 'stop-valve'], 'stop', 1],
    ['two, with relief before each', ['check-valve', 'relief-valve', 'stop-valve', 'relief-valve', 'stop-valve'], 'ok', 0],
    ['a stop valve right behind the cylinder', ['hose', 'stop-valve', 'regulator'], 'stop', 1],
    ['two without any', ['check-valve', 'stop-valve', 'stop-valve'], 'stop', 2],
  ] as const)('%s', (_, kinds, verdict, measured) => {
    expect(found(...kinds)).toMatchObject({ verdict, measured, limit: 0, margin: measured === 0 ? expect.closeTo(0, 12) : -measured });
  });

  test('says between which parts', () => {
    expect(found('hose', 'check-valve', 'stop-valve').text).toBe('Agent can be shut in between “check-valve” and “stop-valve”, where no relief valve is. List a relief valve there.');
    expect(found('hose', 'stop-valve').text).toContain('the valve of the cylinder');
  });

  test('nothing listed is not checked', () => {
    expect(found()).toMatchObject({ verdict: 'not-checked', text: 'Not checked: no part of the discharge assembly is listed.' });
  });
});
