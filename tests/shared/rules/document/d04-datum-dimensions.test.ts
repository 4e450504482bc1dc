import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planPoint } from '#shared/geometry/point';
import { d04DatumDimensions as rule } from '#shared/rules/document/d04-datum-dimensions';
import { anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

const nozzles = [{ at: at3(2, 1.5, 2.5) }];

describe('D4', () => {
  test('a nozzle is measured from two faces and the floor', () => {
    const { verdict, inputs } = checkOne(rule, layout({ nozzles, lengths: 'metric' }));
    expect(verdict).toBe('ok');
    expect(inputs?.map(({ value }) => value)).toEqual(['2.000 m', '1.500 m', '2.500 m']);
  });

  test('laid elsewhere it can still be measured', () => {
    fc.assert(fc.property(anyPlacing, (placing) => {
      expect(checkOne(rule, placedLayout({ nozzles }, placing)).verdict).toBe('ok');
    }));
  });

  test('a flat triangle has no corner to measure from', () => {
    const room = [planPoint(0, 0), planPoint(20, 0), planPoint(10, 1)];
    expect(checkOne(rule, layout({ room, nozzles: [{ at: at3(10, 0.4, 2.5) }] })).verdict).toBe('stop');
  });

  test('a nozzle in no room is left to the checks of nozzles', () => {
    expect(check(rule, layout({ nozzles: [{ at: at3(-3, 1, 2) }] }))).toEqual([]);
  });
});
