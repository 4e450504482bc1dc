import type { Space, WallFace } from '#shared/derived/derived';
import type { PlanPoint } from '#shared/geometry/point';
import { type Opening, refKey } from '#shared/model/plan';
import { formatLength } from '#shared/units/length-text';
import { detailAt } from './level-of-detail.ts';
import { write } from './lettering.ts';
import { type Pen, type Px, polyline, setLine, trace } from './pen.ts';
import { type Scene, roomsOf } from './scene.ts';
import { hatchRings } from './symbols/hatch.ts';
import { type OpeningPlace, drawOpening } from './symbols/opening-symbol.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** Walls are drawn this thick outside their finished face [m]; the plan knows only the face. */
const DRAWN_WALL_m = 0.15;

/** How thick walls are drawn at a scale [px]. */
const wallThickness_px = (view: Viewport): number => Math.min(40, Math.max(5, DRAWN_WALL_m * view.camera.scale_px_m));

/** How wide the line of a finished face is drawn at a scale [px]. */
const faceWidth_px = (view: Viewport): number => (view.camera.scale_px_m < 12 ? 1.75 : 2.75);

const isInSight = (view: Viewport, { bounds }: Space): boolean => {
  const box = visibleBox(view, 60);
  return bounds.maxX >= box.minX && bounds.minX <= box.maxX && bounds.maxY >= box.minY && bounds.minY <= box.maxY;
};

const ringsOf = ({ outline, holes }: Space): (readonly PlanPoint[])[] => [outline, ...holes];

/** Enclosures: hatched wall outside a heavy finished face, openings in their gaps, ceiling zones dashed. */
export function drawEnclosures(pen: Pen, view: Viewport, scene: Scene): void {
  const all = roomsOf(scene).filter((room) => isInSight(view, room));
  const shown = all.filter((room) => scene.shows(refKey(room.enclosureRef)));
  if (shown.length === 0) return;
  const everyRing = all.flatMap(ringsOf).map((ring) => ring.map((p) => toScreen(view, p)));
  drawWallBands(pen, view, scene, shown, everyRing);
  for (const room of shown) {
    setLine(pen, { colour: scene.ink.wall, width: faceWidth_px(view), join: 'miter' });
    for (const ring of ringsOf(room)) polyline(pen, ring.map((p) => toScreen(view, p)), true);
  }
  for (const room of shown) {
    drawCeilingZones(pen, view, scene, room);
    if (detailAt(view.camera.scale_px_m).symbols) drawOpenings(pen, view, scene, room);
  }
}

/** The cut wall outside the finished faces: a tint with slanted lines, kept out of every room. */
function drawWallBands(pen: Pen, view: Viewport, scene: Scene, rooms: readonly Space[], everyRing: readonly (readonly Px[])[]): void {
  const { wall, paper } = scene.ink;
  const band = wallThickness_px(view);
  pen.save();
  pen.beginPath();
  pen.rect(-60, -60, view.width + 120, view.height + 120);
  for (const ring of everyRing) trace(pen, ring, true);
  pen.clip('evenodd');
  const rings = rooms.flatMap(ringsOf).map((ring) => ring.map((p) => toScreen(view, p)));
  setLine(pen, { colour: paper, width: 2 * band, join: 'miter' });
  for (const ring of rings) polyline(pen, ring, true);
  pen.globalAlpha = 0.22;
  setLine(pen, { colour: wall, width: 2 * band, join: 'miter' });
  for (const ring of rings) polyline(pen, ring, true);
  if (detailAt(view.camera.scale_px_m).fine && band >= 7) {
    pen.globalAlpha = 0.55;
    for (const room of rooms) for (const face of room.walls) hatchFace(pen, view, face, band, wall);
  }
  pen.globalAlpha = 1;
  pen.restore();
}

/** Slanted lines in the band behind one finished face. */
function hatchFace(pen: Pen, view: Viewport, { segment, inward_rad }: WallFace, band: number, colour: string): void {
  const a = toScreen(view, segment.a);
  const b = toScreen(view, segment.b);
  const out = { x: -Math.cos(inward_rad) * band, y: Math.sin(inward_rad) * band };
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const run = { x: ((b.x - a.x) / length) * band, y: ((b.y - a.y) / length) * band };
  const quad = [
    { x: a.x - run.x, y: a.y - run.y },
    { x: b.x + run.x, y: b.y + run.y },
    { x: b.x + run.x + out.x, y: b.y + run.y + out.y },
    { x: a.x - run.x + out.x, y: a.y - run.y + out.y },
  ];
  hatchRings(pen, [quad], toScreen(view, { x: 0, y: 0 }), view, { colour, spacing_px: 6 });
}

function drawCeilingZones(pen: Pen, view: Viewport, scene: Scene, room: Space): void {
  const { names } = detailAt(view.camera.scale_px_m);
  for (const zone of Object.values(room.enclosure.ceilingZones)) {
    const ring = zone.outline.map((p) => toScreen(view, p));
    setLine(pen, { colour: scene.ink.quiet, width: 1.25, dash: [7, 4] });
    polyline(pen, ring, true);
    const corner = ring.reduce((best, p) => (p.x - p.y < best.x - best.y ? p : best), ring[0] ?? { x: 0, y: 0 });
    if (names) {
      const text = `${zone.name ? `${zone.name}: ` : ''}ceiling ${formatLength(zone.height_m, scene.lengths)}`;
      write(pen, text, { x: corner.x + 6, y: corner.y - 10 }, { colour: scene.ink.quiet, halo: scene.ink.paper });
    }
  }
}

/** Where an opening sits on the screen; undefined when its wall has gone. */
export function openingPlace(view: Viewport, room: Space, opening: Opening): OpeningPlace | undefined {
  const face = room.walls.find(({ ref }) => ref.id === opening.wall);
  const from = cornerOf(room, opening.wall);
  if (!face || !from) return undefined;
  const { a, b } = face.segment;
  const [start, end] = Math.hypot(a.x - from.x, a.y - from.y) <= Math.hypot(b.x - from.x, b.y - from.y) ? [a, b] : [b, a];
  const length_m = Math.hypot(end.x - start.x, end.y - start.y) || 1;
  const at = (along_m: number): Px =>
    toScreen(view, { x: start.x + ((end.x - start.x) * along_m) / length_m, y: start.y + ((end.y - start.y) * along_m) / length_m });
  return {
    a: at(opening.along_m - opening.width_m / 2),
    b: at(opening.along_m + opening.width_m / 2),
    inward: { x: Math.cos(face.inward_rad), y: -Math.sin(face.inward_rad) },
    thickness_px: wallThickness_px(view),
  };
}

/** Corner that a wall starts at, as the user drew the ring: openings count from it whichever way the ring winds. */
const cornerOf = ({ enclosure }: Space, id: string): PlanPoint | undefined =>
  [enclosure.outline, ...enclosure.holes].flat().find((corner) => corner.id === id);

function drawOpenings(pen: Pen, view: Viewport, scene: Scene, room: Space): void {
  for (const opening of Object.values(room.enclosure.openings)) {
    const place = openingPlace(view, room, opening);
    if (place) drawOpening(pen, opening, place, { colour: scene.ink.wall, paper: scene.ink.paper, wall_px: faceWidth_px(view) });
  }
}
