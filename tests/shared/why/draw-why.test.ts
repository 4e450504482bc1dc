import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import type { Finding } from '#shared/rules/finding';
import { drawWhy } from '#shared/why/draw-why';
import { whatWouldChange } from '#shared/why/what-would-change';
import type { WhyDrawing } from '#shared/why/why-drawing';
import { type LayoutSpec, anyPlacing, at3, layout, placedLayout } from '../../support/layout.ts';

const SPEC: LayoutSpec = {
  height_m: 2.7,
  runs: [{ places: [at3(0.3, 2, 2), at3(0.3, 2, 2.5), at3(0.2, 3.8, 2.5), at3(0.2, 3.8, 2.1)] }],
  nozzles: [{ at: at3(0.2, 3.8, 2.1) }],
};
function shown(plan: Plan, rule: string): { readonly finding: Finding; readonly drawing: WhyDrawing } {
  const { findings, derived } = evaluate(plan);
  const finding = findings.find((each) => each.rule === rule);
  const drawing = finding && drawWhy(finding, derived);
  if (!finding || !drawing) throw new Error(`${rule} has no drawing.`);
  return { finding, drawing };
}
const lines = ({ shapes }: WhyDrawing, as: string) => shapes.flatMap((shape) => (shape.kind === 'line' && shape.as === as ? [shape] : []));

describe('the small drawing of a finding', () => {
  test('shows a distance to a wall from above, with a circle at its limit', () => {
    const { drawing, finding } = shown(layout(SPEC), 'N1');
    const [measure] = lines(drawing, 'measure');
    expect(drawing.view).toBe('plan');
    expect(measure && Math.hypot(measure.a.x - measure.b.x, measure.a.y - measure.b.y)).toBeCloseTo(finding.measured ?? Number.NaN, 6);
    expect(drawing.shapes).toContainEqual(expect.objectContaining({ kind: 'circle', as: 'limit', radius_m: finding.limit }));
    expect(drawing.shapes).toContainEqual(expect.objectContaining({ kind: 'text', words: expect.stringContaining('mm') }));
  });
  test('shows a drop below the ceiling from the side, floor and ceiling in it', () => {
    const { drawing, finding } = shown(layout(SPEC), 'N2');
    const [measure] = lines(drawing, 'measure');
    expect(drawing.view).toBe('section');
    expect(measure && Math.abs(measure.a.y - measure.b.y)).toBeCloseTo(finding.measured ?? Number.NaN, 6);
    expect(lines(drawing, 'floor').every(({ a, b }) => a.y === 0 && b.y === 0)).toBe(true);
    expect(lines(drawing, 'ceiling').every(({ a, b }) => Math.abs(a.y - 2.7) < 1e-9 && Math.abs(b.y - 2.7) < 1e-9)).toBe(true);
    expect(lines(drawing, 'ceiling').length).toBeGreaterThan(0);
  });
  test('has every finding with a place in it, wherever the building stands', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const { findings, derived } = evaluate(placedLayout(SPEC, placing));
        for (const finding of findings) {
          const drawing = drawWhy(finding, derived);
          expect(drawing !== undefined).toBe(finding.place !== undefined);
          if (!drawing || !finding.place) continue;
          const { minX, minY, maxX, maxY } = drawing.bounds;
          expect([minX, minY, maxX, maxY].every(Number.isFinite)).toBe(true);
          if (drawing.view === 'plan') for (const { x, y } of finding.place.at) expect(x >= minX && x <= maxX && y >= minY && y <= maxY).toBe(true);
        }
      }),
      { numRuns: 5 },
    );
  });
  test('is none where a finding has no place', () => {
    const { findings, derived } = evaluate(layout(SPEC));
    const { place: _, ...bare } = findings[0] as Finding;
    expect(drawWhy(bare, derived)).toBeUndefined();
  });
});

describe('what would change the verdict', () => {
  const finding = shown(layout(SPEC), 'N1').finding;
  const with_ = (part: Partial<Finding>): string[] => whatWouldChange({ ...finding, cure: undefined, ...part }, 'metric');
  test('of a missed least value is more of it', () => {
    expect(with_({ verdict: 'stop', measured: 0.2, limit: 0.254, margin: -0.054 })).toEqual(['It is kept once the measured value is 54 mm longer: 254 mm or more.']);
  });
  test('of a missed greatest value is less of it', () => {
    expect(with_({ verdict: 'stop', measure: 'count', measured: 12, limit: 9, margin: -3 })[0]).toContain('3 fewer: 9 or less');
  });
  test('of a kept one is as much as it has to spare', () => {
    expect(with_({ verdict: 'ok', measured: 0.3, limit: 0.254, margin: 0.046 })[0]).toMatch(/no longer be kept once the measured value is more than 46 mm shorter/);
  });
  test('of one without data is that data', () => {
    expect(with_({ verdict: 'not-checked', measured: undefined, limit: undefined, margin: undefined })).toEqual(['It is asked as soon as what is missing has been entered.']);
  });
  test('ends with its cure', () => {
    expect(with_({ verdict: 'stop', cure: { kind: 'advice', text: 'Move it' } }).at(-1)).toBe('By hand: Move it.');
  });
});
