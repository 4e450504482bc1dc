import { describe, expect, test } from 'vitest';
import type { Enclosure } from '#shared/model/plan';
import { s02DischargeDelay as rule } from '#shared/rules/safety/s02-discharge-delay';
import { checkEnclosure, servedRoom } from '../../../support/enclosure-sums.ts';

const asked = (egress_s: number | null, delay_s: number | null, greatestDelay_s: number | null = 60, occupancy: Enclosure['occupancy'] = 'normally-occupied') =>
  checkEnclosure(rule, servedRoom({ enclosure: { occupancy, people: { exposure: '5-min', egress_s, delay_s } }, basis: { greatestDelay_s } }));

describe('S2', () => {
  test.each<[string, number | null, number | null, string, number | undefined]>([
    ['between both', 20, 30, 'ok', 10],
    ['nearer to the greatest', 20, 55, 'ok', 5],
    ['as long as people need', 30, 30, 'ok', 0],
    ['as long as allowed', 30, 60, 'ok', 0],
    ['too short', 31, 30, 'stop', -1],
    ['too long', 30, 61, 'stop', -1],
    ['too long though the way out is not known', null, 61, 'stop', -1],
    ['no delay chosen', 30, null, 'not-checked', undefined],
    ['way out not known', null, 30, 'not-checked', undefined],
  ])('%s', (_, egress_s, delay_s, verdict, margin) => {
    const finding = asked(egress_s, delay_s);
    expect(finding.verdict).toBe(verdict);
    expect(finding.margin).toBe(margin);
  });
  test('without the limit of the authority the first half alone is judged and it says so', () => {
    expect(asked(20, 30, null)).toMatchObject({ verdict: 'ok', text: 'The discharge waits 30.0 s; everybody is out after 20.0 s. The longest delay that the authority allows is not entered in the basis of design, so that part is not checked.' });
    expect(asked(31, 30, null).verdict).toBe('stop');
    expect(asked(20, 30).text).not.toContain('not checked');
  });
  test('where no delay suits both it says that the way out is too long', () => {
    expect(asked(90, 30)).toMatchObject({ text: 'The discharge waits 30.0 s, but everybody is out only after 90.0 s. The authority does not allow such a delay: the way out must be shortened.', cure: { text: 'Shorten the way out.' } });
    expect(asked(90, 100).text).toContain('People need longer than that to leave');
  });
  test('where nobody can be inside nobody has to leave, and the authority still has its say', () => {
    expect(asked(null, 0, 60, 'unoccupiable').verdict).toBe('ok');
    expect(asked(null, 61, 60, 'unoccupiable').verdict).toBe('stop');
  });
});
