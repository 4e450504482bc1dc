import { describe, expect, test } from 'vitest';
import { coarserUntil, ordinaryScales, parseScale, scaleName } from '#shared/paper/scales';

describe('scales', () => {
  test.each([
    // Inches on paper to the foot on site: 12 in over the paper length (ratio = 12 / inches).
    [12 / 0.5, '1/2" = 1\'-0"'],
    [12 / 0.375, '3/8" = 1\'-0"'],
    [12 / 0.25, '1/4" = 1\'-0"'],
    [12 / 0.1875, '3/16" = 1\'-0"'],
    [12 / 0.125, '1/8" = 1\'-0"'],
  ])('1:%i is %s', (ratio, name) => {
    expect(scaleName(ratio, 'feet')).toBe(name);
    expect(ordinaryScales('feet')).toContain(ratio);
    expect(parseScale(name)).toBe(ratio);
    expect(parseScale(name.split(' = ')[0] ?? '')).toBe(ratio);
  });

  test('metric scales are named as ratios, and so is one that is none of the usual', () => {
    expect(ordinaryScales('metric')).toEqual([20, 25, 50, 75, 100, 200]);
    expect(scaleName(50, 'metric')).toBe('1:50');
    expect(scaleName(48, 'metric')).toBe('1:48');
    expect(scaleName(37, 'feet')).toBe('1:37');
  });

  test.each([
    ['1:50', 50],
    [' 1 : 75 ', 75],
    ['100', 100],
    ['1/4″ = 1′-0″', 48],
    ['0', undefined],
    ['1:0.5', undefined],
    ['5000', undefined],
    ['big', undefined],
    ['', undefined],
    ['-50', undefined],
  ])('%j is read as %s', (text, scale) => {
    expect(parseScale(text)).toBe(scale);
  });

  test('a scale grows until it is coarse enough', () => {
    expect(coarserUntil((scale) => scale >= 100, 50)).toBe(113);
    expect(coarserUntil(() => true, 50)).toBe(50);
  });
});
