import { rectangle } from '#shared/geometry/outline';
import { type PlanPoint3, planPoint } from '#shared/geometry/point';
import { CHECK_VALVE_m, type Demo, REGULATOR_m, addOpening, addRoom, addThing, blockWall, layUnderlay, startDemo, startNetwork, studWall } from './demo-plan.ts';
import { addAdjoining, addDevice, furnishRoom } from './furnish-room.ts';
import { PDF_MARGIN_pt, PDF_POINTS_PER_METRE, drawPdf } from './draw-pdf.ts';
import { type FloorDrawing, boxLine, ft, openLine, swingLine } from './floor-drawing.ts';

/** A room of the level: sides, cylinders along the corridor wall, door, nozzles. Lengths [m]. */
interface RoomSpec {
  readonly name: string;
  readonly x: readonly [number, number];
  readonly isNorth: boolean;
  readonly cylinders: readonly number[];
  readonly door: readonly [number, number];
  readonly nozzles: readonly (readonly [x: number, y: number])[];
  readonly holes: 'E-W' | 'N-S';
  readonly orifice: string;
}

const NORTH_Y = [ft(21), ft(37)] as const;
const SOUTH_Y = [ft(0), ft(14)] as const;
const CEILING = ft(9);
const WALL = ft(0, 6);
const THREE_FEET = ft(3);

const door = (from: number): readonly [number, number] => [from, from + THREE_FEET];
const ROOMS: readonly RoomSpec[] = [
  { name: '201', x: [ft(0), ft(19, 6)], isNorth: true, cylinders: [ft(2), ft(3, 2)], door: door(ft(14)), nozzles: [[ft(9, 9), ft(29)]], holes: 'E-W', orifice: 'S755' },
  { name: '202', x: [ft(20), ft(29, 9)], isNorth: true, cylinders: [ft(21, 6)], door: door(ft(25, 6)), nozzles: [[ft(24, 10.5), ft(29)]], holes: 'N-S', orifice: 'S530' },
  {
    name: '203',
    x: [ft(30, 3), ft(59, 3)],
    isNorth: true,
    cylinders: [ft(32), ft(33, 2), ft(34, 4)],
    door: door(ft(44)),
    nozzles: [
      [ft(37, 6), ft(29)],
      [ft(52), ft(29)],
    ],
    holes: 'E-W', orifice: 'S655',
  },
  { name: '204', x: [ft(0), ft(11, 3)], isNorth: false, cylinders: [ft(1, 6)], door: door(ft(7)), nozzles: [[ft(5, 7.5), ft(7)]], holes: 'N-S', orifice: 'S530' },
  { name: '205', x: [ft(11, 9), ft(33, 9)], isNorth: false, cylinders: [ft(13, 6), ft(14, 8)], door: door(ft(26)), nozzles: [[ft(22, 9), ft(7)]], holes: 'E-W', orifice: 'S755' },
  {
    name: '206',
    x: [ft(34, 3), ft(59, 3)],
    isNorth: false,
    cylinders: [ft(36), ft(37, 2), ft(38, 4)],
    door: door(ft(50)),
    nozzles: [
      [ft(40, 6), ft(7)],
      [ft(53), ft(7)],
    ],
    holes: 'E-W', orifice: 'S655',
  },
];

const yOf = (room: RoomSpec): readonly [number, number] => (room.isNorth ? NORTH_Y : SOUTH_Y);
/** The face of the corridor wall inside the room. */
const corridorY = (room: RoomSpec): number => (room.isNorth ? NORTH_Y[0] : SOUTH_Y[1]);

const floorDrawing = (rooms: readonly RoomSpec[]): FloorDrawing => ({
  width_m: ft(59, 3) + 2 * WALL,
  depth_m: ft(37) + 2 * WALL,
  layers: {
    WALLS: [
      boxLine(0, 0, ft(59, 3) + 2 * WALL, ft(37) + 2 * WALL),
      ...rooms.map((room) => boxLine(WALL + room.x[0], WALL + yOf(room)[0], WALL + room.x[1], WALL + yOf(room)[1])),
      boxLine(WALL, WALL + ft(14, 6), WALL + ft(59, 3), WALL + ft(20, 6)),
    ],
    DOORS: rooms.flatMap((room) => {
      const inner = WALL + corridorY(room);
      const outer = inner + (room.isNorth ? -WALL : WALL);
      const [from, to] = room.door.map((x) => x + WALL) as [number, number];
      return [
        openLine([from, inner], [from, outer]),
        openLine([to, inner], [to, outer]),
        swingLine(from, inner, THREE_FEET, 0, room.isNorth ? -Math.PI / 2 : Math.PI / 2),
      ];
    }),
  },
  words: [
    ...rooms.map((room) => ({ x: WALL + room.x[0] + ft(1), y: WALL + yOf(room)[1] - ft(2), height_m: ft(0, 9), text: `ROOM ${room.name}` })),
    { x: WALL + ft(27), y: WALL + ft(17, 2), height_m: ft(0, 8), text: 'CORRIDOR' },
  ],
});

/**
 * F3 Brackwen Ferry Control, level 2: six rooms along a corridor, each with its own network, over a vector PDF. Invented.
 * @param hasFaults  the east nozzle of 203 blows into its corner; 202 vents to the corridor; an undamped duct joins
 *                   201 and 202; the door of 204 swings onto the cylinder
 */
export async function buildFerryControl(hasFaults: boolean): Promise<Demo> {
  const rooms = hasFaults ? ROOMS.map((room) => (room.name === '204' ? { ...room, door: door(ft(1)) } : room)) : ROOMS;
  const title = 'Brackwen Ferry Control';
  const plan = startDemo(hasFaults ? `${title} (seeded faults)` : title, 'Brackwen slipway', 'Level 2', ft(12));
  for (const spec of rooms) drawRoom(plan, spec, hasFaults);
  const [south, north] = [SOUTH_Y[1] + WALL, NORTH_Y[0] - WALL];
  addAdjoining(plan, 'Corridor', 'corridor', [planPoint(0, south), planPoint(ft(59, 3), south), planPoint(ft(59, 3), north), planPoint(0, north)], 'alarmed', 'Doors kept shut; sounders and signs stand in the corridor.');
  for (const x of [ft(10), ft(30), ft(50)]) {
    addDevice(plan, 'sign', planPoint(x, south + 0.05), ft(5), Math.PI / 2, { sign: 'adjacent', wording: 'When the alarm sounds, leave: nitrogen may come from the rooms beside.' });
    addDevice(plan, 'sounder', planPoint(x + 1, north - 0.05), ft(7), -Math.PI / 2, { isHeard: true, isSeen: true, sound_dBA: 92, light_cd: 110 });
  }
  if (hasFaults) addThing(plan, 'duct', 'Duct 201 to 202, no damper', [ft(18, 6), ft(33), ft(21), ft(34)], ft(8, 6), ft(8, 11));
  // The picture of the floor is the architect's: it shows the building as designed, faults or not.
  const edge = WALL + PDF_MARGIN_pt / PDF_POINTS_PER_METRE;
  const point = (x: number, y: number) => planPoint(PDF_MARGIN_pt + (WALL + x) * PDF_POINTS_PER_METRE, PDF_MARGIN_pt + (WALL + y) * PDF_POINTS_PER_METRE);
  return layUnderlay(plan, 'ferry-control-level-2.pdf', await drawPdf(floorDrawing(ROOMS)), {
    kind: 'pdf',
    at: planPoint(-edge, -edge),
    metresPerUnit: 1 / PDF_POINTS_PER_METRE,
    calibration: 'two-points',
    knownLengths: [
      { a: point(0, 0), b: point(ft(59, 3), 0), distance_m: ft(59, 3) },
      { a: point(0, 0), b: point(0, ft(37)), distance_m: ft(37) },
    ],
  });
}

/** Which way the pipe comes to its last nozzle [rad]. */
function trapBearing(places: readonly (readonly [number, number])[], last: number, mainY: number, i: number): number {
  const [x, y] = places[i] ?? [0, 0];
  if (y !== mainY) return Math.sign(y - mainY) * (Math.PI / 2);
  return x > (places[i - 1]?.[0] ?? last) ? 0 : Math.PI;
}

function drawRoom(plan: Demo['plan'], spec: RoomSpec, hasFaults: boolean): void {
  const [y0, y1] = yOf(spec);
  const [x0, x1] = spec.x;
  const corridorWall = spec.isNorth ? 0 : 2;
  const walls = [studWall(), studWall(), studWall(), studWall()];
  walls[corridorWall] = blockWall();
  const room = addRoom(plan, `Room ${spec.name}`, rectangle(x1 - x0, y1 - y0, planPoint(x0, y0)), CEILING, walls);
  const doorMiddle = (spec.door[0] + spec.door[1]) / 2;
  const isTurnedIn = hasFaults && spec.name === '204';
  addOpening(plan, room, corridorWall, {
    kind: 'door',
    along_m: spec.isNorth ? doorMiddle - x0 : x1 - doorMiddle,
    width_m: THREE_FEET,
    swing: isTurnedIn ? 'in' : 'out',
    hinge: spec.isNorth ? 'start' : 'end',
  });
  const toCorridor = hasFaults && spec.name === '202';
  addOpening(plan, room, toCorridor ? 0 : spec.isNorth ? 2 : 0, {
    kind: 'relief-vent',
    along_m: toCorridor ? ft(3) : (x1 - x0) / 2,
    width_m: 0.3 * spec.cylinders.length,
    freeArea_m2: 0.0242 * spec.cylinders.length,
    leadsTo: toCorridor ? 'corridor' : 'outdoors',
  });

  room.adjacent = 'Walls between the rooms go from slab to slab and are sealed: gas does not reach the room beside.';
  if (spec.name === '206') room.people.exposure = '3-min';
  const middle_y = (y0 + y1) / 2;
  furnishRoom(plan, room, {
    detectors: [planPoint(x0 + (x1 - x0) * 0.3, middle_y + 0.6), planPoint(x0 + (x1 - x0) * 0.7, middle_y - 0.6)],
    sounders: [
      { at: planPoint(x0, middle_y), facing_rad: 0 },
      { at: planPoint(x1, middle_y), facing_rad: Math.PI },
    ],
    cylinderSign: { at: planPoint((spec.cylinders[0] ?? x0) - 0.35, corridorY(spec) + (spec.isNorth ? 0.03 : -0.03)), facing_rad: spec.isNorth ? Math.PI / 2 : -Math.PI / 2 },
  });

  const y = corridorY(spec) + (spec.isNorth ? ft(0, 9) : -ft(0, 9));
  const last = spec.cylinders.at(-1) ?? x0;
  const [orificeZ, mainZ] = [ft(8, 4), ft(8, 8)];
  const outlet: PlanPoint3 = { x: last, y, z: ft(6, 6) };
  const isAlone = spec.cylinders.length === 1;
  const draft = startNetwork(plan, `Network ${spec.name}`, outlet, isAlone ? 0.75 : 0.3);
  for (const [i, x] of spec.cylinders.entries()) {
    // A single hose turns back into the valves beside it; several turn up into their check valves under the manifold.
    const end = isAlone ? { ...outlet, x: x - CHECK_VALVE_m - REGULATOR_m } : { x: x - REGULATOR_m, y, z: outlet.z - CHECK_VALVE_m };
    draft.cylinder(`${spec.name}-C${i + 1}`, planPoint(x, y), spec.isNorth ? -Math.PI / 2 : Math.PI / 2, { outlet_rad: Math.PI, end });
  }
  if (!isAlone) draft.manifold({ ...outlet, x: (spec.cylinders[0] ?? last) - ft(1) }, { ...outlet, x: last - REGULATOR_m });

  const places = spec.nozzles.map(([x, nozzleY], i) =>
    hasFaults && spec.name === '203' && i === 1 ? ([ft(57, 9), ft(35, 6)] as const) : ([x, nozzleY] as const),
  );
  const mainY = spec.nozzles[0]?.[1] ?? y;
  const onMain = (x: number): PlanPoint3 => ({ x, y: mainY, z: mainZ });
  const corners = places.filter(([, nozzleY]) => nozzleY !== mainY).map(([x, nozzleY]) => ({ x, y: nozzleY, z: mainZ }));
  draft.run('1', outlet, { x: last, y, z: mainZ }, onMain(last), ...places.map(([x]) => onMain(x)), ...corners);
  places.forEach(([x, nozzleY], i) => {
    const orifice = { x, y: nozzleY, z: orificeZ };
    draft.run('3/4', { x, y: nozzleY, z: mainZ }, orifice);
    if (i === places.length - 1) draft.trap('1', { x, y: nozzleY, z: mainZ }, trapBearing(places, last, mainY, i));
    const isCornered = hasFaults && spec.name === '203' && i === 1;
    draft.nozzle(`${spec.name}-N${i + 1}`, orifice, isCornered ? '45°' : spec.holes, spec.orifice);
  });
}
