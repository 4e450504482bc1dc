import type { Space } from '../../derived/derived.ts';
import { type FigureAt, floorBelow, leastOverFloor } from '../../derived/least-over-floor.ts';
import { type UnlitFloor, unlitFloor } from '../../derived/light-reach.ts';
import type { Region } from '../../derived/polygon-sums.ts';
import { remembered } from '../../derived/remember.ts';
import { isOnFloor, soundFloorOf, soundWaysFrom } from '../../derived/sound-ways.ts';
import type { PlanPoint } from '../../geometry/point.ts';
import type { Device } from '../../model/plan.ts';
import { alarmLightSide_m } from '../formulas/alarm-light.ts';
import { soundAt_dBA, soundSum_dBA } from '../formulas/sound-level.ts';

export type Sounder = Extract<Device, { kind: 'sounder' }>;

/** Height of an ear above the floor [m]: 5 ft, NFPA 72 (memory). */
export const EAR_m = 1.524;
/** Nobody's ear is nearer to a sounder [m]: common practice. */
export const NEAREST_EAR_m = 1;
/** The faintest place is found to within this [dB]: less than any meter tells. */
const PRECISION_dB = 0.05;

export interface SoundPlace {
  readonly at: PlanPoint;
  readonly level_dBA: number;
}

/** How the alarm of a room is heard and seen, as far as its sounders are known. */
export interface AlarmSums {
  /** Where it is faintest; undefined while no sounder's loudness and height are known. */
  readonly faintest: SoundPlace | undefined;
  /** Where it is loudest, with the noise that is there anyway. */
  readonly loudest: SoundPlace | undefined;
  /** Floor on which the alarm is fainter than it has to be; empty where it is loud enough. */
  readonly unheard: Region;
  readonly unlit: readonly UnlitFloor[];
}

interface Last {
  space?: Space;
  sounders: readonly Sounder[];
  ambient_dBA?: number;
  needed_dBA?: number;
  sums?: AlarmSums;
}
/** A room's ceiling function stays the very same while its own geometry does, whatever else changes on its level. */
const lastOf = remembered((_: Space['ceilingAt_m']): Last => ({ sounders: [] }));

const isSame = (one: readonly Sounder[], other: readonly Sounder[]): boolean => one.length === other.length && one.every((each, i) => each === other[i]);

/**
 * How the alarm of a room is heard and seen. Sound falls with the square of its way round walls and things as high as the
 * room, and adds up by energy; that walls throw it back is left out, so that the room is rather louder.
 * @param needed_dBA  that it must have everywhere
 */
export function alarmOf(space: Space, sounders: readonly Sounder[], ambient_dBA: number, needed_dBA: number): AlarmSums {
  const last = lastOf(space.ceilingAt_m);
  const isKnown = last.sums && last.space?.solids === space.solids && isSame(last.sounders, sounders) && sounders.every((each) => Object.isFrozen(each));
  if (isKnown && last.sums && last.ambient_dBA === ambient_dBA && last.needed_dBA === needed_dBA) return last.sums;
  const sums = worked(space, sounders, ambient_dBA, needed_dBA);
  Object.assign(last, { space, sounders, ambient_dBA, needed_dBA, sums });
  return sums;
}

function worked(space: Space, sounders: readonly Sounder[], ambient_dBA: number, needed_dBA: number): AlarmSums {
  const floor = soundFloorOf(space, EAR_m);
  const lights = sounders.flatMap(({ isSeen, light_cd, at, facing_rad }) => (isSeen && light_cd !== null ? [{ at, facing_rad, side_m: alarmLightSide_m(light_cd) }] : []));
  const unlit = unlitFloor(space, floor, lights, EAR_m);
  const sources = sounders.flatMap(({ isHeard, sound_dBA, height_m, at }) => (isHeard && sound_dBA !== null && height_m !== null ? [{ at, sound_dBA, rise_m: height_m - EAR_m, ways: soundWaysFrom(floor, at) }] : []));
  if (sources.length === 0) return { faintest: undefined, loudest: undefined, unheard: [], unlit };
  const levels = (at: PlanPoint, around_m: number): number[] =>
    sources.flatMap(({ sound_dBA, rise_m, ways }) => {
      const way_m = Math.max(0, ways.distanceTo_m(at) + around_m);
      return way_m === Infinity ? [] : [soundAt_dBA(sound_dBA, Math.max(NEAREST_EAR_m, Math.hypot(way_m, rise_m)))];
    });
  const level: FigureAt = (at, around_m) => soundSum_dBA(levels(at, around_m));
  const least = leastOverFloor(floor, level, PRECISION_dB);
  const faintest = least && { at: least.at, level_dBA: least.figure };
  const loudest = sources
    .filter(({ at }) => isOnFloor(floor, at))
    .map(({ at }): SoundPlace => ({ at, level_dBA: soundSum_dBA([...levels(at, 0), ambient_dBA]) }))
    .reduce<SoundPlace | undefined>((most, each) => (most && most.level_dBA >= each.level_dBA ? most : each), undefined);
  const isFaint = faintest !== undefined && faintest.level_dBA < needed_dBA;
  return { faintest, loudest, unheard: isFaint ? floorBelow(floor, level, needed_dBA) : [], unlit };
}
