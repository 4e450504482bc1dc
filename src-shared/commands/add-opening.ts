import { type Opening, type Ref, type RefOf, type Settings, takeId, unknownOpening } from '../model/plan.ts';
import { feet_m } from '../units/convert.ts';
import { command } from './command.ts';
import { cornerAfter, cornerOf } from './lookup.ts';
import { nextOpeningName } from './next-name.ts';
import { alongWithin_m } from './rings.ts';
import { soundCoordinate_m, soundPoint, soundSize_m } from './sound-value.ts';

type Sits = readonly [bottom: number, height: number];

/** Where an opening of a kind usually sits, in round figures of the plan's own lengths: a start for the user to change, no claim. */
const USUAL_ft: Readonly<Record<Opening['kind'], Sits>> = { door: [0, 7], 'relief-vent': [6, 1], damper: [6, 1], grille: [6, 1], penetration: [6.5, 0.5], window: [3, 4] };
const USUAL_m: Readonly<Record<Opening['kind'], Sits>> = { door: [0, 2.1], 'relief-vent': [1.8, 0.3], damper: [1.8, 0.3], grille: [1.8, 0.3], penetration: [2, 0.1], window: [0.9, 1.2] };

function usualHeights(kind: Opening['kind'], lengths: Settings['lengths']): { bottom_m: number; height_m: number } {
  const [bottom, height] = (lengths === 'feet' ? USUAL_ft : USUAL_m)[kind];
  const toMetres = (value: number): number => (lengths === 'feet' ? feet_m(value) : value);
  return { bottom_m: toMetres(bottom), height_m: toMetres(height) };
}

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
    ...unknownOpening(),
    id,
    ...opening,
    kind,
    wall: corner.id,
    along_m: alongWithin_m(opening, wall, soundCoordinate_m(along_m)),
    ...usualHeights(kind, draft.settings.lengths),
    swing: kind === 'door' ? 'out' : 'none',
    hinge: 'start',
    leadsTo: 'unknown',
    closes: null,
  };
  return [{ kind: 'opening', level: ref.level, enclosure: ref.enclosure, id }];
});
