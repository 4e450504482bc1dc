import { describe, expect, test } from 'vitest';
import type { Enclosure } from '#shared/model/plan';
import { e16Extract as rule } from '#shared/rules/enclosure/e16-extract';
import { checkOne } from '../../../support/layout.ts';
import { builtRoom } from '../../../support/served-room.ts';

type Extract = Enclosure['afterDischarge']['extract'];
function asked(required: 'unknown' | 'required' | 'not-required', extract: Extract, extractFlow_m3_s: number | null = null) {
  const { plan } = builtRoom({ afterDischarge: { extract, extractFlow_m3_s, procedure: '', hasMeter: null } });
  plan.basis.extract = required;
  return checkOne(rule, plan);
}

describe('E16', () => {
  test.each([
    ['unknown', 'fixed', 'not-checked'],
    ['required', 'unknown', 'not-checked'],
    ['required', 'not-required', 'note'],
    ['required', 'fixed', 'ok'],
    ['required', 'portable', 'ok'],
    ['not-required', 'unknown', 'ok'],
    ['not-required', 'not-required', 'ok'],
    ['not-required', 'fixed', 'ok'],
  ] as const)('%s by the authority, %s in the room', (required, extract, verdict) => expect(asked(required, extract).verdict).toBe(verdict));
  test('tells the time of four changes of air', () => {
    // 6 · 4 · 2.7 m³ = 64.8 m³, four times at 0.036 m³/s: 7200 s.
    const finding = asked('required', 'fixed', 0.036);
    expect(finding.measured).toBeCloseTo(7200, 6);
    expect(finding.text).toBe('Has a fixed extract for after a discharge. Four changes of air take 2.0 h.');
    expect(finding.inputs).toMatchObject([{ value: 'a fixed extract' }, {}, { value: '2.0 h' }, { value: '1.8 %' }]);
  });
  test('a flow of nothing tells no time', () => expect(asked('required', 'portable', 0).measured).toBeUndefined());
});
