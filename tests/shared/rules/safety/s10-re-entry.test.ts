import { describe, expect, test } from 'vitest';
import { USUAL_PROCEDURE, s10ReEntry as rule } from '#shared/rules/safety/s10-re-entry';
import { checkOne } from '../../../support/layout.ts';
import { builtRoom } from '../../../support/served-room.ts';

const asked = (procedure: string, hasMeter: boolean | null) => checkOne(rule, builtRoom({ afterDischarge: { extract: 'unknown', extractFlow_m3_s: null, procedure, hasMeter } }).plan);

describe('S10', () => {
  test.each<[string, string, boolean | null, string]>([
    ['all is there', 'Ventilate, then go in at 19.5 % oxygen.', true, 'ok'],
    ['with a comma', 'Erst bei 19,5% hinein.', true, 'ok'],
    ['the usual words', USUAL_PROCEDURE, true, 'ok'],
    ['the limit is not named', 'Ventilate, then go in.', true, 'note'],
    ['another limit is named', 'Go in at 18 % oxygen.', true, 'note'],
    ['no meter', USUAL_PROCEDURE, false, 'note'],
    ['nobody said whether a meter is there', USUAL_PROCEDURE, null, 'not-checked'],
    ['nothing is written', '  ', true, 'not-checked'],
    ['nothing is known', '', null, 'not-checked'],
  ])('%s', (_, procedure, hasMeter, verdict) => expect(asked(procedure, hasMeter).verdict).toBe(verdict));
  // 29 CFR 1910.134(b) and 1910.146(b): an oxygen-deficient atmosphere has less than 19.5 percent oxygen by volume.
  test('names its source', () => expect(asked('', null).basis.source).toContain('1910.146'));
});
