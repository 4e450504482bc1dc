import { expect, test } from 'vitest';
import { hoveredThing } from '../../../src-renderer/input/hovered-thing.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import { smallPlan } from '../canvas/support/small-plan.ts';

const { get } = makeStore(smallPlan(), startSession('test'));
const state = get();

test('the thing that a click would pick is marked', () => {
  expect(hoveredThing(state, { x: 3.02, y: 2.01 }, 0.1)).toMatchObject({ kind: 'nozzle', id: 'z1' });
  expect(hoveredThing(state, { x: 2.3, y: 2.03 }, 0.1)).toMatchObject({ kind: 'pipe', id: 'p2' });
  expect(hoveredThing(state, { x: 20, y: 20 }, 0.1)).toBeNull();
});

test('of an enclosure only its walls are', () => {
  expect(hoveredThing(state, { x: 5.2, y: 0.05 }, 0.1)).not.toBeNull();
  expect(hoveredThing(state, { x: 3.5, y: 0.8 }, 0.1)).toBeNull();
});

test('nothing is while another tool is at work or something is dragged', () => {
  const drawing = { ...state, session: { ...state.session, tool: 'pipe' as const } };
  expect(hoveredThing(drawing, { x: 3.02, y: 2.01 }, 0.1)).toBeNull();
  expect(hoveredThing({ ...state, preview: state.history.present }, { x: 3.02, y: 2.01 }, 0.1)).toBeNull();
});
