import type { JsonValue } from '../guarded-json.ts';
import { usualBasis } from '../basis-of-design.ts';
import { each, isObject } from './each-entry.ts';
import type { Migration } from './index.ts';

const withCapacity = (ring: JsonValue | undefined): JsonValue =>
  Array.isArray(ring) ? ring.map((corner) => (isObject(corner) && isObject(corner.wall) ? { ...corner, wall: { ...corner.wall, capacity_N: null } } : corner)) : (ring ?? null);

/** From version 1: the sums need a basis of design, people, leaks, supports, anchors and the releasing circuit. */
export const withBasisOfDesign: Migration = {
  from: 1,
  remark: 'The plan had no basis of design yet: the usual one was put in. See what it says before you rely on the sums.',
  step: (plan) => ({
    ...plan,
    basis: { ...usualBasis() },
    levels: each(plan.levels, (level) => ({
      ...level,
      enclosures: each(level.enclosures, (enclosure) => ({
        ...enclosure,
        outline: withCapacity(enclosure.outline),
        holes: Array.isArray(enclosure.holes) ? enclosure.holes.map(withCapacity) : (enclosure.holes ?? null),
        people: { exposure: '5-min', egress_s: null, delay_s: null },
        leakage: { kind: 'unknown' },
        lowestProtected_m: null,
      })),
    })),
    networks: each(plan.networks, (network) => ({
      ...network,
      cylinders: each(network.cylinders, (cylinder) => ({ ...cylinder, anchors: null })),
      supports: {},
      release: null,
    })),
    profiles: each(plan.profiles, (profile) => ({ ...profile, orifices: [] })),
  }),
};
