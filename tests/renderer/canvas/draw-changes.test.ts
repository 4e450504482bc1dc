import type { PlanChange } from '#shared/revisions/plan-change';
import { describe, expect, test } from 'vitest';
import { changesOn, drawChanges } from '../../../src-renderer/canvas/draw-changes.ts';
import { LIGHT_INK } from '../../../src-renderer/ink.ts';
import { drawnPieces, recordingPen } from './support/recording-pen.ts';

const view = { camera: { at: { x: 0, y: 0 }, scale_px_m: 100 }, width: 800, height: 600 };
const at = (x: number, y: number, level = 'level-0') => ({ level, places: [{ x, y }], isClosed: false });
const change = (kind: PlanChange['kind'], part: Partial<PlanChange>): PlanChange => ({ key: kind, kind, ref: null, name: kind, where: '', move: null, fields: [], before: null, now: null, ...part });
const drawn = (...changes: PlanChange[]) => {
  const { pen, calls } = recordingPen();
  drawChanges(pen, view, changes, 'level-0', null, LIGHT_INK);
  return calls;
};

describe('changes painted on the board', () => {
  test('each kind has a sign of its own, whatever its colour', () => {
    const signs = (['added', 'changed', 'removed'] as const).map((kind) => JSON.stringify(drawnPieces(drawn(change(kind, kind === 'removed' ? { before: at(0, 0) } : { now: at(0, 0) })))));
    const moved = JSON.stringify(drawnPieces(drawn(change('moved', { before: at(0, 0), now: at(0, 0) }))));
    expect(new Set([...signs, moved]).size).toBe(4);
  });
  test('the old place is dashed, the new one is not, and an arrow leads from one to the other', () => {
    const calls = drawn(change('moved', { before: at(0, 0), now: at(1, 0) }));
    const rings = calls.filter(({ name }) => name === 'arc');
    expect(rings.some(({ dash }) => dash.length > 0) && rings.some(({ dash }) => dash.length === 0)).toBe(true);
    expect(drawnPieces(calls)).toContainEqual([400, 300, 500, 300]);
    const gone = drawn(change('removed', { before: { level: 'level-0', places: [{ x: 0, y: 0 }, { x: 1, y: 0 }], isClosed: false } }));
    expect(gone.filter(({ name }) => name === 'stroke')[0]?.dash.length).toBeGreaterThan(0);
  });
  test('what lies far off, on another level or has no place is not drawn', () => {
    expect(drawn(change('added', { now: at(90, 0) }))).toEqual([]);
    expect(drawn(change('added', { now: at(0, 0, 'level-9') }))).toEqual([]);
    expect(changesOn([change('changed', {}), change('added', { now: at(0, 0) })], 'level-0').map(({ kind }) => kind)).toEqual(['added']);
  });
});
