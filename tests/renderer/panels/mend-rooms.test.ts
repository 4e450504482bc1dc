import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import type { Opening, Plan, VentStep } from '#shared/model/plan';
import { wantingRows } from '../../../src-renderer/panels/bench/shutdown-slip.tsx';
import { nextStep } from '../../../src-renderer/panels/bench/vent-way-fields.tsx';
import { exclusionWith } from '../../../src-renderer/panels/bench/void-fields.tsx';
import { whereToMend } from '../../../src-renderer/panels/findings/where-to-mend.ts';
import type { PlanBuilder } from '../../support/plan-builder.ts';
import { builtRoom, eastOf, ventInWall } from '../../support/served-room.ts';

/** Where the first open finding of a rule leads. */
function leadsTo(rule: string, plan: Plan) {
  const { derived, findings } = evaluate(plan);
  const finding = findings.find((each) => each.rule === rule && each.verdict !== 'ok');
  return finding && whereToMend(derived, finding).map((field) => ('label' in field ? field.label : field.kind));
}
const vent = (change: Partial<Opening>): PlanBuilder => builtRoom().opening(1, 2, 0.4, ventInWall(change));
const step = (through: VentStep['through']): VentStep => ({ name: '', through, freeArea_m2: null });
const extractRequired = (): Plan => {
  const { plan } = builtRoom();
  plan.basis.extract = 'required';
  return plan;
};

describe('a finding about what stands around a room leads to what clears it', () => {
  test.each<[string, string[], Plan]>([
    ['E10', ['Leads to'], vent({ leadsTo: 'unknown' }).plan],
    ['E10', ['Add a step of the way'], vent({ leadsTo: 'corridor' }).plan],
    ['E10', ['Step 2 leads through'], vent({ ventPath: [step('duct'), step('corridor'), step('outdoors')] }).plan],
    ['E10', ['Add a step of the way'], vent({ ventPath: [step('duct')] }).plan],
    ['E10', ['Free area of step 1'], vent({ ventPath: [step('duct'), step('outdoors')] }).plan],
    ['E12', ['Closes before discharge'], builtRoom().opening(1, 2, 1).plan],
    ['E12', ['Gap under the leaf'], builtRoom().opening(1, 2, 1, { closes: true }).plan],
    ['E13', ['Release matrix'], builtRoom().shutdown('damper', 'gone').plan],
    // The finding itself adds the row.
    ['E13', [], builtRoom().device('diffuser', 1, 1).plan],
    ['E14', ['All walls go up to'], builtRoom({ ceiling: { make: 'tiles', clipped_m: null } }).plan],
    ['E15', ['Discharged together with'], builtRoom({ dischargedWith: 'A' }).plan],
    ['E16', ['Extract after a discharge'], builtRoom().plan],
    ['E16', ['Extract after a discharge'], extractRequired()],
    ['S9', ['What lies on the other sides'], builtRoom().plan],
    ['S9', ['Gas that drifts in'], builtRoom().adjoining('corridor', eastOf()).plan],
    ['S10', ['How people come back in'], builtRoom().plan],
    ['S10', ['Oxygen meter at hand'], builtRoom({ afterDischarge: { extract: 'unknown', extractFlow_m3_s: null, procedure: 'Ventilate; go in at 19.5 %.', hasMeter: false } }).plan],
  ])('%s leads to %j', (rule, labels, plan) => expect(leadsTo(rule, plan)).toEqual(labels));
});

describe('the forms of a room', () => {
  test('a way begins with a duct and ends outdoors', () => {
    expect(nextStep([]).through).toBe('duct');
    expect(nextStep([step('duct')]).through).toBe('outdoors');
  });
  test('an exclusion of which nothing is left is none', () => {
    expect(exclusionWith(null, { reason: 'No cables' })).toEqual({ reason: 'No cables', by: '', date: '' });
    expect(exclusionWith({ reason: 'No cables', by: '', date: '' }, { reason: '' })).toBeNull();
  });
  test('rows are offered for what is wanting alone', () => {
    const at = { kind: 'opening', level: 'l', enclosure: 'e', id: 'd1' } as const;
    const fan = { kind: 'device', level: 'l', id: 's1' } as const;
    expect(
      wantingRows([
        { ref: at, name: 'Damper D1', kind: 'damper', isWanting: true },
        { ref: { ...at, id: 'd2' }, name: 'Door', kind: 'door', isWanting: false },
        { ref: fan, name: 'Diffuser S1', kind: 'fan', isWanting: true },
      ]),
    ).toEqual([
      { name: 'Damper D1', kind: 'damper', target: 'd1', on: 'first-detector' },
      { name: 'Fan of diffuser S1', kind: 'fan', target: 's1', on: 'first-detector' },
    ]);
  });
});
