import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { wallsOf } from '../../../src-renderer/canvas/draw-section.ts';
import { cutSection } from '../../../src-renderer/canvas/section-cut.ts';
import { findSectionPath } from '../../../src-renderer/canvas/section-path.ts';
import { handyHeight_m, heightHandleAt, sectionThingAt } from '../../../src-renderer/canvas/section-pick.ts';
import { HEIGHTS_WIDTH_px, fittedSection, heightStep_m, pannedSection, sectionPlace, sectionPx, zoomedSection } from '../../../src-renderer/canvas/section-view.ts';
import { smallPlan } from './support/small-plan.ts';

const derived = derivePlan(smallPlan());
const path = findSectionPath(derived, { level: 'level-0', cut: null, selection: [] });
if (!path) throw new Error('there is a way');
const cut = cutSection(derived, path, 'level-0');
const view = fittedSection(cut, 1000, 300);

describe('the view of a section', () => {
  test('the whole section fits, lengths and heights at one scale', () => {
    const a = sectionPx(view, { s: 0, z: cut.top_m });
    const b = sectionPx(view, { s: cut.length_m, z: cut.bottom_m });
    expect(a.x).toBeGreaterThanOrEqual(HEIGHTS_WIDTH_px);
    expect(a.y).toBeGreaterThanOrEqual(26);
    expect(b.x).toBeLessThanOrEqual(1000);
    expect(b.y).toBeLessThanOrEqual(300);
    expect((b.x - a.x) / cut.length_m).toBeCloseTo((b.y - a.y) / (cut.top_m - cut.bottom_m));
  });

  test('strip and section places undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), fc.double({ min: 0, max: 300, noNaN: true }), (x, y) => {
        const back = sectionPx(view, sectionPlace(view, { x, y }));
        expect(back.x).toBeCloseTo(x);
        expect(back.y).toBeCloseTo(y);
      }),
    );
  });

  test('zooming keeps the place under the pointer, dragging moves with it', () => {
    const pointer = { x: 400, y: 120 };
    const held = sectionPlace(view, pointer);
    expect(sectionPlace(zoomedSection(view, pointer, 2), pointer).z).toBeCloseTo(held.z);
    const moved = sectionPx(pannedSection(view, 20, -30), held);
    expect([moved.x, moved.y].map(Math.round)).toEqual([420, 90]);
  });

  test('height marks have room at every scale', () => {
    expect(heightStep_m(60, 'feet')).toBeCloseTo(0.3048);
    expect(heightStep_m(60, 'metric')).toBe(0.5);
    expect(heightStep_m(1, 'metric')).toBe(5);
  });
});

describe('what is under the pointer', () => {
  test('a nozzle comes before the pipe end it hangs on', () => {
    const at = sectionPx(view, { s: 3.35, z: 2.2 });
    expect(heightHandleAt(cut, view, at, 6)).toMatchObject({ kind: 'nozzle', ref: { id: 'z1' }, z_m: 2.2 });
  });

  test('a level pipe is taken by its run, an upright one is only selected', () => {
    expect(heightHandleAt(cut, view, sectionPx(view, { s: 2, z: 2.3 }), 4)).toMatchObject({ kind: 'pipe', ref: { id: 'p2' } });
    const riser = sectionPx(view, { s: 0.65, z: 2.1 });
    expect(heightHandleAt(cut, view, riser, 4)).toBeUndefined();
    expect(sectionThingAt(cut, view, riser, 4)).toMatchObject({ kind: 'pipe', id: 'p1' });
  });

  test('a cut solid is selected by its face', () => {
    expect(sectionThingAt(cut, view, sectionPx(view, { s: 1.9, z: 0.9 }), 4)).toMatchObject({ kind: 'obstruction', id: 'rack' });
  });

  test('empty ground holds nothing', () => {
    expect(sectionThingAt(cut, view, sectionPx(view, { s: 5, z: 1 }), 4)).toBeUndefined();
  });
});

test('dragged heights are figures that a fitter reads off', () => {
  expect(handyHeight_m(2.2337, 'feet', false)).toBeCloseTo(88 * 0.0254, 9);
  expect(handyHeight_m(2.2337, 'metric', false)).toBeCloseTo(2.235, 9);
  expect(handyHeight_m(2.2337, 'metric', true)).toBeCloseTo(2.234, 9);
});

test('the room stands between two walls, outside its finished faces', () => {
  const walls = wallsOf(cut.bays);
  expect(walls).toHaveLength(2);
  expect(walls[0]?.to_m).toBeCloseTo(0.35);
  expect(walls[1]?.from_m).toBeCloseTo(6.35);
  expect(walls[0]?.bottom_m).toBeLessThan(-0.3);
  expect(walls[0]?.top_m).toBeGreaterThan(2.4);
});
