import type { JsonObject, JsonValue } from '../guarded-json.ts';
import { usualBasis } from '../basis-of-design.ts';
import { each, isObject } from './each-entry.ts';
import type { Migration } from './index.ts';

const withReach = (ring: JsonValue | undefined): JsonValue =>
  Array.isArray(ring) ? ring.map((corner) => (isObject(corner) && isObject(corner.wall) ? { ...corner, wall: { ...corner.wall, reaches: 'unknown' } } : corner)) : (ring ?? null);

const withExclusion = (space: JsonValue | undefined): JsonValue => (isObject(space) ? { ...space, exclusion: null } : (space ?? null));

const enclosureAmid = (enclosure: JsonObject): JsonObject => ({
  ...enclosure,
  outline: withReach(enclosure.outline),
  holes: Array.isArray(enclosure.holes) ? enclosure.holes.map(withReach) : (enclosure.holes ?? null),
  underFloor: withExclusion(enclosure.underFloor),
  ceilingVoid: withExclusion(enclosure.ceilingVoid),
  openings: each(enclosure.openings, (opening) => ({ ...opening, undercut_m: null, ventPath: [] })),
  ceiling: { make: 'unknown', clipped_m: null },
  ambientSound_dBA: null,
  dischargedWith: '',
  shutdowns: {},
  afterDischarge: { extract: 'unknown', extractFlow_m3_s: null, procedure: '', hasMeter: null },
});

const circuit = (release: JsonValue | undefined): JsonValue =>
  isObject(release)
    ? {
        ...release,
        devices: Array.isArray(release.devices) ? release.devices.map((device) => (isObject(device) ? { ...device, wiring: 'unknown' } : device)) : (release.devices ?? null),
        endOfLine: 'unknown',
        isActuatorWatched: null,
        panel: { isListed: null, isCompatible: null, listing: '' },
        battery: null,
      }
    : (release ?? null);

/** From version 3: detectors, signs, buttons, adjoining spaces, shutdowns, what is behind a vent, waivers; nothing of it is guessed. */
export const withSurroundings: Migration = {
  from: 3,
  remark: 'Detectors, signs, buttons, adjoining spaces and shutdowns were not part of the plan yet: they are open now, and the checks that need them say so.',
  step: (plan) => {
    const { lockOutValve, batteryStandby_s, batteryAlarm_s, extract, smallestScale, leastText_m } = usualBasis();
    const settings = plan.settings as JsonObject;
    return {
      ...plan,
      info: { ...(plan.info as JsonObject), state: 'design' },
      settings: { ...settings, siteTolerance_m: settings.lengths === 'feet' ? 0.0127 : 0.01, sheets: { paper: null, scale: null } },
      basis: { ...(plan.basis as JsonObject), lockOutValve, batteryStandby_s, batteryAlarm_s, extract, smallestScale, leastText_m },
      levels: each(plan.levels, (level) => ({
        ...level,
        enclosures: each(level.enclosures, enclosureAmid),
        obstructions: each(level.obstructions, (obstruction) => ({ ...obstruction, voltage_V: null, hasLooseItems: null, hasDrives: null })),
        devices: {},
        adjoining: {},
      })),
      networks: each(plan.networks, (network) => ({ ...network, release: circuit(network.release) })),
      waivers: {},
      lastIssue: null,
    };
  },
};
