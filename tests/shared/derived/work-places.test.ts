import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { at3, layout } from '../../support/layout.ts';

/** A room with a nozzle on pipe, and a thing of full height across both. */
const room = (kind: 'work-place' | 'other' | undefined) =>
  layout({
    footprint: { shape: 'circle', radius_m: 5, source: 'test' },
    cylinders: 0,
    runs: [{ places: [at3(0.5, 2, 2.6), at3(3, 2, 2.6), at3(3, 2, 2.5)] }],
    nozzles: [{ at: at3(3, 2, 2.5) }],
    obstructions: kind ? [{ kind, footprint: rectangle(1, 2, planPoint(1.2, 1)), bottom_m: 0, top_m: 2.7, isPermeable: false }] : [],
  });
const said = (kind: 'work-place' | 'other' | undefined): string[] =>
  evaluate(room(kind)).findings.filter(({ rule }) => ['N1', 'N7', 'N9', 'N14', 'N15', 'P27', 'P30', 'E1'].includes(rule)).map(({ rule, name, verdict, measured }) => `${rule} ${name} ${verdict} ${measured?.toFixed(6) ?? ''}`);

describe('a work place', () => {
  test('is only where people are: nothing stops at it, hangs over it, runs into it or is taken off for it', () => {
    expect(said('work-place')).toEqual(said(undefined));
    expect(said('other')).not.toEqual(said(undefined));
  });
});
