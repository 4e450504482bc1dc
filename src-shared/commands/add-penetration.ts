import { type Ref, type RefOf, takeId, unknownOpening } from '../model/plan.ts';
import { command } from './command.ts';
import { cornerAfter, cornerOf } from './lookup.ts';
import { nextOpeningName } from './next-name.ts';
import { alongWithin_m } from './rings.ts';
import { soundCoordinate_m, soundPoint, soundSize_m } from './sound-value.ts';

/**
 * Draws the hole in a wall through which a pipe goes, as wide and as high as its sleeve. What fire rating the wall has
 * and what seals it stay open: who designs the building says so.
 * @param along_m   middle of the hole from the wall's corner [m]
 * @param middle_m  its middle above the finished floor [m]
 * @param sleeve_m  inside of the sleeve [m]
 * Refuses a sleeve of no size or wider than its wall.
 */
export const addPenetration = command('Draw penetration', (draft, ref: RefOf<'wall'>, along_m: number, middle_m: number, sleeve_m: number): readonly Ref[] => {
  const { enclosure, ring, index, corner } = cornerOf(draft, ref);
  const opening = { name: nextOpeningName(draft, 'penetration'), width_m: soundSize_m('Sleeve', sleeve_m) };
  const wall = { a: soundPoint(corner), b: soundPoint(cornerAfter(ring, index)) };
  const id = takeId(draft, 'opening');
  enclosure.openings[id] = {
    ...unknownOpening(),
    id,
    ...opening,
    kind: 'penetration',
    wall: corner.id,
    along_m: alongWithin_m(opening, wall, soundCoordinate_m(along_m)),
    bottom_m: soundCoordinate_m(middle_m - sleeve_m / 2),
    height_m: sleeve_m,
    swing: 'none',
    hinge: 'start',
    leadsTo: 'unknown',
    closes: null,
    crossing: { sleeve_m, rating: '', seal: '' },
  };
  return [{ kind: 'opening', level: ref.level, enclosure: ref.enclosure, id }];
});
