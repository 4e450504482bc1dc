import type { PlanPoint } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { underlayOf } from './lookup.ts';
import { soundAngle_rad, soundFilePoint } from './sound-value.ts';
import { refuseLocked } from './underlay-scale.ts';

/** Puts a floor plan's origin at a place, or turns the floor plan about it. Refuses while the floor plan is locked. */
export const placeUnderlay = command('Place floor plan', (draft, ref: RefOf<'underlay'>, to: { readonly at?: PlanPoint; readonly rotation_rad?: number }) => {
  const underlay = underlayOf(draft, ref);
  refuseLocked(underlay);
  if (to.at) underlay.at = soundFilePoint(to.at);
  if (to.rotation_rad !== undefined) underlay.rotation_rad = soundAngle_rad(to.rotation_rad);
});
