import { type Box, isInside } from '../geometry/outline.ts';
import { type PlanPoint, polar } from '../geometry/point.ts';
import type { FieldRoomAnswer } from '../margins/field-room.ts';
import type { Issue, Settings, SheetSettings } from '../model/plan.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import type { Datum } from '../derived/datum.ts';
import { drawClouds } from './draw-clouds.ts';
import { drawCoverage } from './draw-coverage.ts';
import { drawCylinders, labelCylinders } from './draw-cylinders.ts';
import { labelFindings } from './draw-finding-marks.ts';
import { drawNozzles, drawRays, labelNozzles, nameNozzles } from './draw-nozzles.ts';
import { drawUserDimensions, labelNotes, labelRooms } from './draw-notes.ts';
import { drawPatches } from './draw-patches.ts';
import { drawPipes, drawUprights, labelPipes, labelUprights } from './draw-pipes.ts';
import { drawSolids, labelSolids } from './draw-solids.ts';
import { drawSupports } from './draw-supports.ts';
import { drawUnderlay } from './draw-underlay.ts';
import { drawWalls, labelOpenings } from './draw-walls.ts';
import type { NumberedFinding } from './findings-table.ts';
import { drawInRounds, handPlaced } from './hand-placed.ts';
import { settleLabels } from './labels.ts';
import { line, pen, text } from './marks.ts';
import { dimensionNozzles, dimensionRoom } from './nozzle-dimensions.ts';
import { type PlanContent, contentBounds } from './plan-content.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { type SectionCut, alongCut_m } from './section-cuts.ts';
import type { Mark, SheetLayer } from './sheet.ts';
import type { SymbolName } from './symbol-names.ts';
import { arrowHead } from './symbols.ts';
import { type PaperBox, marksBox } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';
import { type ViewDraft, inLayer, inRoom, marksOf, uprightBox, viewDraft, viewFrame } from './view-draft.ts';

/** A view composed on the paper it was given. */
export interface ComposedView {
  readonly marks: readonly Mark[];
  /** Paper that its marks fill. */
  readonly box: PaperBox;
  readonly scale: number;
  readonly used: ReadonlySet<SymbolName>;
  readonly unplaced: readonly string[];
}

export interface PlanViewOptions {
  readonly scale: number;
  readonly sizes: TypeSizes;
  readonly lengths: Settings['lengths'];
  /** Paper that the view may fill. */
  readonly room: PaperBox;
  readonly drawings: ReadonlyMap<string, UnderlayDrawing>;
  readonly cuts: readonly SectionCut[];
  readonly findings: readonly NumberedFinding[];
  /** What was issued last: its changes are clouded. */
  readonly issue: Issue | null;
  /** Datum by space key. */
  readonly datums: ReadonlyMap<string, Datum>;
  /** Where each nozzle may be put, by its key; not drawn when missing. */
  readonly rooms?: ReadonlyMap<string, FieldRoomAnswer>;
  /** Names only: dimensions and figures stand on the room plans. */
  readonly isOverview?: boolean;
  /** Key of the view; without one its dimension texts cannot be moved. */
  readonly viewKey?: string;
  /** Where the user put dimension texts. */
  readonly dimensions?: SheetSettings['dimensions'];
  /** Draws other things of the content than its nozzles and pipe. */
  readonly draw?: (view: ViewDraft, content: PlanContent, options: PlanViewOptions) => void;
  /** What the view must hold; all of the content when missing. */
  readonly bounds?: Box;
  /** Part of the level that this view shows; the whole level when missing. */
  readonly window?: Box;
}

/** Paper kept around the drawn walls for dimensions and labels [mm at factor 1]. */
export const PLAN_MARGIN_mm = 17;

/** Whether a site box fits on the view's paper at a scale, with room for dimensions around it. */
export function fitsPaper({ minX, minY, maxX, maxY }: Box, scale: number, room: PaperBox, factor: number, margin_mm = PLAN_MARGIN_mm): boolean {
  const margin = 2 * margin_mm * factor;
  return ((maxX - minX) * 1000) / scale + margin <= room.right - room.left && ((maxY - minY) * 1000) / scale + margin <= room.bottom - room.top;
}

/**
 * Draws one layer of a level to scale.
 * @returns undefined when nothing is drawn on the level
 */
export function composePlanView(content: PlanContent, options: PlanViewOptions): ComposedView | undefined {
  const bounds = options.window ?? options.bounds ?? contentBounds(content);
  if (!bounds) return undefined;
  const { room, sizes, lengths, scale } = options;
  const width_mm = ((bounds.maxX - bounds.minX) * 1000) / scale;
  const height_mm = ((bounds.maxY - bounds.minY) * 1000) / scale;
  const left = (room.left + room.right - width_mm) / 2;
  const bottom = (room.top + room.bottom + height_mm) / 2;
  const view = viewDraft(viewFrame(scale, bounds.minX, bounds.minY, left, bottom), sizes, lengths, room);
  view.hand = handPlaced(options.viewKey, options.dimensions ?? {});
  view.regionAt = (x, y) => {
    const at = { x: bounds.minX + ((x - left) * scale) / 1000, y: bounds.minY + ((bottom - y) * scale) / 1000 };
    return content.rooms.find(({ outline }) => isInside(at, outline))?.key;
  };
  const { window } = options;
  const isShown = ({ x, y }: PlanPoint): boolean => !window || (x >= window.minX && x < window.maxX && y >= window.minY && y < window.maxY);
  if (options.draw) options.draw(view, content, options);
  else drawContent(view, window ? seenIn(content, isShown) : content, options, isShown);
  if (window) {
    const marks = cutMarks(view, window);
    return { marks, box: marksBox(marks), scale, used: view.used, unplaced: view.unplaced };
  }
  const marks = marksOf(view);
  const box = marksBox(marks.filter((mark) => mark.kind !== 'clip'));
  return { marks: marks.map((mark) => (mark.kind === 'clip' ? clippedTo(mark, box, room) : mark)), box, scale, used: view.used, unplaced: view.unplaced };
}

/** Cuts an underlay to the paper that the layout itself fills, so that it never makes a view larger. */
function clippedTo(mark: Extract<Mark, { kind: 'clip' }>, box: PaperBox, room: PaperBox): Mark {
  const left = Math.max(box.left, room.left);
  const top = Math.max(box.top, room.top);
  return { ...mark, x: left, y: top, width_mm: Math.min(box.right, room.right) - left, height_mm: Math.min(box.bottom, room.bottom) - top };
}

function drawContent(view: ViewDraft, content: PlanContent, options: PlanViewOptions, isShown: (at: PlanPoint) => boolean): void {
  const { level, layer, rooms, spaces, networks, solids } = content;
  const nozzles = networks.flatMap((network) => network.nozzles);
  const on = (name: SheetLayer, draw: () => void): void => inLayer(view, name, draw);
  on('underlay', () => drawUnderlay(view, level, options.drawings));
  for (const space of spaces) {
    const own = nozzles.filter((nozzle) => nozzle.space?.key === space.key);
    if (own.length > 0 || space.isProtected) on('coverage', () => drawCoverage(view, space, own));
  }
  on('building', () => {
    drawSolids(view, solids);
    drawWalls(view, rooms);
  });
  on('nozzles', () => drawRays(view, nozzles));
  on('pipe', () => {
    for (const network of networks) drawPipes(view, network);
  });
  on('cylinders', () => {
    for (const network of networks) drawCylinders(view, network);
  });
  on('pipe', () => {
    for (const network of networks) drawUprights(view, network);
  });
  on('nozzles', () => drawNozzles(view, nozzles));
  on('supports', () => {
    for (const network of networks) drawSupports(view, network);
  });
  if (options.isOverview) {
    labelOverview(view, content, options);
    return;
  }
  const shownRooms = new Set(rooms.map(({ key }) => key));
  const cuts = options.cuts.filter((cut) => layer === 'room' && shownRooms.has(cut.room.key));
  on('notes', () => {
    for (const cut of cuts) drawCutMarks(view, cut, rooms);
  });
  const { rooms: patches } = options;
  if (patches) on('nozzles', () => drawPatches(view, nozzles, patches));
  on('findings', () => drawClouds(view, content, options.issue));
  const apart = new Map<string, readonly string[]>();
  drawInRounds(view, () => {
    for (const space of spaces) {
      const own = nozzles.filter((nozzle) => nozzle.space?.key === space.key);
      on('dimensions', () => {
        for (const [id, words] of dimensionNozzles(view, space, options.datums.get(space.key), own, rooms, isShown)) apart.set(id, words);
      });
    }
    if (layer === 'room') {
      on('dimensions', () => {
        drawUserDimensions(view, level);
        for (const room of rooms) dimensionRoom(view, room, rooms);
      });
    }
  });
  for (const network of networks) on('cylinders', () => labelCylinders(view, network));
  for (const network of networks) on('nozzles', () => labelNozzles(view, network, apart));
  for (const network of networks) on('pipe', () => labelUprights(view, network));
  on('findings', () => labelFindings(view, options.findings, content));
  for (const network of networks) on('pipe', () => labelPipes(view, network));
  on('building', () => labelSolids(view, solids));
  if (layer === 'room') {
    on('building', () => labelOpenings(view, rooms));
    labelNotes(view, level);
  }
  labelRooms(view, spaces);
  on('notes', () => settleLabels(view));
}

/** Names of rooms and nozzles, the user's own notes and dimensions, and where findings are. */
function labelOverview(view: ViewDraft, content: PlanContent, options: PlanViewOptions): void {
  if (content.layer === 'room') {
    inLayer(view, 'dimensions', () => drawInRounds(view, () => drawUserDimensions(view, content.level)));
    labelNotes(view, content.level);
    const inRooms = new Set(content.rooms.flatMap(({ solids }) => solids.map(({ ref }) => ref.id)));
    inLayer(view, 'building', () => labelSolids(view, content.solids.filter(({ ref }) => !inRooms.has(ref.id))));
  }
  inLayer(view, 'nozzles', () => {
    for (const network of content.networks) nameNozzles(view, network);
  });
  labelRooms(view, content.spaces);
  inLayer(view, 'findings', () => labelFindings(view, options.findings, content));
  inLayer(view, 'notes', () => settleLabels(view));
}

/** What of a layer has its place within a window; walls and things stay, for they are cut at its edge. */
const seenIn = (content: PlanContent, isShown: (at: PlanPoint) => boolean): PlanContent => ({
  ...content,
  networks: content.networks.map((network) => ({ ...network, nozzles: network.nozzles.filter(({ at }) => at && isShown(at)), supports: network.supports.filter(({ support }) => isShown(support.at)) })),
  level: {
    ...content.level,
    notes: Object.fromEntries(Object.entries(content.level.notes).filter(([, { at }]) => isShown(at))),
    dimensions: Object.fromEntries(Object.entries(content.level.dimensions).filter(([, { a, b }]) => isShown(a) && isShown(b))),
  },
});

/** Cuts the lines of a partial view at its window and draws the window's edge as a match line. */
function cutMarks(view: ViewDraft, window: Box): Mark[] {
  const [left, top] = [view.frame.x(window.minX), view.frame.y(window.maxY)];
  const [right, bottom] = [view.frame.x(window.maxX), view.frame.y(window.minY)];
  const dashed = pen(WEIGHT.medium, undefined, [8, 2, 2, 2]);
  return [
    { kind: 'clip', x: left, y: top, width_mm: right - left, height_mm: bottom - top, marks: [...view.under, ...view.lines] },
    line(dashed, left, top, right, top, right, bottom, left, bottom, left, top),
    ...view.texts,
  ];
}

/** Marks both ends of a cut: a heavy stroke, an arrow the way it looks, and its letter. */
function drawCutMarks(view: ViewDraft, cut: SectionCut, rooms: readonly { readonly outline: readonly PlanPoint[] }[]): void {
  const { frame, sizes } = view;
  const { factor } = sizes;
  view.used.add('section-cut');
  const look_rad = cut.along_rad + Math.PI / 2;
  const isCrowded = rooms.some(({ outline }) =>
    outline.some((p) => {
      const way = alongCut_m(cut, p);
      return (way < cut.from_m - 1e-6 && way > cut.from_m - 14 * factor * (cut.to_m - cut.from_m) / frame.mm(cut.to_m - cut.from_m)) || (way > cut.to_m + 1e-6 && way < cut.to_m + 14 * factor / frame.mm(1));
    }),
  );
  for (const [end_m, sense] of [
    [cut.from_m, -1],
    [cut.to_m, 1],
  ] as const) {
    const outSense = isCrowded ? -sense : sense;
    const wall = polar(cut.through, cut.along_rad, end_m);
    const ux = Math.cos(cut.along_rad) * outSense;
    const uy = -Math.sin(cut.along_rad) * outSense;
    const [wx, wy] = [frame.x(wall.x), frame.y(wall.y)];
    const long = 5 * factor;
    const starts = [0, 3, 6, 9, 12].map((step) => ((isCrowded ? 1.2 : 3) + step) * factor);
    const isClear = (from: number): boolean =>
      view.placer.isFree(uprightBox(wx + ux * (from + long / 2), wy + uy * (from + long / 2), (Math.abs(ux) * long) / 2 + factor, (Math.abs(uy) * long) / 2 + factor));
    const gap = starts.find(isClear) ?? 3 * factor;
    const [x0, y0, x1, y1] = [wx + ux * gap, wy + uy * gap, wx + ux * (gap + long), wy + uy * (gap + long)];
    const tip = { x: x1 + Math.cos(look_rad) * 4 * factor, y: y1 - Math.sin(look_rad) * 4 * factor };
    view.lines.push(
      line(pen(WEIGHT.heavy * factor), x0, y0, x1, y1),
      line(pen(WEIGHT.thin * factor), x1, y1, tip.x, tip.y),
      arrowHead(tip.x, tip.y, look_rad, 2.2 * factor, PRINT.ink),
    );
    const height = sizes.heading_mm;
    const tx = x1 - Math.cos(look_rad) * (height * 0.9);
    const ty = y1 + Math.sin(look_rad) * (height * 0.9);
    if (!inRoom(view, tx, ty)) continue;
    view.texts.push(text(tx, ty + height / 2, cut.letter, { height_mm: height, font: 'bold', align: 'middle', halo: true }));
    view.placer.block(uprightBox(tx, ty + height * 0.1, height * 0.6, height * 0.75));
    view.placer.block(uprightBox((x0 + x1) / 2, (y0 + y1) / 2, Math.abs(x1 - x0) / 2 + 0.6, Math.abs(y1 - y0) / 2 + 0.6));
    view.placer.block(uprightBox((x1 + tip.x) / 2, (y1 + tip.y) / 2, Math.abs(x1 - tip.x) / 2 + factor, Math.abs(y1 - tip.y) / 2 + factor));
  }
}
