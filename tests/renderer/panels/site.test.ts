import { describe, expect, test } from 'vitest';
import { lastPeople } from '../../../src-renderer/panels/site/site-people.tsx';
import { nowText } from '../../../src-renderer/panels/site/now-text.ts';
import { armedPlan, armedWith, goodLog } from '../../support/armed-plan.ts';

describe('who is on site', () => {
  test('is whoever was last there', () => {
    const { keys } = armedPlan();
    expect(lastPeople(armedWith([]))).toEqual({ by: '', witness: '', instrument: '' });
    expect(lastPeople(armedWith([], 'H3'))).toEqual({ by: 'Fitter', witness: 'Inspector', instrument: '' });
    expect(lastPeople(armedWith(goodLog(keys)))).toEqual({ by: 'Fitter', witness: '', instrument: 'Meter 7' });
  });
});

test('the time of a reading is that of the clock on the wall', () => expect(nowText(new Date(2026, 2, 4, 9, 5))).toBe('2026-03-04 09:05'));
