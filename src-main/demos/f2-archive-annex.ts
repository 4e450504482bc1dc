import { type PlanPoint3, planPoint } from '#shared/geometry/point';
import { CHECK_VALVE_m, type Demo, REGULATOR_m, addOpening, addRoom, addThing, blockWall, layUnderlay, startDemo, startNetwork, studWall } from './demo-plan.ts';
import { drawDxf } from './draw-dxf.ts';
import { addAdjoining, addDevice, furnishRoom } from './furnish-room.ts';
import { type FloorDrawing, type FloorLine, boxLine, ft, openLine, swingLine } from './floor-drawing.ts';

const CORNERS: readonly [number, number][] = [
  [ft(0), ft(0)],
  [ft(31, 6), ft(0)],
  [ft(31, 6), ft(15)],
  [ft(19, 6), ft(15)],
  [ft(19, 6), ft(25, 6)],
  [ft(0), ft(25, 6)],
];
const BEAMS = [
  [ft(10), ft(0), ft(11), ft(25, 6)],
  [ft(20, 6), ft(0), ft(21, 6), ft(15)],
] as const;
const RACKS = [
  [ft(6, 6), ft(3), ft(9, 6), ft(17)],
  [ft(12), ft(3), ft(15), ft(23)],
  [ft(23), ft(2), ft(26), ft(12)],
] as const;
const HEIGHT = ft(9, 6);
const SOFFIT = ft(8, 2);

const floorDrawing = (): FloorDrawing => {
  const outer: FloorLine = {
    closed: true,
    places: [
      [ft(0, -8), ft(0, -8)],
      [ft(32, 2), ft(0, -8)],
      [ft(32, 2), ft(15, 8)],
      [ft(20, 2), ft(15, 8)],
      [ft(20, 2), ft(26, 2)],
      [ft(0, -8), ft(26, 2)],
    ],
  };
  return {
    width_m: ft(32, 2),
    depth_m: ft(26, 2),
    layers: {
      WALLS: [{ places: CORNERS, closed: true }, outer],
      DOORS: [
        openLine([0, ft(10)], [ft(0, -8), ft(10)]),
        openLine([0, ft(13)], [ft(0, -8), ft(13)]),
        swingLine(0, ft(10), ft(3), Math.PI / 2, Math.PI),
        openLine([ft(28), 0], [ft(28), ft(0, -8)]),
        openLine([ft(31), 0], [ft(31), ft(0, -8)]),
        swingLine(ft(28), 0, ft(3), 0, -Math.PI / 2),
      ],
      BEAMS: BEAMS.map((beam) => boxLine(...beam)),
      FURNITURE: RACKS.map((rack) => boxLine(...rack)),
    },
    words: [
      { x: ft(1), y: ft(23, 6), height_m: ft(0, 8), text: 'ARCHIVE ANNEX' },
      { x: ft(10, 1), y: ft(24, 6), height_m: ft(0, 4), text: 'BEAM SOFFIT 8-2' },
      { x: ft(17), y: ft(0, 6), height_m: ft(0, 4), text: 'RAISED FLOOR 1-0' },
    ],
  };
};

/** What the seeded faults change; everything else stays as designed. */
interface Variant {
  readonly n3Holes: 'N-S' | 'E-W';
  readonly n4Holes: 'N-S' | 'E-W';
  readonly n4X: number;
  readonly n5Z: number;
  readonly mainZ: number;
}
const DESIGNED: Variant = { n3Holes: 'N-S', n4Holes: 'N-S', n4X: ft(15, 6), n5Z: ft(8, 9), mainZ: ft(7, 10) };
const SEEDED: Variant = { n3Holes: 'E-W', n4Holes: 'E-W', n4X: ft(18, 10), n5Z: ft(8, 4), mainZ: ft(8, 1) };

/** How far beside its cylinder a hose ends [m]: the bend radius of the sample hose. */
const HOSE_REACH_m = 0.15;

const at = (x: number, y: number, z: number): PlanPoint3 => ({ x, y, z });

/**
 * F2 Orrinfold Archive Annex: an L with beams, a raised floor and five cylinders, over a DXF in inches. Invented.
 * @param hasFaults  N3 and N4 blow east-west, N4 stands by the wall, N5 hangs low, the main runs under the beam
 */
export function buildArchiveAnnex(hasFaults: boolean): Demo {
  const { n3Holes, n4Holes, n4X, n5Z, mainZ } = hasFaults ? SEEDED : DESIGNED;
  const plan = startDemo(hasFaults ? 'Orrinfold Archive Annex (seeded faults)' : 'Orrinfold Archive Annex', 'Orrinfold', 'Ground floor');
  const room = addRoom(
    plan,
    'Archive annex',
    CORNERS.map(([x, y]) => planPoint(x, y)),
    HEIGHT,
    [studWall(), blockWall(), studWall(), studWall(), studWall(), studWall()],
    { depth_m: ft(1), isProtected: true, exclusion: null },
  );
  room.lowestProtected_m = ft(0, -8);
  addOpening(plan, room, 0, { kind: 'door', along_m: ft(29, 6), width_m: ft(3), leadsTo: 'outdoors' });
  addOpening(plan, room, 5, { kind: 'door', along_m: ft(14), width_m: ft(3), hinge: 'end' });
  addOpening(plan, room, 4, { kind: 'relief-vent', along_m: ft(9), width_m: 0.5, height_m: 0.5, freeArea_m2: 0.121 });
  for (const [i, beam] of BEAMS.entries()) addThing(plan, 'beam', `Beam ${i + 1}`, beam, SOFFIT, HEIGHT);
  for (const [i, rack] of RACKS.entries()) addThing(plan, 'rack', `Rack ${i + 1}`, rack, 0, ft(7));

  const mainY = ft(10);
  const riserZ = ft(9, 2);
  const voidZ = ft(0, -4);
  const outlet = at(ft(30, 9), mainY, ft(7));
  const draft = startNetwork(plan, 'Network 1', outlet, 0.5);
  // Each hose leaves along the wall and turns up into its check valve under the manifold.
  for (let i = 0; i < 5; i += 1) {
    const y = ft(4) + i * ft(1, 2);
    draft.cylinder(`C${i + 1}`, planPoint(ft(30, 9), y), 0, { outlet_rad: Math.PI / 2, end: at(ft(30, 9), y + HOSE_REACH_m, outlet.z - CHECK_VALVE_m) });
  }
  draft.manifold(at(ft(30, 9), ft(4), outlet.z), at(ft(30, 9), mainY - REGULATOR_m, outlet.z));

  const onMain = (x: number) => at(x, mainY, mainZ);
  const [voidTee, east, middle, west] = [ft(29, 6), ft(26, 6), ft(15, 6), ft(5)];
  draft.run('1-1/4', outlet, onMain(ft(30, 9)), onMain(voidTee), onMain(east), onMain(middle), onMain(west));
  const riser = (x: number) => draft.run('1', onMain(x), at(x, mainY, riserZ));
  /** From the top of a riser along y, across to the nozzle where it stands aside, and down to the orifice. */
  const branch = (name: string, x: number, y: number, z: number, holes: 'N-S' | 'E-W', nozzleX = x): void => {
    const corner = nozzleX === x ? [] : [at(nozzleX, y, riserZ)];
    const orifice = at(nozzleX, y, z);
    draft.run('3/4', at(x, mainY, riserZ), at(x, y, riserZ), ...corner, orifice);
    draft.trap('3/4', at(nozzleX, y, riserZ), nozzleX === x ? Math.sign(y - mainY) * (Math.PI / 2) : 0);
    draft.nozzle(name, orifice, holes, 'S505');
  };
  for (const x of [west, middle, east]) riser(x);
  branch('N1', west, ft(6, 6), ft(8, 9), 'N-S');
  branch('N2', west, ft(19), ft(8, 9), 'N-S');
  branch('N3', middle, ft(6, 6), ft(8, 9), n3Holes);
  branch('N4', middle, ft(19), ft(8, 9), n4Holes, n4X);
  branch('N5', east, ft(7, 6), n5Z, 'N-S');

  const inVoid = (x: number, y: number) => at(x, y, voidZ);
  const [u1, u2, u3] = [planPoint(ft(8), ft(6, 6)), planPoint(ft(9, 9), ft(19)), planPoint(ft(23, 6), ft(7, 6))];
  draft.run('1', onMain(voidTee), inVoid(voidTee, mainY), inVoid(u3.x, mainY), inVoid(u2.x, mainY));
  draft.run('3/4', inVoid(u2.x, mainY), inVoid(u1.x, mainY));
  [u1, u2, u3].forEach((nozzle, i) => {
    const orifice = at(nozzle.x, nozzle.y, ft(0, -7));
    draft.run('3/4', inVoid(nozzle.x, mainY), inVoid(nozzle.x, nozzle.y), orifice);
    draft.trap('3/4', inVoid(nozzle.x, nozzle.y), Math.sign(nozzle.y - mainY) * (Math.PI / 2));
    draft.nozzle(`U${i + 1}`, orifice, 'N-S', 'S210');
  });

  addAdjoining(
    plan,
    'West corridor',
    'corridor',
    [planPoint(ft(-6), ft(8)), planPoint(ft(0, -8), ft(8)), planPoint(ft(0, -8), ft(20)), planPoint(ft(-6), ft(20))],
    'alarmed',
    'Door kept shut; a sounder and a sign stand in the corridor.',
  );
  addDevice(plan, 'sign', planPoint(ft(0, -11), ft(15)), ft(5), Math.PI, { sign: 'adjacent', wording: 'When the alarm sounds, leave: nitrogen may come from the next room.' });
  addDevice(plan, 'sounder', planPoint(ft(-5, -9), ft(15)), ft(7), 0, { isHeard: true, isSeen: true, sound_dBA: 92, light_cd: 110 });
  furnishRoom(plan, room, {
    detectors: [planPoint(ft(8), ft(12)), planPoint(ft(18), ft(8))],
    sounders: [
      { at: planPoint(ft(31, 6), ft(13)), facing_rad: Math.PI },
      { at: planPoint(ft(0), ft(20)), facing_rad: 0 },
    ],
    cylinderSign: { at: planPoint(ft(31, 5), ft(3)), facing_rad: Math.PI },
  });

  return layUnderlay(plan, 'archive-annex.dxf', drawDxf(floorDrawing()), {
    kind: 'dxf',
    at: planPoint(0, 0),
    metresPerUnit: 0.0254,
    calibration: 'file-units',
    knownLengths: [
      { a: planPoint(0, 0), b: planPoint(378, 0), distance_m: ft(31, 6) },
      { a: planPoint(0, 0), b: planPoint(0, 306), distance_m: ft(25, 6) },
    ],
  });
}
