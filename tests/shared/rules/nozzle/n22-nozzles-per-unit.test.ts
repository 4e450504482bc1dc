import { describe, expect, test } from 'vitest';
import { n22NozzlesPerUnit as rule } from '#shared/rules/nozzle/n22-nozzles-per-unit';
import { at3, checkOne, layout } from '../../../support/layout.ts';

const feeding = (nozzles: number, cylinders: number, nozzlesPerUnit: number | null = 2) =>
  layout({ cylinders, nozzles: Array.from({ length: nozzles }, (_, i) => ({ at: at3(1 + i, 2, 2.5) })), limits: { nozzlesPerUnit } });

describe('N22', () => {
  test.each([
    ['below the limit', 3, 2, 'ok'],
    ['on the limit', 4, 2, 'ok'],
    ['one too many', 5, 2, 'stop'],
  ])('%s', (_, nozzles, cylinders, verdict) => {
    expect(checkOne(rule, feeding(nozzles, cylinders))).toMatchObject({ verdict, measured: nozzles, limit: 4 });
  });
  test('one cylinder is spoken of as one', () => {
    expect(checkOne(rule, feeding(3, 1)).text).toBe('Feeds 3 nozzles; one cylinder may feed 2. Add a unit or take nozzles away.');
  });
  test('no cylinder or a blank limit are not checked', () => {
    expect(checkOne(rule, feeding(1, 0)).verdict).toBe('not-checked');
    expect(checkOne(rule, feeding(1, 1, null)).verdict).toBe('not-checked');
  });
});
