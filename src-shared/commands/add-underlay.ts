import { type Ref, type Underlay, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { type AssetEntry, holdAsset } from './hold-asset.ts';
import { levelOf } from './lookup.ts';
import { soundName } from './sound-value.ts';

export type UnderlayStart = Pick<Underlay, 'kind' | 'page' | 'metresPerUnit' | 'calibration' | 'name'>;

/**
 * Lays a floor plan under a level, its origin on the plan's origin. A file that the plan holds already is not
 * held twice. Refuses a level that has gone, a scale that is not more than 0, and a
 * file that cannot be kept.
 */
export const addUnderlay = command('Add floor plan', (draft, levelId: string, asset: AssetEntry, start: UnderlayStart): readonly Ref[] => {
  const level = levelOf(draft, levelId);
  const name = soundName('A floor plan', start.name);
  const { metresPerUnit, calibration, kind, page } = start;
  if (metresPerUnit !== null && !(metresPerUnit > 0 && metresPerUnit <= 1e6)) refuse('The scale of a floor plan must be more than 0.');
  if (!Number.isInteger(page) || page < 1 || page > 10_000) refuse('Pages are counted from 1.');
  const held = holdAsset(draft, asset, 'This file cannot be kept with the plan. Import it again.');
  const id = takeId(draft, 'underlay');
  level.underlays[id] = {
    id,
    name,
    asset: held,
    kind,
    page,
    at: { x: 0, y: 0 },
    rotation_rad: 0,
    metresPerUnit,
    calibration: metresPerUnit === null ? 'none' : calibration,
    knownLengths: [],
    opacity: 0.6,
    hiddenLayers: [],
    visible: true,
    locked: false,
  };
  return [{ kind: 'underlay', level: levelId, id }];
});
