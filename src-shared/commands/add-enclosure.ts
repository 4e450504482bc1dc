import type { PlanPoint } from '../geometry/point.ts';
import { type Ref, takeId, unknownRoom } from '../model/plan.ts';
import { command } from './command.ts';
import { levelOf } from './lookup.ts';
import { nextName } from './next-name.ts';
import { cornersFor, soundRing, woundLeft } from './rings.ts';
import { soundName } from './sound-value.ts';

/**
 * Draws an enclosure along its finished wall faces. Nothing about it is known yet but its outline.
 * @param outline closed ring [m], either winding, last corner not repeated
 * @param name    "Room 1" and so on unless given
 * Refuses an outline that crosses or touches itself, has fewer than three corners, or no area.
 */
export const addEnclosure = command('Draw enclosure', (draft, levelId: string, outline: readonly PlanPoint[], name?: string): readonly Ref[] => {
  const level = levelOf(draft, levelId);
  const ring = woundLeft(soundRing(outline, 'The outline'));
  const id = takeId(draft, 'enclosure');
  level.enclosures[id] = {
    id,
    name: name === undefined ? nextName(draft, 'enclosure', 'Room ') : soundName('An enclosure', name),
    outline: cornersFor(draft, ring),
    holes: [],
    height_m: null,
    slope: null,
    ceilingZones: {},
    underFloor: null,
    ceilingVoid: null,
    openings: {},
    temperature: null,
    altitude_m: null,
    occupancy: 'unknown',
    hazardClass: 'unknown',
    concentration_pct: null,
    ...unknownRoom(),
    adjacent: '',
  };
  return [{ kind: 'enclosure', level: levelId, id }];
});
