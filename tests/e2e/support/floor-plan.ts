import { drawDxf } from '../../../src-main/demos/draw-dxf.ts';
import { type FloorDrawing, boxLine, ft, openLine, swingLine } from '../../../src-main/demos/floor-drawing.ts';

/** Thickness of the walls of the floor plan [m]; the south-west inner corner lies as far from its origin. */
const WALL_m = ft(0, 6);

/** A plan place from feet east and north of the south-west inner corner. */
export const inRoom = (east_ft: number, north_ft: number): { readonly x: number; readonly y: number } => ({ x: WALL_m + ft(east_ft), y: WALL_m + ft(north_ft) });

const faces = (places: readonly (readonly [number, number])[], outward_m: number) => {
  const middle = ft(8);
  return {
    places: places.map(([x, y], i): [number, number] => {
      // The corner where the bay meets the long side points into the room; the others point out of it.
      const isInner = i === 3;
      const east = isInner ? 1 : x > middle ? 1 : -1;
      const north = isInner ? 1 : y > ft(6) ? 1 : -1;
      return [WALL_m + x + east * outward_m, WALL_m + y + north * outward_m];
    }),
    closed: true,
  };
};

/** Finished faces of an L: 24 ft by 12 ft, with a bay of 10 ft by 3 ft to the north at its west end. */
const ROOM: readonly (readonly [number, number])[] = [
  [0, 0],
  [ft(24), 0],
  [ft(24), ft(12)],
  [ft(10), ft(12)],
  [ft(10), ft(15)],
  [0, ft(15)],
];

const DOOR_m = ft(12);

const drawing: FloorDrawing = {
  width_m: ft(24) + 2 * WALL_m,
  depth_m: ft(15) + 2 * WALL_m,
  layers: {
    WALLS: [faces(ROOM, 0), faces(ROOM, WALL_m)],
    DOORS: [
      openLine([WALL_m + DOOR_m, WALL_m], [WALL_m + DOOR_m, 0]),
      openLine([WALL_m + DOOR_m + ft(3), WALL_m], [WALL_m + DOOR_m + ft(3), 0]),
      swingLine(WALL_m + DOOR_m, 0, ft(3), 0, -Math.PI / 2),
    ],
    FURNITURE: [boxLine(WALL_m + ft(17), WALL_m + ft(9.5), WALL_m + ft(22), WALL_m + ft(12))],
  },
  words: [{ x: WALL_m + ft(9), y: WALL_m + ft(4), height_m: ft(0, 8), text: 'SWITCH ROOM' }],
};

/** A floor plan in inches as DXF: one L-shaped room of double-line walls, with a door, desks and its name, on layers. Invented. */
export const switchRoomDxf = (): Uint8Array => drawDxf(drawing);
