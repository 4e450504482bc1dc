import type { Enclosure, Network, Plan } from '#shared/model/plan';
import { newPlan, unknownRoom, unknownWall } from '#shared/model/plan';
import { freeze } from 'immer';

/** A room 6 m × 4 m × 2.4 m with a rack and a beam, one cylinder in its south-west corner and a pipe to nozzle N1. */
export function smallPlan(): Plan {
  const plan = newPlan('metric');
  const level = plan.levels['level-0'];
  if (!level) throw new Error('a new plan has a level');
  const corner = (id: string, x: number, y: number) => ({ id, x, y, wall: unknownWall() });
  const room: Enclosure = {
    id: 'room',
    name: 'Pump room',
    outline: [corner('w-south', 0, 0), corner('w-east', 6, 0), corner('w-north', 6, 4), corner('w-west', 0, 4)],
    holes: [],
    height_m: 2.4,
    slope: null,
    ceilingZones: { soffit: { id: 'soffit', name: '', outline: [{ x: 4, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 4 }, { x: 4, y: 4 }], height_m: 2.1 } },
    underFloor: { depth_m: 0.3, isProtected: false, exclusion: null },
    ceilingVoid: null,
    openings: {
      door: { crossing: null, undercut_m: null, ventPath: [], id: 'door', name: 'D1', kind: 'door', wall: 'w-south', along_m: 4.5, width_m: 0.9, bottom_m: 0, height_m: 2, swing: 'out', hinge: 'start', freeArea_m2: null, leadsTo: 'corridor', closes: true },
    },
    temperature: null,
    altitude_m: 0,
    occupancy: 'unknown',
    hazardClass: 'unknown',
    concentration_pct: null,
    ...unknownRoom(),
    adjacent: '',
  };
  const pipe = (id: string, from: string, to: string) => ({ id, from, to, size: '3/4' as const, schedule: '40' as const, material: 'black-steel' as const, joint: 'threaded' as const, insulation_m: 0, measured_m: null });
  const network: Network = {
    id: 'net',
    name: 'Network 1',
    level: 'level-0',
    profile: 'sample-80',
    source: 'n0',
    cylinders: { c1: { restraints_m: [], outlet_rad: null, hoseEnd: null, gauge: null, storage: null, exposedTo: null, id: 'c1', name: 'C1', at: { x: 0.3, y: 2 }, mounting: 'wall', back_rad: Math.PI, railHeight_m: 1.2, anchors: null } },
    assembly: [
      { id: 'a1', kind: 'check-valve', name: 'Check valve', length_m: 0.1, setPressure_Pa: null, arrowDownstream: true },
      { id: 'a2', kind: 'regulator', name: 'Regulator', length_m: 0.1, setPressure_Pa: 6_101_325, arrowDownstream: true },
    ],
    manifold: null,
    installation: { bonding: 'unknown', marking: '', finish: '' },
    nodes: {
      n0: { part: null, id: 'n0', at: { x: 0.3, y: 2, z: 1.9 } },
      n1: { part: null, id: 'n1', at: { x: 0.3, y: 2, z: 2.3 } },
      n2: { part: null, id: 'n2', at: { x: 3, y: 2, z: 2.3 } },
      n3: { part: null, id: 'n3', at: { x: 3, y: 2, z: 2.2 } },
    },
    pipes: { p1: pipe('p1', 'n0', 'n1'), p2: pipe('p2', 'n1', 'n2'), p3: pipe('p3', 'n2', 'n3') },
    nozzles: { z1: { id: 'z1', name: 'N1', node: 'n3', holes_rad: [0, Math.PI], rotation_rad: 0, tilt_rad: 0, orificeArea_m2: null, serves: null } },
    supports: {},
    release: null,
  };
  const box = (x: number, y: number, width: number, depth: number) => [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + depth },
    { x, y: y + depth },
  ];
  // Frozen, as every plan is that a command made.
  return freeze(
  {
    ...plan,
    levels: {
      'level-0': {
        ...level,
        enclosures: { room },
        obstructions: {
          rack: { id: 'rack', name: 'Rack', kind: 'rack', footprint: box(1, 1.5, 1, 1), bottom_m: 0, top_m: 1.8, front_rad: null, voltage_V: null, hasLooseItems: null, hasDrives: null, isPermeable: false },
          beam: { id: 'beam', name: 'Beam', kind: 'beam', footprint: box(1, 3.2, 4, 0.3), bottom_m: 2.1, top_m: 2.4, front_rad: null, voltage_V: null, hasLooseItems: null, hasDrives: null, isPermeable: false },
        },
      },
    },
    networks: { net: network },
  },
    true,
  );
}
