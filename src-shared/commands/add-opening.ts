import { type Opening, type Ref, type RefOf, takeId } from '../model/plan.ts';
import { command } from './command.ts';
import { cornerAfter, cornerOf } from './lookup.ts';
import { nextOpeningName } from './next-name.ts';
import { alongWithin_m } from './rings.ts';
import { soundCoordinate_m, soundPoint, soundSize_m } from './sound-value.ts';

/** Where an opening of a kind usually sits [m]: a start for the user to change, no claim. */
const USUAL: Readonly<Record<Opening['kind'], { readonly bottom_m: number; readonly height_m: number }>> = {
  door: { bottom_m: 0, height_m: 2.1336 },
  'relief-vent': { bottom_m: 1.8, height_m: 0.3 },
  damper: { bottom_m: 1.8, height_m: 0.3 },
  grille: { bottom_m: 1.8, height_m: 0.3 },
  penetration: { bottom_m: 2, height_m: 0.1 },
  window: { bottom_m: 0.9, height_m: 1.2 },
};

/**
 * Puts an opening into a wall. What it leads to, its free area and whether it closes are not known yet.
 * @param along_m middle of the opening from the wall's corner [m]; moved into the wall where it would stick out
 * Refuses an opening without width or wider than its wall.
 */
export const addOpening = command('Add opening', (draft, ref: RefOf<'wall'>, kind: Opening['kind'], along_m: number, width_m: number): readonly Ref[] => {
  const { enclosure, ring, index, corner } = cornerOf(draft, ref);
  const opening = { name: nextOpeningName(draft, kind), width_m: soundSize_m('Width', width_m) };
  const wall = { a: soundPoint(corner), b: soundPoint(cornerAfter(ring, index)) };
  const id = takeId(draft, 'opening');
  enclosure.openings[id] = {
    id,
    ...opening,
    kind,
    wall: corner.id,
    along_m: alongWithin_m(opening, wall, soundCoordinate_m(along_m)),
    ...USUAL[kind],
    swing: kind === 'door' ? 'out' : 'none',
    hinge: 'start',
    freeArea_m2: null,
    leadsTo: 'unknown',
    closes: null,
  };
  return [{ kind: 'opening', level: ref.level, enclosure: ref.enclosure, id }];
});
