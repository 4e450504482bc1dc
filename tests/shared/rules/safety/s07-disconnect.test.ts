import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BasisOfDesign } from '#shared/model/basis-of-design';
import { s07Disconnect as rule } from '#shared/rules/safety/s07-disconnect';
import type { DeviceSpec } from '../../../support/devices.ts';
import { doorRoom } from '../../../support/door-room.ts';
import { anyPlacing, check, checkOne } from '../../../support/layout.ts';

const GOOD: DeviceSpec = { kind: 'disconnect', x: 5, y: 3.9, isKeyed: true, isSupervised: true };
/** The cylinder stands at (0.2, 2). */
const VALVE: DeviceSpec = { kind: 'lock-out-valve', x: 0.2, y: 2.4, isSupervised: true };

function asked(devices: readonly DeviceSpec[], lockOutValve: BasisOfDesign['lockOutValve'] = 'not-required') {
  const plan = doorRoom(devices);
  plan.basis.lockOutValve = lockOutValve;
  return checkOne(rule, plan);
}

describe('S7', () => {
  test.each<[string, readonly DeviceSpec[], BasisOfDesign['lockOutValve'], string]>([
    ['keyed and watched', [GOOD], 'not-required', 'ok'],
    ['none', [], 'not-required', 'stop'],
    ['no key', [{ ...GOOD, isKeyed: false }], 'not-required', 'stop'],
    ['not watched', [{ ...GOOD, isSupervised: false }], 'not-required', 'stop'],
    ['key not known', [{ ...GOOD, isKeyed: null }], 'not-required', 'not-checked'],
    ['watch not known', [{ ...GOOD, isSupervised: null }], 'not-required', 'not-checked'],
    ['at its door, outside', [{ ...GOOD, x: 3, y: -1 }], 'not-required', 'ok'],
    ['elsewhere: whose it is cannot be told', [{ ...GOOD, x: 30 }], 'not-required', 'not-checked'],
    ['two, one of them without a key', [GOOD, { ...GOOD, x: 4, isKeyed: false }], 'not-required', 'stop'],
    ['nobody knows whether a valve is asked for', [GOOD], 'unknown', 'not-checked'],
    ['a valve is asked for', [GOOD], 'required', 'stop'],
    ['a valve is asked for, and there', [GOOD, VALVE], 'required', 'ok'],
    ['a valve in other pipe', [GOOD, { ...VALVE, x: 5 }], 'required', 'stop'],
    ['a valve at the limit', [GOOD, { ...VALVE, y: 2.5 }], 'required', 'ok'],
    ['a valve just beyond', [GOOD, { ...VALVE, y: 2.501 }], 'required', 'stop'],
    ['a valve that nobody watches', [GOOD, { ...VALVE, isSupervised: false }], 'required', 'stop'],
    ['a valve of which nobody knows', [GOOD, { ...VALVE, isSupervised: null }], 'required', 'not-checked'],
    ['a valve that is not asked for must be watched too', [GOOD, { ...VALVE, isSupervised: false }], 'not-required', 'stop'],
    ['what is not known hides no fault', [{ ...GOOD, isKeyed: null, isSupervised: false }], 'unknown', 'stop'],
  ])('%s', (_, devices, lockOutValve, verdict) => {
    expect(asked(devices, lockOutValve).verdict).toBe(verdict);
  });

  // A room that no nozzle serves: then the cylinder counts, 2 m.
  test.each([
    ['at the limit', 4, 'ok'],
    ['beyond', 4.001, 'not-checked'],
  ])('by the cylinders, %s', (_, y, verdict) => {
    const plan = doorRoom([{ ...GOOD, x: 0.2, y }], { isServed: false });
    plan.basis.lockOutValve = 'not-required';
    expect(checkOne(rule, plan).verdict).toBe(verdict);
  });

  test('says what it found', () => {
    expect(asked([GOOD, VALVE], 'required')).toMatchObject({
      text: 'Disconnect “D1” needs a key. The panel watches it. The panel watches lock-out valve “D2”.',
      inputs: [{ label: 'Lock-out valve', value: 'asked for' }, { label: 'D1', value: 'keyed: yes, watched: yes' }, { label: 'D2', value: 'watched: yes' }],
    });
  });

  test('a network with neither cylinder nor pipe is not asked', () => {
    const plan = doorRoom([]);
    for (const network of Object.values(plan.networks)) Object.assign(network, { cylinders: {}, nozzles: {} });
    expect(check(rule, plan)).toEqual([]);
  });

  test('turning and mirroring changes nothing', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const plan = doorRoom([GOOD, { ...VALVE, y: 2.45 }], { placing });
        plan.basis.lockOutValve = 'required';
        expect(checkOne(rule, plan).verdict).toBe('ok');
      }),
      { numRuns: 15 },
    );
  });
});
