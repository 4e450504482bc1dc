import { describe, expect, test } from 'vitest';
import { batteryOf } from '#shared/calculations/design/battery';
import type { BasisOfDesign } from '#shared/model/basis-of-design';
import type { Release } from '#shared/model/plan';
import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import { evaluate } from '#shared/evaluate';
import { withRelease } from '../../../support/releasing-circuit.ts';

const TIMES = { batteryStandby_s: 86_400, batteryAlarm_s: 300 };
const BATTERY = { capacity_Ah: 18, standby_A: 0.3, alarm_A: 2 };

function battery(given: Partial<Release> | null, basis: Partial<BasisOfDesign> = TIMES) {
  const plan = withRelease(given, { basis });
  const { net } = plan.networks;
  if (!net) throw new Error('The layout has its network.');
  return batteryOf(net, plan.basis);
}

describe('battery of the panel', () => {
  // By hand: 1.2·(0.3 A · 24 h + 2 A · 5 min) = 8.84 Ah.
  test('by hand', () => {
    expect(battery({ battery: BATTERY })).toMatchObject({ isKnown: true, sums: { needed_Ah: expect.closeTo(8.84, 12), capacity_Ah: 18, standby_s: 86_400, alarm_s: 300 } });
  });

  test.each<[string, Partial<Release> | null, Partial<BasisOfDesign>, RegExp]>([
    ['circuit', null, TIMES, /not drawn up/],
    ['battery', { battery: null }, TIMES, /battery of the panel/],
    ['charge', { battery: { ...BATTERY, capacity_Ah: 0 } }, TIMES, /battery of the panel/],
    ['current while it stands by', { battery: { ...BATTERY, standby_A: 0 } }, TIMES, /stands by is not entered/],
    ['current in alarm', { battery: { ...BATTERY, alarm_A: 0 } }, TIMES, /in alarm is not entered/],
    ['time of standing by', {}, { batteryAlarm_s: 300 }, /stand by is not entered/],
    ['time of alarm', {}, { batteryStandby_s: 86_400 }, /sound alarm is not entered/],
  ])('%s not entered: not worked out, and it says so', (_, given, basis, because) => {
    expect(battery(given, basis)).toMatchObject({ isKnown: false, because: expect.stringMatching(because) });
  });

  test('prints with its formula, figures and sources', () => {
    const plan = withRelease({ battery: { ...BATTERY, capacity_Ah: 7 } }, { basis: TIMES });
    const written = calculationsOf(evaluate(plan)).find(({ topic }) => topic === 'battery');
    expect(written).toMatchObject({ title: 'Battery of the panel', missing: [], cautions: [expect.stringContaining('manual of the panel govern')] });
    const main = written?.lines.find(({ isMain }) => isMain);
    expect(main).toMatchObject({ formula: 'Q = k·(I_standby·t_standby + I_alarm·t_alarm), k = 1.2', result: '8.84 Ah; the battery holds 7 Ah: too little', source: expect.stringContaining('NFPA 72') });
    // What is written out gives the result again.
    const run = new Function(`return ${main?.numbers.replaceAll('·', '*')};`) as () => number;
    expect(run()).toBeCloseTo(8.84, 4);
  });

  test('what is missing is written instead', () => {
    expect(calculationsOf(evaluate(withRelease({ battery: null }))).find(({ topic }) => topic === 'battery')?.missing).toEqual(['Not worked out (charge of the battery): the battery of the panel of “Network” is not entered.']);
  });
});
