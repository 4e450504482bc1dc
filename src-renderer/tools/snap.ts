import { type PlanPoint, distance_m, midpoint, planPoint, polar } from '#shared/geometry/point';
import { type Segment, meetingOf, nearestOnSegment } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { SnapLine, SnapSources } from './snap-sources.ts';
import type { Anchors, Snap } from './tool.ts';

/** What is caught besides the sources. */
export interface SnapSettings {
  /** Distance between grid lines [m]; null catches no grid. */
  readonly grid_m: number | null;
  /** Keeps a line from `anchors.from` level or upright. */
  readonly orthogonal: boolean;
}

/** What a catch is called beside the pointer and on the status line. */
export const SNAP_WORDS: Readonly<Record<Snap['kind'], string>> = {
  free: '',
  grid: 'grid',
  end: 'corner',
  midpoint: 'middle',
  perpendicular: 'square to the line',
  intersection: 'crossing',
  'on-line': 'on the line',
  underlay: 'floor plan',
  node: 'pipe or nozzle',
  typed: 'as typed',
};

type Candidate = Pick<Snap, 'at' | 'kind'> & { readonly guides?: Snap['guides'] };

/** Rounds of catching: a caught place may lie within reach of a better one. Each round climbs the order below. */
const MOST_ROUNDS = 8;
/** Lines that are crossed with each other: the nearest ones. */
const MOST_CROSSED = 24;

const nearest = (at: PlanPoint, reach_m: number, candidates: readonly Candidate[]): Candidate | undefined => {
  let best: Candidate | undefined;
  let least = reach_m;
  for (const candidate of candidates) {
    const distance = distance_m(at, candidate.at);
    // A later one must be truly nearer: of two in one place the first named wins.
    if (distance <= least && (!best || distance < least - SAME_PLACE_m)) {
      best = candidate;
      least = distance;
    }
  }
  return best;
};

/** Nearest grid crossing. */
const onGrid = ({ x, y }: PlanPoint, grid_m: number): PlanPoint => planPoint(Math.round(x / grid_m) * grid_m, Math.round(y / grid_m) * grid_m);

const lineKind = (line: SnapLine, kind: 'intersection' | 'on-line' | 'perpendicular'): Snap['kind'] => (line.isUnderlay ? 'underlay' : kind);

function crossingsOf(at: PlanPoint, reach_m: number, lines: readonly SnapLine[]): Candidate[] {
  const crossed = lines
    .map((line) => ({ line, distance: distance_m(at, nearestOnSegment(at, line.segment)) }))
    .filter(({ distance }) => distance <= reach_m)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, MOST_CROSSED);
  const found: Candidate[] = [];
  crossed.forEach(({ line }, i) => {
    for (const { line: other } of crossed.slice(i + 1)) {
      const met = meetingOf(line.segment, other.segment);
      if (met) found.push({ at: met, kind: line.isUnderlay && other.isUnderlay ? 'underlay' : 'intersection' });
    }
  });
  return found;
}

/** Foot of a place on a line, if it falls on the piece itself. */
function footOn(from: PlanPoint, { a, b }: Segment): PlanPoint | undefined {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const t = ((from.x - a.x) * dx + (from.y - a.y) * dy) / (dx * dx + dy * dy);
  return t >= 0 && t <= 1 ? planPoint(a.x + t * dx, a.y + t * dy) : undefined;
}

/** One round without a locked line: corners, nodes and ends; crossings; middles and perpendiculars; lines; grid. */
function catchAround(at: PlanPoint, reach_m: number, sources: SnapSources, settings: SnapSettings, from: PlanPoint | undefined): Candidate {
  const places = sources.placesNear(at, reach_m);
  const underlayEnd = sources.underlayEndNear(at, reach_m);
  const ends: Candidate[] = places.filter(({ kind }) => kind !== 'midpoint');
  if (underlayEnd) ends.push({ at: underlayEnd, kind: 'underlay' });
  const end = nearest(at, reach_m, ends);
  if (end) return end;

  const lines = sources.linesNear(at, reach_m);
  const crossing = nearest(at, reach_m, crossingsOf(at, reach_m, lines));
  if (crossing) return crossing;

  const marks: Candidate[] = places.filter(({ kind }) => kind === 'midpoint');
  for (const line of lines) {
    if (!line.isUnderlay) marks.push({ at: midpoint(line.segment.a, line.segment.b), kind: 'midpoint' });
    const foot = from && footOn(from, line.segment);
    if (from && foot && distance_m(from, foot) > SAME_PLACE_m) {
      marks.push({ at: foot, kind: lineKind(line, 'perpendicular'), guides: [{ a: from, b: foot }] });
    }
  }
  const mark = nearest(at, reach_m, marks);
  if (mark) return mark;

  const on = lines.map((line): Candidate => ({ at: nearestOnSegment(at, line.segment), kind: lineKind(line, 'on-line'), guides: [line.segment] }));
  const held = nearest(at, reach_m, on);
  if (held) return settings.grid_m === null ? held : { ...held, at: stepOn(held, settings.grid_m) };
  return settings.grid_m === null ? { at, kind: 'free' } : { at: onGrid(at, settings.grid_m), kind: 'grid' };
}

/** A place caught on a level or upright line, brought level with the grid as far as the line goes. */
function stepOn({ at, guides }: Candidate, grid_m: number): PlanPoint {
  const line = guides?.[0];
  if (!line) return at;
  const stepped = line.a.y === line.b.y ? planPoint(onGrid(at, grid_m).x, at.y) : line.a.x === line.b.x ? planPoint(at.x, onGrid(at, grid_m).y) : at;
  return distance_m(nearestOnSegment(stepped, line), stepped) <= SAME_PLACE_m ? stepped : at;
}

/** Where the line from `from` in a direction crosses a piece. */
function crossAxis(from: PlanPoint, axis_rad: number, { a, b }: Segment): PlanPoint | undefined {
  const ux = Math.cos(axis_rad);
  const uy = Math.sin(axis_rad);
  const offA = ux * (a.y - from.y) - uy * (a.x - from.x);
  const offB = ux * (b.y - from.y) - uy * (b.x - from.x);
  if (offA * offB > 0 || Math.abs(offA - offB) < 1e-12) return undefined;
  const t = offA / (offA - offB);
  const along = (a.x + t * (b.x - a.x) - from.x) * ux + (a.y + t * (b.y - a.y) - from.y) * uy;
  return onAxis(from, axis_rad, along);
}

/** A place along a locked line; level and upright lines keep the other coordinate to the last digit. */
function onAxis(from: PlanPoint, axis_rad: number, along_m: number): PlanPoint {
  if (axis_rad === 0) return planPoint(from.x + along_m, from.y);
  if (axis_rad === Math.PI / 2) return planPoint(from.x, from.y + along_m);
  return polar(from, axis_rad, along_m);
}

/** One round on a locked line: level with corners and nodes near it; crossings; level with the anchors; grid. */
function catchOnAxis(at: PlanPoint, reach_m: number, sources: SnapSources, settings: SnapSettings, from: PlanPoint, axis_rad: number, align: readonly PlanPoint[]): Candidate {
  const ux = Math.cos(axis_rad);
  const uy = Math.sin(axis_rad);
  const onto = (p: PlanPoint): PlanPoint => onAxis(from, axis_rad, (p.x - from.x) * ux + (p.y - from.y) * uy);
  const levelWith = (p: PlanPoint, kind: Snap['kind']): Candidate => ({ at: onto(p), kind, guides: [{ a: p, b: onto(p) }] });

  const underlayEnd = sources.underlayEndNear(at, reach_m);
  const ends = sources
    .placesNear(at, reach_m)
    .filter(({ kind }) => kind !== 'midpoint')
    .map((place) => levelWith(place.at, place.kind));
  if (underlayEnd) ends.push(levelWith(underlayEnd, 'underlay'));
  const crossings = sources.linesNear(at, reach_m).flatMap((line): Candidate[] => {
    const met = crossAxis(from, axis_rad, line.segment);
    return met ? [{ at: met, kind: lineKind(line, 'intersection') }] : [];
  });
  const caught =
    nearest(at, reach_m, ends) ??
    nearest(at, reach_m, crossings) ??
    nearest(
      at,
      reach_m,
      align.map((p) => levelWith(p, 'end')),
    );
  if (caught) return caught;
  if (settings.grid_m !== null && axis_rad === 0) return { at: planPoint(Math.round(at.x / settings.grid_m) * settings.grid_m, from.y), kind: 'grid' };
  if (settings.grid_m !== null && axis_rad === Math.PI / 2) return { at: planPoint(from.x, Math.round(at.y / settings.grid_m) * settings.grid_m), kind: 'grid' };
  return { at, kind: 'free' };
}

/** Catches round by round until a place catches itself, so that a caught place never moves when it is caught again. */
function settle(start: PlanPoint, catchAt: (at: PlanPoint) => Candidate): Candidate {
  let caught = catchAt(start);
  for (let round = 1; round < MOST_ROUNDS && caught.kind !== 'free'; round += 1) {
    const again = catchAt(caught.at);
    if (distance_m(again.at, caught.at) <= SAME_PLACE_m) return caught;
    caught = again;
  }
  return caught;
}

/**
 * Catches the place that the user means near `raw`.
 *
 * Order: corners, pipe nodes, nozzles, cylinders and ends of floor plan lines; crossings; middles and feet of
 * perpendiculars; lines, in steps of the grid where they run along it; grid. Within one rank the nearest wins. With a locked line (orthogonal lock or a typed
 * direction) the place stays on that line and is caught level with what is near it.
 *
 * @param reach_m  how far a catch reaches [m]; the grid always catches
 */
export function snapTo(raw: PlanPoint, reach_m: number, sources: SnapSources, settings: SnapSettings, anchors: Anchors = {}): Snap {
  const { from, align = [] } = anchors;
  if (from && (anchors.axis_rad !== undefined || settings.orthogonal)) {
    if (distance_m(raw, from) <= SAME_PLACE_m) return { at: from, kind: 'free', guides: [] };
    const isLevel = Math.abs(raw.x - from.x) >= Math.abs(raw.y - from.y);
    const axis_rad = anchors.axis_rad ?? (isLevel ? 0 : Math.PI / 2);
    const along_m = (raw.x - from.x) * Math.cos(axis_rad) + (raw.y - from.y) * Math.sin(axis_rad);
    const caught = settle(onAxis(from, axis_rad, along_m), (at) => catchOnAxis(at, reach_m, sources, settings, from, axis_rad, align));
    return { at: caught.at, kind: caught.kind, guides: [{ a: from, b: caught.at }, ...(caught.guides ?? [])] };
  }
  const caught = settle(raw, (at) => catchAround(at, reach_m, sources, settings, from));
  return { at: caught.at, kind: caught.kind, guides: caught.guides ?? [] };
}
