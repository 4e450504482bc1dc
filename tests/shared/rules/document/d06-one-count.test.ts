import { describe, expect, test } from 'vitest';
import { designOf } from '#shared/calculations/design/design-of';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Derived } from '#shared/derived/derived';
import { d06OneCount as rule } from '#shared/rules/document/d06-one-count';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { at3, checkOne, layout } from '../../../support/layout.ts';

const plan = () =>
  layout({
    nozzles: [{ at: at3(4, 2, 2.2) }, { at: at3(2, 3, 2.2) }],
    runs: [{ places: [at3(0.2, 2, 1.8), at3(0.2, 2, 2.5), at3(2, 2, 2.5), at3(4, 2, 2.5), at3(4, 2, 2.2)] }, { places: [at3(2, 2, 2.5), at3(2, 3, 2.5), at3(2, 3, 2.2)] }],
  });

describe('D6', () => {
  test('plan, schedule, isometric, cut list and bill count the same', () => {
    const { verdict, inputs } = checkOne(rule, plan());
    expect(verdict).toBe('ok');
    // 0.7 + 1.8 + 2 + 0.3 and 1 + 0.3, added by hand.
    expect(inputs?.filter(({ label }) => label.startsWith('Pipe')).map(({ value }) => value)).toEqual(['6.100 m', '6.100 m', '6.100 m', '6.100 m']);
    // An elbow to the main, the tee, an elbow over each nozzle.
    expect(inputs?.filter(({ label }) => label.startsWith('Fittings')).map(({ value }) => value)).toEqual(['4', '4']);
  });

  test.each(['F1', 'F2', 'F3', 'F2-faults', 'F3-faults'] as const)('on %s', async (name) => {
    const derived = derivePlan((await buildDemo(name)).plan);
    for (const finding of rule.run(derived, designOf(derived, () => undefined))) expect(finding, finding.text).toMatchObject({ verdict: 'ok' });
  });

  test('a part that counts otherwise is named', () => {
    const derived = derivePlan(plan());
    const wrong = (change: Partial<Derived['networks'][number]>): string => {
      const networks = derived.networks.map((network) => ({ ...network, ...change }));
      const [finding] = rule.run({ ...derived, networks }, designOf(derived, () => undefined));
      return `${finding?.verdict} ${finding?.text}`;
    };
    expect(wrong({ totalLength_m: 6.2 })).toMatch(/^stop Pipe: plan 6\.100 m, schedule 6\.200 m/);
    expect(wrong({ paths: [] })).toMatch(/^stop Nozzles: plan 2, schedule 0/);
  });

  test('pipe that is not one tree is not checked', () => {
    const broken = plan();
    if (broken.networks.net) broken.networks.net.source = null;
    expect(checkOne(rule, broken).verdict).toBe('not-checked');
  });
});
