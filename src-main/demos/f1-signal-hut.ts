import { planPoint } from '#shared/geometry/point';
import { rectangle } from '#shared/geometry/outline';
import { CHECK_VALVE_m, type Demo, REGULATOR_m, addOpening, addRoom, addThing, blockWall, layUnderlay, startDemo, startNetwork, studWall } from './demo-plan.ts';
import { furnishRoom } from './furnish-room.ts';
import { PNG_MARGIN_px, drawPng } from './draw-png.ts';
import { type FloorDrawing, boxLine, ft, openLine, swingLine } from './floor-drawing.ts';

const PIXELS_PER_METRE = 240;
const WALL = ft(0, 8);

const floor: FloorDrawing = {
  width_m: ft(16) + 2 * WALL,
  depth_m: ft(11) + 2 * WALL,
  layers: {
    WALLS: [boxLine(WALL, WALL, WALL + ft(16), WALL + ft(11)), boxLine(0, 0, ft(16) + 2 * WALL, ft(11) + 2 * WALL)],
    DOORS: [
      openLine([WALL + ft(12), WALL], [WALL + ft(12), 0]),
      openLine([WALL + ft(15), WALL], [WALL + ft(15), 0]),
      swingLine(WALL + ft(12), WALL, ft(3), 0, -Math.PI / 2),
    ],
    FURNITURE: [0, 2, 4].map((x) => boxLine(WALL + ft(4 + x), WALL + ft(7), WALL + ft(6 + x), WALL + ft(10))),
  },
  words: [],
};

/** F1 Tallowmere Signal Hut: one room, one cylinder, one nozzle, over a scanned picture. Invented. */
export function buildSignalHut(): Demo {
  const plan = startDemo('Tallowmere Signal Hut', 'Tallowmere junction', 'Ground floor');
  const room = addRoom(plan, 'Signal hut', rectangle(ft(16), ft(11)), ft(8), [studWall(), studWall(), studWall(), blockWall()]);
  addOpening(plan, room, 0, { kind: 'door', along_m: ft(13, 6), width_m: ft(3), leadsTo: 'outdoors' });
  addOpening(plan, room, 1, { kind: 'relief-vent', along_m: ft(5, 6), width_m: 0.3, freeArea_m2: 0.0242 });
  addThing(plan, 'cabinet', 'Relay cabinets', [ft(4), ft(7), ft(10), ft(10)], 0, ft(6, 8));

  const [x, y] = [ft(0, 9), ft(9, 6)];
  const outlet = { x, y, z: ft(6, 6) };
  const orifice = { x: ft(8), y: ft(5, 6), z: ft(7, 4) };
  const top = ft(7, 8);
  const draft = startNetwork(plan, 'Network 1', outlet, 0.75);
  // The hose leaves along the wall and turns back into check valve and regulator, which end where the pipe begins.
  draft.cylinder('C1', planPoint(x, y), Math.PI, { outlet_rad: -Math.PI / 2, end: { x, y: y - CHECK_VALVE_m - REGULATOR_m, z: outlet.z } });
  draft.run('3/4', outlet, { x, y, z: top }, { x: ft(8), y, z: top }, { x: ft(8), y: ft(5, 6), z: top }, orifice);
  draft.trap('3/4', { x: ft(8), y: ft(5, 6), z: top }, -Math.PI / 2);
  draft.nozzle('N1', orifice, 'E-W', 'S530');

  room.adjacent = 'Open ground on all sides.';
  furnishRoom(plan, room, {
    detectors: [planPoint(ft(5), ft(3)), planPoint(ft(12), ft(8))],
    sounders: [{ at: planPoint(ft(16), ft(9)), facing_rad: Math.PI }],
    cylinderSign: { at: planPoint(ft(0, 1), ft(8, 4)), facing_rad: 0 },
  });

  const margin = PNG_MARGIN_px;
  const pixel = (x_m: number, y_m: number) => planPoint(margin + (WALL + x_m) * PIXELS_PER_METRE, margin + (WALL + y_m) * PIXELS_PER_METRE);
  return layUnderlay(plan, 'signal-hut-scan.png', drawPng(floor, PIXELS_PER_METRE), {
    kind: 'png',
    at: planPoint(-WALL - margin / PIXELS_PER_METRE, -WALL - margin / PIXELS_PER_METRE),
    metresPerUnit: 1 / PIXELS_PER_METRE,
    calibration: 'two-points',
    knownLengths: [
      { a: pixel(0, 0), b: pixel(ft(16), 0), distance_m: ft(16) },
      { a: pixel(0, 0), b: pixel(0, ft(11)), distance_m: ft(11) },
    ],
  });
}
