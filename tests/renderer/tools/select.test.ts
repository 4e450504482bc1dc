import { describe, expect, test } from 'vitest';
import { type Plan, type Ref, ringOf } from '#shared/model/plan';
import { lineDrawing } from '../../support/line-drawing.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { type ToolBench, toolBench } from '../../support/tool-bench.ts';

const built = () =>
  planBuilder()
    .room(6, 4, 2.7)
    .opening(0, 2, 1)
    .obstruction('rack', [{ x: 4.5, y: 1 }, { x: 5.5, y: 1 }, { x: 5.5, y: 2 }, { x: 4.5, y: 2 }], 0, 2)
    .dimension({ x: 0, y: -1 }, { x: 6, y: -1 }, -0.5)
    .note(1, 6, 'Ask')
    .network()
    .cylinder(0.14, 3, Math.PI)
    .run([place3(0.14, 3, 2), place3(0.14, 3, 2.4), place3(3.5, 3, 2.4), place3(3.5, 1, 2.4), place3(3.5, 1, 2.2)])
    .nozzle(3.5, 1, 2.2);
const bench = (session: { selection?: readonly Ref[] } = {}, options = {}) => {
  const b = built();
  return { b, drawn: toolBench(b.plan, options, undefined, session) };
};
const selection = (drawn: ToolBench) => drawn.store.get().session.selection;
const room = (plan: Plan) => {
  const found = Object.values(plan.levels['level-0']?.enclosures ?? {})[0];
  if (!found) throw new Error('The room has gone.');
  return found;
};
const network = (plan: Plan) => {
  const found = Object.values(plan.networks)[0];
  if (!found) throw new Error('The network has gone.');
  return found;
};
const nodeAt = (plan: Plan, id: string) => network(plan).nodes[id]?.at;

describe('selecting', () => {
  test('a click takes one, Shift or Ctrl adds and takes off, empty ground lets go', () => {
    const { b, drawn } = bench();
    drawn.click(3.5, 1);
    expect(selection(drawn)).toEqual([b.lastNozzle]);
    drawn.click(5, 1.5, { shift: true });
    expect(selection(drawn)).toEqual([b.lastNozzle, b.onLevel('obstruction')]);
    drawn.click(3.5, 1, { mod: true });
    expect(selection(drawn)).toEqual([b.onLevel('obstruction')]);
    drawn.click(12, 12, { shift: true });
    expect(selection(drawn)).toHaveLength(1);
    drawn.click(12, 12);
    expect(selection(drawn)).toEqual([]);
    expect(drawn.steps()).toBe(0);
  });

  test('a click on the floor takes the enclosure, then its walls and corners can be taken', () => {
    const { b, drawn } = bench();
    expect(selection(drawn.click(1, 1.5))).toEqual([b.enclosure]);
    expect(selection(drawn.click(3, 4.03))).toEqual([b.wall(2)]);
    expect(selection(drawn.click(6, 4.03))).toEqual([b.corner(2)]);
  });

  test('a box takes what is wholly inside, Shift adds it', () => {
    const { b, drawn } = bench();
    drawn.drag([3, 0.5], [6.4, 2.5]);
    expect(selection(drawn).map(({ kind }) => kind)).toEqual(['nozzle', 'pipe', 'obstruction']);
    drawn.drag([0.5, 5.5], [1.5, 6.5], { shift: true });
    expect(selection(drawn)).toContainEqual(b.onLevel('note'));
    expect(selection(drawn)).toHaveLength(4);
  });

  test('Shift on the edge of a room adds the wall there to what is set by it, else the room', () => {
    const { b, drawn } = bench();
    drawn.click(5, 1.5).click(3, 4.03, { shift: true });
    expect(selection(drawn)).toEqual([b.onLevel('obstruction'), b.wall(2)]);
    drawn.click(12, 12).click(3, -1.5).click(3, 4.03, { shift: true });
    expect(selection(drawn)).toEqual([b.onLevel('dimension'), b.enclosure]);
  });

  test('of pipe over pipe the upper, with another click the lower, and round again; the chosen one is dragged', () => {
    const two = planBuilder()
      .room(8, 6, 2.7)
      .network()
      .run([place3(1, 3, -0.2), place3(7, 3, -0.2)])
      .run([place3(1, 3, 2.4), place3(7, 3, 2.4)]);
    const [lower, upper] = Object.values(network(two.plan).pipes);
    const drawn = toolBench(two.plan);
    const clicked = () => selection(drawn.click(4.3, 3.01)).map(({ id }) => id);
    expect([clicked(), clicked(), clicked()]).toEqual([[upper?.id], [lower?.id], [upper?.id]]);
    expect(drawn.runner.look().hint).toContain('click again');
    expect(drawn.move(4.3, 5).runner.look().hint).not.toContain('click again');
    clicked();
    drawn.drag([4.3, 3], [4.3, 3.5]);
    expect(Object.values(network(drawn.plan()).nodes).map(({ at }) => [at.y, at.z])).toEqual([[3.5, -0.2], [3.5, -0.2], [3, 2.4], [3, 2.4]]);
  });

  test('Escape lets go', () => {
    const { drawn } = bench();
    expect(selection(drawn.click(3.5, 1).escape())).toEqual([]);
  });
});

describe('dragging makes one step', () => {
  test('a nozzle, its drop with it', () => {
    const { b, drawn } = bench();
    drawn.press(3.5, 1).move(3.2, 1.4);
    expect(drawn.store.get().preview).not.toBeNull();
    expect(drawn.steps()).toBe(0);
    drawn.release(2.5, 1.2);
    const node = network(drawn.plan()).nozzles[b.lastNozzle.id]?.node ?? '';
    expect(nodeAt(drawn.plan(), node)).toEqual({ x: 2.5, y: 1.2, z: 2.2 });
    expect(Object.values(network(drawn.plan()).nodes).filter(({ at }) => at.x === 2.5 && at.y === 1.2)).toHaveLength(2);
    expect(drawn.steps()).toBe(1);
    expect(drawn.store.get().preview).toBeNull();
    expect(selection(drawn)).toEqual([b.lastNozzle]);
    drawn.store.undo();
    expect(drawn.plan()).toEqual(b.plan);
  });

  test('a pipe node stretches its runs; what cannot stay square is refused in words', () => {
    const { b, drawn } = bench();
    const corner = b.nodeAt(3.5, 3, 2.4);
    drawn.press(3.52, 3.01).move(3, 3.01);
    expect(drawn.runner.look().hint).toContain('hold Ctrl to take along all that follows');
    drawn.release(2.82, 3.01);
    expect(nodeAt(drawn.plan(), corner.id)).toMatchObject({ x: expect.closeTo(2.8, 9), y: 3, z: 2.4 });
    expect(drawn.steps()).toBe(1);
    expect(drawn.drag([2.8, 3], [2.8, 3.4]).refusal()).toContain('leave the cylinders');
    expect(drawn.steps()).toBe(1);
  });

  test('with Ctrl all that follows goes along', () => {
    const { b, drawn } = bench();
    const { node } = network(drawn.plan()).nozzles[b.lastNozzle.id] ?? { node: '' };
    const before = nodeAt(drawn.plan(), node);
    const corner = b.nodeAt(3.5, 3, 2.4);
    drawn.press(3.52, 3.01).move(3, 3.01, { mod: true });
    expect(drawn.runner.look().hint).toContain('All that follows goes along');
    drawn.release(2.82, 3.01, { mod: true });
    expect(nodeAt(drawn.plan(), corner.id)?.x).toBeCloseTo(2.8, 9);
    expect(nodeAt(drawn.plan(), node)?.x).toBeCloseTo((before?.x ?? 0) - 0.7, 9);
    drawn.store.undo();
    expect(drawn.plan()).toEqual(b.plan);
  });

  test('a pipe node alone, what stands above it with it', () => {
    const { b, drawn } = bench();
    drawn.store.session(({ toolOptions }) => ({ toolOptions: { ...toolOptions, pipeMove: 'alone' } }));
    const corner = b.nodeAt(3.5, 3, 2.4);
    drawn.drag([3.52, 3.01], [2.82, 3.41]);
    expect(nodeAt(drawn.plan(), corner.id)).toMatchObject({ x: expect.closeTo(2.8, 9), y: expect.closeTo(3.4, 9), z: 2.4 });
    expect(drawn.steps()).toBe(1);
  });

  test('a run slides sideways and stays square', () => {
    const { b, drawn } = bench();
    const ends = [b.nodeAt(3.5, 3, 2.4).id, b.nodeAt(3.5, 1, 2.4).id];
    drawn.drag([3.5, 2], [2.9, 2.3]);
    for (const id of ends) expect(nodeAt(drawn.plan(), id)?.x).toBeCloseTo(2.9, 9);
    expect(nodeAt(drawn.plan(), ends[1] ?? '')?.y).toBeCloseTo(1, 9);
    expect(drawn.steps()).toBe(1);
  });

  test('a cylinder along its wall, the pipe on it with it', () => {
    const { b, drawn } = bench();
    drawn.drag([0.14, 3], [0.3, 2]);
    const cylinder = network(drawn.plan()).cylinders[b.inNetwork('cylinder').id];
    expect(cylinder?.at.y).toBeCloseTo(2, 9);
    expect(nodeAt(drawn.plan(), network(drawn.plan()).source ?? '')).toMatchObject({ x: expect.closeTo(cylinder?.at.x ?? 0, 9), y: expect.closeTo(2, 9) });
    expect(drawn.steps()).toBe(1);
  });

  test('an opening along its wall, never past its ends', () => {
    const { b, drawn } = bench();
    drawn.drag([2, 0], [3.3, 0.6]);
    expect(room(drawn.plan()).openings[b.lastOpening.id]?.along_m).toBeCloseTo(3.3, 9);
    drawn.drag([3.3, 0], [9, 0]);
    expect(room(drawn.plan()).openings[b.lastOpening.id]?.along_m).toBeCloseTo(5.5, 9);
    expect(drawn.steps()).toBe(2);
  });

  test('a corner and a wall of the selected enclosure', () => {
    const { drawn } = bench();
    drawn.click(1, 1.5).drag([6.02, 4.01], [7.02, 5.01]);
    expect(ringOf(room(drawn.plan()).outline)[2]).toMatchObject({ x: expect.closeTo(7, 9), y: expect.closeTo(5, 9) });
    drawn.drag([0, 2], [-1, 2.4]);
    expect(ringOf(room(drawn.plan()).outline)[0]?.x).toBeCloseTo(-1, 9);
    expect(drawn.steps()).toBe(2);
  });

  test('a dimension line, a note, an obstruction by its nearest corner', () => {
    const { b, drawn } = bench();
    drawn.drag([3, -1.5], [3.4, -2]);
    expect(drawn.plan().levels['level-0']?.dimensions[b.onLevel('dimension').id]?.offset_m).toBeCloseTo(-1, 9);
    drawn.drag([1, 6], [2, 7]);
    expect(drawn.plan().levels['level-0']?.notes[b.onLevel('note').id]?.at).toEqual({ x: 2, y: 7 });
    drawn.drag([5.45, 1.95], [5.93, 3.97]);
    const footprint = drawn.plan().levels['level-0']?.obstructions[b.onLevel('obstruction').id]?.footprint ?? [];
    // Its corner is caught by the corner of the room.
    expect(Math.max(...footprint.map(({ x }) => x))).toBeCloseTo(6, 9);
    expect(Math.max(...footprint.map(({ y }) => y))).toBeCloseTo(4, 9);
    expect(drawn.steps()).toBe(3);
  });

  test('a selection as a whole', () => {
    const b = built();
    const drawn = toolBench(b.plan, { snapPlan: false }, undefined, { selection: [b.onLevel('obstruction'), b.onLevel('note')] });
    drawn.drag([5, 1.5], [6, 2]);
    expect(drawn.plan().levels['level-0']?.notes[b.onLevel('note').id]?.at).toEqual({ x: 2, y: 6.5 });
    expect(drawn.steps()).toBe(1);
    expect(selection(drawn)).toEqual([b.onLevel('obstruction'), b.onLevel('note')]);
  });

  test('a floor plan by an end of its lines, only while it is selected and unlocked', () => {
    const b = planBuilder().underlay();
    const drawing = lineDrawing([[2, 2, 8, 2]]);
    const drawn = toolBench(b.plan, {}, drawing);
    expect(drawn.drag([2.03, 2.02], [5.23, 5.12]).steps()).toBe(0);
    expect(selection(drawn.click(2.03, 2.02))).toEqual([b.onLevel('underlay')]);
    drawn.drag([2.03, 2.02], [5.23, 5.12]);
    expect(drawn.plan().levels['level-0']?.underlays[b.onLevel('underlay').id]?.at).toMatchObject({ x: expect.closeTo(3.2, 9), y: expect.closeTo(3.1, 9) });
    const locked = planBuilder().underlay();
    for (const each of Object.values(locked.plan.levels['level-0']?.underlays ?? {})) each.locked = true;
    expect(toolBench(locked.plan, {}, drawing, { selection: [locked.onLevel('underlay')] }).drag([2.03, 2.02], [5.2, 5.1]).steps()).toBe(0);
  });

  test('by a typed length and direction', () => {
    const { b, drawn } = bench();
    drawn.press(1, 6).move(1.3, 6.1).type({ length: 2, angle: 0 });
    expect(drawn.plan().levels['level-0']?.notes[b.onLevel('note').id]?.at).toEqual({ x: 3, y: 6 });
    expect(drawn.release(9, 9).steps()).toBe(1);
  });

  test('by a typed length along the only direction it has, toward the pointer or with a minus away from it', () => {
    const { b, drawn } = bench();
    drawn.click(1, 1.5).press(6, 1.5).move(6.5, 1.7);
    expect(drawn.runner.look().asks).toEqual(['length']);
    expect(drawn.runner.look().sketch.labels?.[0]?.text).toBe('500 mm');
    drawn.type({ length: 1 });
    expect(ringOf(room(drawn.plan()).outline)[1]).toEqual({ x: 7, y: 0 });
    drawn.press(7, 1.5).move(7.5, 1.2).type({ length: -2 });
    expect(ringOf(room(drawn.plan()).outline)[1]?.x).toBeCloseTo(5, 12);
    drawn.press(2, 0).move(1.6, 0.3).type({ length: 0.75 });
    expect(room(drawn.plan()).openings[b.lastOpening.id]?.along_m).toBeCloseTo(1.25, 12);
    drawn.press(3.5, 2).move(3.3, 2.6).type({ length: 0.5 });
    expect(nodeAt(drawn.plan(), b.nodeAt(3.5, 3, 2.4).id)?.x).toBeCloseTo(3, 12);
    drawn.press(3, -1.5).move(3.4, -1.7).type({ length: 0.25 });
    expect(drawn.plan().levels['level-0']?.dimensions[b.onLevel('dimension').id]?.offset_m).toBeCloseTo(-0.75, 12);
    expect(drawn.steps()).toBe(5);
  });

  test('square with Shift', () => {
    const { b, drawn } = bench();
    drawn.press(1, 6).release(3, 6.4, { shift: true });
    expect(drawn.plan().levels['level-0']?.notes[b.onLevel('note').id]?.at).toEqual({ x: 3, y: 6 });
  });
});

describe('what does not move', () => {
  test('a press that hardly moves is a click', () => {
    const { b, drawn } = bench();
    expect(drawn.press(3.5, 1).release(3.53, 1.01).steps()).toBe(0);
    expect(selection(drawn)).toEqual([b.lastNozzle]);
  });

  test('Escape puts a drag back, and letting go afterwards does nothing', () => {
    const { b, drawn } = bench();
    drawn.press(3.5, 1).move(2, 2).escape();
    expect(drawn.store.get().preview).toBeNull();
    expect(drawn.release(2, 2).steps()).toBe(0);
    expect(drawn.plan()).toBe(b.plan);
  });

  test('pipe that would take a locked nozzle along', () => {
    const b = built();
    const { layers } = toolBench(b.plan).store.get().session;
    const drawn = toolBench(b.plan, {}, undefined, { layers: { ...layers, nozzles: { visible: true, locked: true } } });
    drawn.drag([3.5, 1], [4.5, 1]);
    expect(drawn.plan()).toBe(b.plan);
    expect(drawn.refusal()).toContain('nozzles are locked');
    expect(drawn.store.get().preview).toBeNull();
    drawn.drag([2, 3], [2, 3.4]);
    expect(drawn.steps()).toBe(1);
  });

  test('a drag that the plan refuses is put back, with the reason', () => {
    const { b, drawn } = bench();
    drawn.click(1, 1.5).drag([6.02, 4.01], [3, -1]);
    expect(drawn.plan()).toBe(b.plan);
    expect(drawn.refusal()).toContain('cross');
    expect(drawn.store.get().preview).toBeNull();
  });

  test('the floor of an enclosure: a drag there is a box', () => {
    const { b, drawn } = bench();
    drawn.click(1, 1.5).drag([1, 1.5], [2, 2]);
    expect(drawn.plan()).toBe(b.plan);
    expect(selection(drawn)).toEqual([]);
  });
});

describe('a double click', () => {
  test('puts a corner into a wall of the selected enclosure', () => {
    const { drawn } = bench();
    drawn.doubleClick(1, 4.02);
    expect(room(drawn.plan()).outline).toHaveLength(5);
    expect(ringOf(room(drawn.plan()).outline)).toContainEqual({ x: 1, y: 4 });
    expect(drawn.steps()).toBe(1);
    expect(selection(drawn)).toMatchObject([{ kind: 'corner' }]);
  });

  test('puts a node into a pipe', () => {
    const { drawn } = bench();
    drawn.doubleClick(2, 3.02);
    expect(Object.values(network(drawn.plan()).nodes).map(({ at }) => at)).toContainEqual({ x: 2, y: 3, z: 2.4 });
    expect(drawn.steps()).toBe(1);
  });

  test('that began in another tool does nothing', () => {
    const { drawn } = bench();
    drawn.use('enclosure').click(10, 0).click(12, 0).click(12, 2).doubleClick(10.02, 0.02);
    expect(drawn.steps()).toBe(1);
    expect(Object.values(drawn.plan().levels['level-0']?.enclosures ?? {})[1]?.outline).toHaveLength(3);
  });
});
