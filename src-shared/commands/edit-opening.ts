import { distance_m } from '../geometry/point.ts';
import type { Opening, Plan, RefOf } from '../model/plan.ts';
import { openingSchema } from '../model/schema.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { enclosureOf, openingOf } from './lookup.ts';
import { refuseTooWide, wallLines } from './rings.ts';
import { soundName, soundSize_m } from './sound-value.ts';

const PICK = {
  name: true, kind: true, wall: true, along_m: true, width_m: true, bottom_m: true, height_m: true, swing: true, hinge: true, freeArea_m2: true, leadsTo: true, closes: true, undercut_m: true, ventPath: true, crossing: true,
} as const;
const FIELDS = openingSchema.pick(PICK).partial();

/**
 * Changes an opening, or hands it to another wall of its enclosure. A door that becomes anything else loses its
 * swing. Refuses what would stick out of its wall, a wall that has gone, a blank name, and a size of 0.
 */
export const editOpening = command((plan: Plan, ref: RefOf<'opening'>, _change: Partial<Pick<Opening, keyof typeof PICK>>) => `Edit ${thingsInSentence(plan, [ref])}`, (draft, ref, change) => {
  const opening = openingOf(draft, ref);
  const before = opening.kind;
  if (change.name !== undefined) soundName('An opening', change.name);
  if (change.width_m !== undefined) soundSize_m('Width', change.width_m);
  if (change.height_m !== undefined) soundSize_m('Height', change.height_m);
  applyChange(opening, FIELDS, change);
  if (opening.kind !== 'door') opening.swing = 'none';
  else if (before !== 'door' && change.swing === undefined) opening.swing = 'out';
  const wall = wallLines(enclosureOf(draft, ref.level, ref.enclosure)).get(opening.wall) ?? refuse('This wall is no longer in the plan.');
  if (change.along_m === undefined && change.width_m === undefined && change.wall === undefined) return;
  refuseTooWide(opening, wall);
  const half_m = opening.width_m / 2;
  const length_m = distance_m(wall.a, wall.b);
  if (opening.along_m < half_m - 1e-9 || opening.along_m > length_m - half_m + 1e-9) refuse(`“${opening.name}” would stick out of its wall. Move it along, or make it narrower.`);
});
