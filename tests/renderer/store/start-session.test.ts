import { expect, test } from 'vitest';
import { newPlan } from '#shared/model/plan';
import { startSession } from '../../../src-renderer/store/start-session.ts';

test('a window starts on the level of a new plan, selecting, with everything shown and free', () => {
  const session = startSession('w1');
  expect(session).toMatchObject({ id: 'w1', tool: 'select', stage: 'survey', selection: [], host: null });
  expect(Object.keys(newPlan().levels)).toContain(session.level);
  for (const layer of Object.values(session.layers)) expect(layer).toEqual({ visible: true, locked: false });
  expect(session.toolOptions.obstructionTop_m).toBeGreaterThan(session.toolOptions.obstructionBottom_m);
});
