import { describe, expect, test } from 'vitest';
import type { AssemblyPart } from '#shared/model/plan';
import { gapText } from '#shared/rules/pipe/gap-text';
import { p33AssemblyOrder as rule } from '#shared/rules/pipe/p33-assembly-order';
import { wordingFor } from '#shared/rules/wording';
import { ALONE, type AssemblySpec, SEVERAL, assemblyPlan, part } from '../../../support/assembly-layout.ts';
import { checkOne } from '../../../support/layout.ts';

const found = (spec: AssemblySpec) => checkOne(rule, assemblyPlan(spec));
const listed = (...kinds: AssemblyPart['kind'][]) => kinds.map((kind) => part(kind, 0));

describe('P33', () => {
  test.each([
    ['one cylinder, in order', ALONE, 'ok'],
    ['several, in order', SEVERAL, 'ok'],
    ['one cylinder with a manifold', { ...ALONE, parts: listed('hose', 'check-valve', 'manifold', 'regulator') }, 'ok'],
    ['two parts changed over', { ...ALONE, parts: listed('hose', 'regulator', 'check-valve') }, 'stop'],
    ['a part that lacks', { ...ALONE, parts: listed('hose', 'regulator') }, 'stop'],
    ['a part the manual does not list', { ...ALONE, parts: listed('hose', 'check-valve', 'stop-valve', 'regulator') }, 'stop'],
    ['several without a manifold', { ...SEVERAL, parts: listed('hose', 'check-valve', 'regulator') }, 'stop'],
    ['a regulator turned against the flow', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.15, { arrowDownstream: false })] }, 'stop'],
    ['lengths that do not add up', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.2)] }, 'warn'],
    ['lengths within a turn of a thread', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.1529)] }, 'ok'],
    ['lengths just beyond it', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.1531)] }, 'warn'],
  ])('%s', (_, spec, verdict) => {
    expect(found(spec).verdict).toBe(verdict);
  });

  test('says what is wrong and what the order is', () => {
    expect(found({ ...ALONE, parts: listed('hose', 'regulator', 'check-valve') }).text).toBe('After the hose the manual has the check valve; here it is the regulator. Its order from the valve on: hose, check valve, manifold, regulator.');
    expect(found({ ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1, { arrowDownstream: false }), part('regulator', 0.15)] }).text).toBe('“check-valve” is turned against the flow, so that no agent passes.');
    expect(found({ ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.2)] }).text).toContain('The rigid parts of cylinder C1 are 50 mm too long for their way to where the pipe begins.');
  });

  test('a blank order is not checked, but what is wrong all the same is told', () => {
    expect(found({ ...ALONE, order: null })).toMatchObject({ verdict: 'not-checked', text: expect.stringContaining('the order of the discharge assembly is blank') });
    expect(found({ ...SEVERAL, parts: listed('hose', 'check-valve', 'regulator'), order: null }).verdict).toBe('stop');
    expect(found({ ...ALONE, order: null, parts: [part('hose', 0.8, { arrowDownstream: false })] }).verdict).toBe('stop');
  });

  test('no parts are not checked', () => {
    expect(found({ ...ALONE, parts: [] }).text).toBe('Not checked: no part of the discharge assembly is listed.');
  });

  test('gaps in words', () => {
    const gap = { cylinder: null, before: 'pipe' as const, off_m: 0.03, at: { x: 0, y: 0, z: 0 } };
    const say = wordingFor('metric');
    expect(gapText({ ...gap, kind: 'short' }, {}, say)).toBe('The rigid parts end 30 mm short of where the pipe begins.');
    expect(gapText({ ...gap, kind: 'drawn', before: 'manifold', off_m: -0.2 }, {}, say)).toBe('The manifold is drawn 200 mm shorter than it is listed.');
  });
});
