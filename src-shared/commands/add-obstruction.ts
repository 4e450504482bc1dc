import type { PlanPoint } from '../geometry/point.ts';
import { type Obstruction, type Ref, takeId, unknownThing } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { levelOf } from './lookup.ts';
import { nextObstructionName } from './next-name.ts';
import { soundRing, woundLeft } from './rings.ts';
import { soundCoordinate_m } from './sound-value.ts';

/** Only what is fixed and solid may be taken off the volume; anything else counts as agent space until the user says otherwise. */
const isSolid = (kind: Obstruction['kind']): boolean => kind === 'beam' || kind === 'column' || kind === 'partition';

/**
 * Draws a thing that stands in or hangs into a level.
 * @param footprint closed ring [m], either winding
 * @param bottom_m  lower face above the finished floor [m]
 * @param top_m     upper face above the finished floor [m]
 * Refuses a footprint that crosses itself or has no area, and a top that is not above the bottom.
 */
export const addObstruction = command(
  'Draw obstacle',
  (draft, levelId: string, kind: Obstruction['kind'], footprint: readonly PlanPoint[], bottom_m: number, top_m: number): readonly Ref[] => {
    const level = levelOf(draft, levelId);
    const ring = woundLeft(soundRing(footprint, 'The footprint'));
    if (!(top_m > bottom_m)) refuse('The top must be above the bottom.');
    const id = takeId(draft, 'obstruction');
    level.obstructions[id] = {
      ...unknownThing(),
      id,
      name: nextObstructionName(draft, kind),
      kind,
      footprint: ring,
      bottom_m: soundCoordinate_m(bottom_m),
      top_m: soundCoordinate_m(top_m),
      isPermeable: !isSolid(kind),
    };
    return [{ kind: 'obstruction', level: levelId, id }];
  },
);
