import type { JsonObject, JsonValue } from '../guarded-json.ts';
import { each } from './each-entry.ts';
import type { Migration } from './index.ts';

const openings = (enclosure: JsonObject): JsonValue => each(enclosure.openings, (opening) => ({ ...opening, crossing: null }));

/** From version 2: hose, manifold, gauge, penetrations and what is built in at a node; nothing of it is guessed. */
export const withPipeAsBuilt: Migration = {
  from: 2,
  remark: 'Hoses, gauges, dirt traps and pipe crossings were not part of the plan yet: they are open now, and the checks that need them say so.',
  step: (plan) => ({
    ...plan,
    basis: { ...(plan.basis as JsonObject), seismic: 'unknown' },
    levels: each(plan.levels, (level) => ({
      ...level,
      enclosures: each(level.enclosures, (enclosure) => ({ ...enclosure, openings: openings(enclosure) })),
      obstructions: each(level.obstructions, (obstruction) => ({ ...obstruction, front_rad: null })),
    })),
    networks: each(plan.networks, (network) => ({
      ...network,
      cylinders: each(network.cylinders, (cylinder) => ({ ...cylinder, restraints_m: [], outlet_rad: null, hoseEnd: null, gauge: null, storage: null, exposedTo: null })),
      manifold: null,
      installation: { bonding: 'unknown', marking: '', finish: '' },
      nodes: each(network.nodes, (node) => ({ ...node, part: null })),
      pipes: each(network.pipes, (pipe) => ({ ...pipe, insulation_m: 0, measured_m: null })),
      supports: each(network.supports, (support) => ({ ...support, brace: 'none' })),
    })),
    profiles: each(plan.profiles, (profile) => ({ ...profile, madeFittings: [], assemblyOrder: null, teeAttitudes: null })),
  }),
};
