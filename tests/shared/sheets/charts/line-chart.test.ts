import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawBandChart } from '#shared/sheets/charts/band-chart';
import { type LineChart, drawLineChart } from '#shared/sheets/charts/line-chart';
import { PAPERS } from '#shared/paper/papers';
import { boxHolds, markBox } from '#shared/sheets/text-box';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { textOverlaps } from '../../../support/text-overlaps.ts';

const SIZES = typeSizesOf(PAPERS.A3);
const chart = (more: Partial<LineChart> = {}): LineChart => ({
  title: 'Flow [kg/s] against time [s]',
  curves: [{ name: 'flow', points: [[0, 0.3], [50, 0.34], [100, 0.1], [170, 0]] }],
  fromX: 0,
  toX: 170,
  holdsY: [0],
  levels: [],
  moments: [],
  ...more,
});
const marksOf = (of: LineChart) => [...drawLineChart(of, 140, 44, SIZES).draw(10, 20)];

describe('charts', () => {
  test('curves, limits and their names keep inside the chart and clear of each other', () => {
    const point = fc.tuple(fc.double({ min: 0, max: 170, noNaN: true }), fc.double({ min: 0, max: 1000, noNaN: true }));
    const curve = fc.record({ name: fc.constantFrom('room', 'before the pipe', 'in the cylinder'), points: fc.array(point, { minLength: 2, maxLength: 20 }).map((points) => [...points].sort((a, b) => a[0] - b[0])) });
    const level = fc.record({ name: fc.constantFrom('95 % of C: 38.3 %', 'bears 250 Pa'), at: fc.double({ min: 0, max: 1000, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(curve, { minLength: 1, maxLength: 4 }), fc.array(level, { maxLength: 2 }), fc.double({ min: 0, max: 170, noNaN: true }), (curves, levels, at) => {
        const marks = marksOf(chart({ curves, levels, moments: [{ name: 'limit 120 s', at }] }));
        for (const mark of marks) expect(boxHolds({ left: 9, top: 19, right: 151, bottom: 65 }, markBox(mark)), JSON.stringify(mark)).toBe(true);
        expect(textOverlaps(marks)).toEqual([]);
      }),
    );
  });

  test('several curves are told apart by dashes, which their names repeat', () => {
    const curves = ['a', 'b', 'c'].map((name, i) => ({ name, points: [[0, i], [170, i]] as const }));
    const dashes = marksOf(chart({ curves })).flatMap((mark) => (mark.kind === 'line' && mark.stroke.width_mm >= 0.5 ? [String(mark.stroke.dash_mm)] : []));
    expect(dashes).toHaveLength(6);
    expect(new Set(dashes).size).toBe(3);
  });

  test('a curve that leaves the chart is cut at its edge, a limit beyond it is left out', () => {
    const marks = marksOf(chart({ toX: 100, moments: [{ name: 'limit 300 s', at: 300 }] }));
    expect(marks.some((mark) => mark.kind === 'text' && mark.text === 'limit 300 s')).toBe(false);
    for (const mark of marks) expect(markBox(mark).right).toBeLessThanOrEqual(151);
  });

  test('a band that holds nothing says so, and the room stands on its volume', () => {
    const { draw, height_mm } = drawBandChart(
      {
        title: 'Volumes that full cylinders fit [m³]',
        bands: [
          { name: '1 cylinder', least: 38.95, greatest: 40.82, isDrawn: true },
          { name: '2 cylinders', least: 82, greatest: 80, isDrawn: false },
        ],
        value: 39.87,
        valueName: 'this enclosure 39.87 m³',
      },
      280,
      SIZES,
    );
    const marks = [...draw(0, 0)];
    expect(marks.some((mark) => mark.kind === 'text' && mark.text === 'none')).toBe(true);
    expect(textOverlaps(marks)).toEqual([]);
    for (const mark of marks) expect(boxHolds({ left: -1, top: -1, right: 281, bottom: height_mm }, markBox(mark)), JSON.stringify(mark)).toBe(true);
  });
});
