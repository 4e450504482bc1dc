import type { CeilingZone, RefOf } from '../model/plan.ts';
import { ceilingZoneSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { ceilingZoneOf } from './lookup.ts';
import { soundRing, woundLeft } from './rings.ts';
import { soundName, soundSize_m } from './sound-value.ts';

const PICK = { name: true, outline: true, height_m: true } as const;
const FIELDS = ceilingZoneSchema.pick(PICK).partial();

/** Changes name, outline or height of a ceiling zone. Refuses a blank name, an outline that crosses itself, and a height of 0. */
export const editCeilingZone = command('Edit ceiling zone', (draft, ref: RefOf<'ceiling-zone'>, change: Partial<Pick<CeilingZone, keyof typeof PICK>>) => {
  const zone = ceilingZoneOf(draft, ref);
  if (change.name !== undefined) soundName('A ceiling zone', change.name);
  if (change.height_m !== undefined) soundSize_m('Height', change.height_m);
  const outline = change.outline && woundLeft(soundRing(change.outline, 'The ceiling zone'));
  applyChange(zone, FIELDS, { ...change, outline });
});
