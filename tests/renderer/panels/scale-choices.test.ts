import { describe, expect, test } from 'vitest';
import { metresPerUnitBy, scaleWays } from '../../../src-renderer/panels/dialogs/scale-choices.ts';

describe('the scale of an imported floor plan', () => {
  test('a file that knows its unit may keep it', () => {
    expect(scaleWays({ kind: 'dxf', metresPerUnit: 0.001, unitsDoubt: null })[0]).toBe('file');
  });

  test('a doubtful unit is offered, never suggested', () => {
    const ways = scaleWays({ kind: 'dxf', metresPerUnit: 0.001, unitsDoubt: 'The room would be 40 km long.' });
    expect(ways[0]).not.toBe('file');
    expect(ways).toContain('file');
    expect(ways).toContain('unit');
  });

  test('paper and pictures have no unit of the site', () => {
    for (const kind of ['pdf', 'png', 'jpeg'] as const) expect(scaleWays({ kind, metresPerUnit: null, unitsDoubt: null })).not.toContain('unit');
  });

  test('metres per unit follow from the chosen way', () => {
    const report = { metresPerUnit: 0.001, width: 5000 };
    expect(metresPerUnitBy('file', report, 'mm', null)).toBe(0.001);
    expect(metresPerUnitBy('unit', report, 'in', null)).toBe(0.0254);
    expect(metresPerUnitBy('width', report, 'mm', 12.5)).toBe(0.0025);
    expect(metresPerUnitBy('width', report, 'mm', null)).toBeNull();
    expect(metresPerUnitBy('width', { ...report, width: 0 }, 'mm', 3)).toBeNull();
    expect(metresPerUnitBy('points', report, 'mm', 3)).toBeNull();
  });
});
