import type { Adjoining, Plan, RefOf } from '../model/plan.ts';
import { adjoiningSchema } from '../model/schema.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { adjoiningOf } from './lookup.ts';
import { soundRing, woundLeft } from './rings.ts';
import { soundName } from './sound-value.ts';

const PICK = { name: true, outline: true, kind: true, floor_m: true, gas: true, note: true } as const;
const FIELDS = adjoiningSchema.pick(PICK).partial();

/** Changes an adjoining space. Refuses one that has gone, a blank name, an outline that crosses itself, and a value out of range. */
export const editAdjoining = command((plan: Plan, ref: RefOf<'adjoining'>, _change: Partial<Pick<Adjoining, keyof typeof PICK>>) => `Edit ${thingsInSentence(plan, [ref])}`, (draft, ref, change) => {
  const space = adjoiningOf(draft, ref);
  if (change.name !== undefined) soundName('A space', change.name);
  const outline = change.outline && woundLeft(soundRing(change.outline, 'The outline'));
  applyChange(space, FIELDS, { ...change, outline });
});
