import { describe, expect, test } from 'vitest';
import { notWorked, worked } from '#shared/calculations/design/worked';
import type { Derived } from '#shared/derived/derived';
import { n21FlowShare as rule } from '#shared/rules/nozzle/n21-flow-share';
import { at3, layout } from '../../../support/layout.ts';
import { checkSums } from '../../../support/network-sums.ts';

/** One nozzle in the room and one under its floor. */
const plan = layout({ underFloor: { depth_m: 0.6, isProtected: true, exclusion: null }, nozzles: [{ at: at3(3, 2, 2.5) }, { at: at3(4, 2, -0.1) }] });
const sharing = (roomFlow: number, roomVolume: number) => (network: Derived['networks'][number]) => ({
  shares: worked(
    network.nozzles.flatMap(({ space }, i) => (space ? [{ space, flowShare: i === 0 ? roomFlow : 1 - roomFlow, volumeShare: i === 0 ? roomVolume : 1 - roomVolume }] : [])),
  ),
});

describe('N21', () => {
  test.each([
    ['alike', 0.5, ['ok', 'ok']],
    ['five per cent of their shares off', 0.525, ['ok', 'ok']],
    ['more than five per cent off', 0.5255, ['warn', 'warn']],
  ])('two spaces of one volume: %s', (_, flow, verdicts) => {
    expect(checkSums(rule, plan, sharing(flow, 0.5)).map(({ verdict }) => verdict)).toEqual(verdicts);
  });
  test('the deviation is one of the space’s own share: it weighs more in the small space', () => {
    expect(checkSums(rule, plan, sharing(0.81, 0.82)).map(({ verdict }) => verdict)).toEqual(['ok', 'warn']);
  });
  test('each space is named with its shares and which way they are off', () => {
    const [room, floor] = checkSums(rule, plan, sharing(0.55, 0.5));
    expect(room).toMatchObject({ name: 'Room', measure: 'ratio', limit: 0.05, text: 'Gets 55.0 % of the agent for 50.0 % of the volume: 10.0 % too much; 5.0 % is the most.' });
    expect(room?.measured).toBeCloseTo(0.1, 12);
    expect(room?.margin).toBeCloseTo(-0.05, 12);
    expect(floor).toMatchObject({ name: 'Room, under floor', text: expect.stringContaining('too little'), cure: { text: 'Choose larger orifices in “Room, under floor”, or the opposite in the other spaces.' } });
  });
  test('one space alone has nothing to share', () => {
    expect(checkSums(rule, layout({ nozzles: [{ at: at3(3, 2, 2.5) }, { at: at3(4, 2, 2.5) }] }), sharing(1, 1))).toEqual([]);
  });
  test('a discharge that is not known is not checked, once a network', () => {
    expect(checkSums(rule, plan, { shares: notWorked('the discharge is being worked out.') })).toMatchObject([{ verdict: 'not-checked', name: 'Network' }]);
  });
  test('a space that the discharge leaves out is not checked', () => {
    expect(checkSums(rule, plan, { shares: worked([]) }).map(({ verdict }) => verdict)).toEqual(['not-checked', 'not-checked']);
  });
});
