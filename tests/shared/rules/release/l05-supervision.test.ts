import { describe, expect, test } from 'vitest';
import type { Release, ReleaseDevice } from '#shared/model/plan';
import { l05Supervision as rule } from '#shared/rules/release/l05-supervision';
import { check, checkOne, layout } from '../../../support/layout.ts';
import { withRelease } from '../../../support/releasing-circuit.ts';

const device = (id: string, wiring: ReleaseDevice['wiring'], name = id): ReleaseDevice => ({ id, name, kind: 'other', distance_m: null, current_A: null, leastVoltage_V: null, wiring });
const wired = (wirings: readonly ReleaseDevice['wiring'][], endOfLine: Release['endOfLine'] = 'after-last') => checkOne(rule, withRelease({ devices: wirings.map((wiring, i) => device(`d${i + 1}`, wiring)), endOfLine }));

describe('L5', () => {
  test.each<[string, readonly ReleaseDevice['wiring'][], Release['endOfLine'], string]>([
    ['both wires through every device', ['in-line', 'in-line'], 'after-last', 'ok'],
    ['one device on a branch', ['in-line', 'tapped'], 'after-last', 'stop'],
    ['one device of which nobody knows', ['in-line', 'unknown'], 'after-last', 'not-checked'],
    ['no device', [], 'after-last', 'not-checked'],
    ['no end of line', ['in-line'], 'none', 'stop'],
    ['end of line before the last device', ['in-line', 'in-line'], 'before-last', 'stop'],
    ['end of line not known', ['in-line'], 'unknown', 'not-checked'],
    ['a branch hidden by nothing', ['unknown', 'tapped'], 'unknown', 'stop'],
    ['a missing end of line hidden by nothing', ['unknown'], 'none', 'stop'],
  ])('%s', (_, wirings, endOfLine, verdict) => {
    expect(wired(wirings, endOfLine).verdict).toBe(verdict);
  });

  test('names what hangs on a branch, and says both faults', () => {
    expect(wired(['in-line', 'tapped', 'tapped'], 'none')).toMatchObject({
      measured: 2,
      limit: 0,
      text: '“d2”, “d3” hang on a branch: the panel does not notice when they are cut off. Lead both wires through every device. Nothing stands at the end of the line: the panel does not notice a broken wire. Put the end-of-line part behind the last device.',
      cure: { kind: 'advice' },
      place: { level: 'level-0', at: [{ x: 0.2, y: 0.2 }] },
    });
  });

  test('prints what went into it', () => {
    expect(wired(['in-line'])).toMatchObject({ inputs: [{ label: 'd1', value: 'both wires go through it' }, { label: 'End of line', value: 'behind the last device' }] });
  });

  test('like names are told apart', () => {
    const devices = [device('d1', 'tapped', 'Horn'), device('d2', 'in-line', 'Horn')];
    expect(checkOne(rule, withRelease({ devices })).text).toContain('“Horn (device 1)” hangs');
  });

  test('without a circuit there is nothing to ask', () => {
    expect(check(rule, layout({}))).toEqual([]);
  });
});
