import type { DerivedLevel } from '../../derived/derived.ts';
import { distance3_m, distance_m } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Device } from '../../model/plan.ts';
import { type Asked, atLeast, defineRule } from '../rule.ts';
import { perLevel } from '../subjects.ts';

interface Beside {
  readonly level: string;
  readonly release: Device;
  /** The button that opens a door nearest to it; undefined when none is drawn on the level. */
  readonly button: Device | undefined;
  readonly off_m: number;
}

/** How far apart they must be [m]: 24 in. */
export const APART_m = 0.6096;
const SOURCE = 'common practice';

/** In space where both heights are known; on the plan alone they are rather said to be too near. */
const apart_m = (one: Device, other: Device): number =>
  one.height_m === null || other.height_m === null ? distance_m(one.at, other.at) : distance3_m({ ...one.at, z: one.height_m }, { ...other.at, z: other.height_m });

function atReleases({ level }: DerivedLevel): Asked<Beside>[] {
  const devices = Object.values(level.devices);
  const buttons = devices.filter(({ kind }) => kind === 'door-button');
  return devices
    .filter(({ kind }) => kind === 'manual-release')
    .map((release) => {
      const [nearest] = buttons.map((button) => ({ button, off_m: apart_m(release, button) })).sort((a, b) => a.off_m - b.off_m);
      return {
        subject: { level: level.id, release, button: nearest?.button, off_m: nearest?.off_m ?? Infinity },
        ref: { kind: 'device' as const, level: level.id, id: release.id },
        name: release.name || 'Manual release',
      };
    });
}

/**
 * S8: nobody who wants to open a door releases the agent: the manual release stands apart from every door button.
 * Measure: from the manual release to the nearest door button [m]. Limit: 24 in. Kept where no button is drawn on the level.
 */
export const s08DoorButton = defineRule<Beside>({
  id: 'S8',
  title: 'Release apart from door button',
  severity: 'warn',
  measure: 'length',
  basis: { formula: 'manual release to every door button ≥ 24 in', source: SOURCE, caution: 'They must also differ in colour, shape and wording.' },
  subjects: perLevel(atReleases),
  check({ level, release, button, off_m }, { say }) {
    if (!button) return { kind: 'judged', isKept: true, text: 'No button that opens a door is drawn on this level.', place: { level, at: [release.at] } };
    const figures = atLeast(off_m, { value: APART_m, source: SOURCE }, LENGTH_SLACK_m);
    const { value, limit } = say.against(off_m, APART_m);
    const named = button.name ? `door button “${button.name}”` : 'the nearest door button';
    const place = { level, at: [release.at], dimension: { a: release.at, b: button.at } };
    if (figures.isKept) return { ...figures, text: `Stands ${value} from ${named}; ${limit} is enough.`, place };
    return { ...figures, text: `Stands only ${value} from ${named}; somebody may take one for the other. Keep them ${limit} apart.`, place, cure: { kind: 'advice', text: `Move one of them until they are ${limit} apart.` } };
  },
});
