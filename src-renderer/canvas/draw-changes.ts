import type { ChangeKind, PlanChange, ThingShape } from '#shared/revisions/plan-change';
import type { Ink } from '../ink.ts';
import { write } from './lettering.ts';
import { type Pen, type Px, aside, disc, gap_px, heading_rad, line, polyline, ring, setLine, trace } from './pen.ts';
import { type Viewport, toScreen, visibleBox } from './viewport.ts';

/** Half of a badge [px]. */
const BADGE_px = 8;
/** A way shorter than this is told by its badge alone [px]. */
const LEAST_ARROW_px = 14;

const colourOf = (kind: ChangeKind, ink: Ink): string => ({ added: ink.verdict.ok, moved: ink.cool, changed: ink.warm, removed: ink.verdict.stop })[kind];

const middleOf = (places: readonly Px[]): Px => ({ x: places.reduce((sum, { x }) => sum + x, 0) / places.length, y: places.reduce((sum, { y }) => sum + y, 0) / places.length });

/** The sign of a change in a ring, drawn in lines so that no font is asked. */
function drawBadge(pen: Pen, at: Px, kind: ChangeKind, ink: Ink): void {
  const colour = colourOf(kind, ink);
  disc(pen, at, BADGE_px + 1.5, ink.paper);
  setLine(pen, { colour, width: 1.75 });
  ring(pen, at, BADGE_px);
  const half = BADGE_px * 0.5;
  switch (kind) {
    case 'added':
      line(pen, { x: at.x - half, y: at.y }, { x: at.x + half, y: at.y });
      line(pen, { x: at.x, y: at.y - half }, { x: at.x, y: at.y + half });
      break;
    case 'removed':
      line(pen, { x: at.x - half, y: at.y - half }, { x: at.x + half, y: at.y + half });
      line(pen, { x: at.x - half, y: at.y + half }, { x: at.x + half, y: at.y - half });
      break;
    case 'moved':
      line(pen, { x: at.x - half, y: at.y }, { x: at.x + half, y: at.y });
      polyline(pen, [{ x: at.x + half * 0.2, y: at.y - half * 0.8 }, { x: at.x + half, y: at.y }, { x: at.x + half * 0.2, y: at.y + half * 0.8 }]);
      break;
    case 'changed':
      polyline(pen, [{ x: at.x, y: at.y - half }, { x: at.x + half, y: at.y + half * 0.7 }, { x: at.x - half, y: at.y + half * 0.7 }], true);
      break;
  }
}

function drawShape(pen: Pen, places: readonly Px[], isClosed: boolean, isGhost: boolean, colour: string, radius = BADGE_px + 4): void {
  setLine(pen, { colour, width: 2, dash: isGhost ? [5, 4] : [] });
  if (places.length === 1 && places[0]) ring(pen, places[0], radius);
  else polyline(pen, places, isClosed);
  if (!isClosed || isGhost) return;
  aside(pen, () => {
    pen.beginPath();
    trace(pen, places, true);
    pen.globalAlpha = 0.08;
    pen.fillStyle = colour;
    pen.fill();
  });
}

function drawArrow(pen: Pen, from: Px, to: Px, colour: string): void {
  if (gap_px(from, to) < LEAST_ARROW_px) return;
  const back = heading_rad(to, from);
  const barb = (turn: number): Px => ({ x: to.x + 9 * Math.cos(back + turn), y: to.y - 9 * Math.sin(back + turn) });
  setLine(pen, { colour, width: 1.75 });
  line(pen, from, to);
  polyline(pen, [barb(0.45), to, barb(-0.45)]);
}

/** Changes of a level that have a place, the shown one last and with its name. */
export const changesOn = (changes: readonly PlanChange[], level: string): readonly PlanChange[] =>
  changes.filter(({ before, now }) => [before, now].some((shape) => shape?.level === level && shape.places.length > 0));

/**
 * Paints what differs between two states of a plan: what came is drawn in full lines, what went and where a thing stood
 * before in dashes, with an arrow to its new place; each with a sign of its own.
 * @param shown  key of the change that is read in the list
 */
export function drawChanges(pen: Pen, view: Viewport, changes: readonly PlanChange[], level: string, shown: string | null, ink: Ink): void {
  const box = visibleBox(view, 40);
  const isNear = (shape: ThingShape): boolean => {
    const [xs, ys] = [shape.places.map(({ x }) => x), shape.places.map(({ y }) => y)];
    return Math.max(...xs) >= box.minX && Math.min(...xs) <= box.maxX && Math.max(...ys) >= box.minY && Math.min(...ys) <= box.maxY;
  };
  const onScreen = (shape: ThingShape | null): Px[] => (shape?.level === level && shape.places.length > 0 && isNear(shape) ? shape.places.map((place) => toScreen(view, place)) : []);
  const sorted = [...changes].sort((a, b) => Number(a.key === shown) - Number(b.key === shown));
  for (const { key, kind, ref, name, before, now } of sorted) {
    const [was, is] = [onScreen(before), onScreen(now)];
    const colour = colourOf(kind, ink);
    const isMoved = kind === 'moved';
    const radius = ref?.kind === 'node' || ref?.kind === 'support' ? 5 : BADGE_px + 4;
    if (was.length > 0 && (kind === 'removed' || isMoved)) drawShape(pen, was, before?.isClosed ?? false, true, colour, radius);
    if (is.length > 0 && kind !== 'removed') drawShape(pen, is, now?.isClosed ?? false, false, colour, radius);
    if (isMoved && was.length > 0 && is.length > 0) drawArrow(pen, middleOf(was), middleOf(is), colour);
    const places = is.length > 0 ? is : was;
    // Pipe that went along is told by dashes and arrow: signs at each joint would cover what they are about.
    const goesAlong = isMoved && (ref?.kind === 'node' || ref?.kind === 'support') && key !== shown;
    if (places.length === 0 || goesAlong) continue;
    const middle = middleOf(places);
    const at = places.length === 1 ? { x: middle.x + BADGE_px * 2, y: middle.y - BADGE_px * 2 } : middle;
    drawBadge(pen, at, kind, ink);
    if (key === shown) write(pen, name, { x: at.x + BADGE_px + 6, y: at.y }, { colour, halo: ink.paper, bold: true });
  }
}
