import { expect, test } from 'vitest';
import { assemblyRunOf } from '#shared/derived/assembly-run';
import { derivePlan } from '#shared/derived/derive-plan';
import { drawAssemblyPieces } from '../../../src-renderer/canvas/draw-assembly-pieces.ts';
import { SEVERAL, assemblyPlan, part } from '../../support/assembly-layout.ts';
import { named, recordingPen } from './support/recording-pen.ts';

const INK = { warm: '#b0480c', cool: '#0f639c', paper: '#ffffff' };
/** The strokes that draw the assembly as seen from the wall's front, at a scale. */
function strokesAt(scale_px_m: number, parts = SEVERAL.parts) {
  const [network] = derivePlan(assemblyPlan({ ...SEVERAL, parts })).networks;
  const pieces = network ? assemblyRunOf(network).pieces : [];
  const { pen, calls } = recordingPen();
  drawAssemblyPieces(pen, pieces.map((piece) => ({ piece, places: piece.curve.map(({ y, z }) => ({ x: y * scale_px_m, y: -z * scale_px_m })) })), scale_px_m, INK);
  return named(calls, 'stroke');
}

test('high and low pressure differ in more than colour: what stands behind the regulator is one stroke, not two', () => {
  const before = strokesAt(400);
  const behind = strokesAt(400, [...(SEVERAL.parts ?? []), part('adapter', 0.2)]);
  const cool = behind.filter(({ stroke }) => stroke === INK.cool);
  expect(before.some(({ stroke }) => stroke === INK.cool)).toBe(false);
  expect(cool.length).toBeGreaterThan(0);
  const warm = before.filter(({ stroke, width }) => stroke === INK.warm && Number(width) >= 9);
  const inner = before.filter(({ stroke }) => stroke === INK.paper);
  // Three hoses, three check valves, the regulator and the manifold, each with its paper line within.
  expect(warm.length).toBe(8);
  expect(inner.length).toBe(8);
});

test('signs stand only where there is room', () => {
  expect(strokesAt(60).length).toBeLessThan(strokesAt(400).length);
});
