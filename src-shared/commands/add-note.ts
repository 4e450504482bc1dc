import type { PlanPoint } from '../geometry/point.ts';
import { type Ref, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { levelOf } from './lookup.ts';
import { soundPoint } from './sound-value.ts';

/** Longest note [characters]. */
const MOST = 20_000;

/** Writes a note on a level. Refuses a blank one and one of more than 20 000 characters. */
export const addNote = command('Add note', (draft, levelId: string, at: PlanPoint, text: string): readonly Ref[] => {
  const level = levelOf(draft, levelId);
  if (text.trim() === '') refuse('A note needs a text.');
  if (text.length > MOST) refuse(`A note has ${MOST} characters at most.`);
  const id = takeId(draft, 'note');
  level.notes[id] = { id, at: soundPoint(at), text };
  return [{ kind: 'note', level: levelId, id }];
});
