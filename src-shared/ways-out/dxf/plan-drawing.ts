import type { Derived } from '../../derived/derived.ts';
import { datumsOf } from '../../derived/datum.ts';
import { profilesInUse } from '../../sheets/limits-table.ts';
import type { PlanContent } from '../../sheets/plan-content.ts';
import type { UnderlayDrawing } from '../../underlay/drawing.ts';
import { formatLength } from '../../units/length-text.ts';
import { boundsOfEntities } from './bounds-of-entities.ts';
import type { DxfDrawing } from './drawing.ts';
import { drawDevices } from './draw-devices.ts';
import { dimensionNozzles, dimensionWalls, drawUserDimensions } from './draw-dimensions.ts';
import { drawNetwork } from './draw-network.ts';
import { drawAdjoining, drawRooms, nameRooms } from './draw-rooms.ts';
import { drawSolids } from './draw-solids.ts';
import { type LeftOut, drawUnderlays } from './draw-underlays.ts';
import { DRAWN_FOR, type DrawingDraft, M_PER_MM, TEXT_m, addWords, at3, drawingDraft } from './drawing-draft.ts';
import { layersInUse } from './layers.ts';

/** Text from row to row, in text heights. */
const PITCH = 1.7;

/**
 * One plan view as a drawing in real measures: rooms, things, pipe, nozzles, devices and dimensions at their places.
 * The imported floor plans lie beneath, on a layer of their own.
 * @param drawings  floor plans by underlay id; the drawing says of those that are missing that they are
 */
export function planDrawing(derived: Derived, content: PlanContent, drawings: ReadonlyMap<string, UnderlayDrawing> = new Map()): DxfDrawing {
  const { lengths } = derived.plan.settings;
  const { level, layer, rooms, spaces, networks, solids } = content;
  const draft = drawingDraft(lengths);
  const isRoom = layer === 'room';
  const leftOut = drawUnderlays(draft, level, drawings);
  blockSymbols(draft, content);
  drawRooms(draft, rooms);
  if (isRoom) drawAdjoining(draft, Object.values(level.adjoining));
  drawSolids(draft, solids);
  for (const network of networks) drawNetwork(draft, network);
  drawDevices(draft, Object.values(level.devices).filter((device) => (device.kind === 'detector' ? device.space === layer : isRoom)));
  const datums = datumsOf(derived);
  const taken: Parameters<typeof dimensionWalls>[3] = [];
  if (isRoom) for (const room of rooms) dimensionWalls(draft, room, rooms, taken);
  for (const space of spaces) {
    const own = networks.flatMap(({ nozzles }) => nozzles).filter((nozzle) => nozzle.space?.key === space.key);
    dimensionNozzles(draft, space, datums.get(space.key), own, rooms, taken);
  }
  if (isRoom) {
    drawUserDimensions(draft, level);
    for (const { at, text } of Object.values(level.notes)) for (const [i, line] of text.split(/\r?\n/).entries()) addWords(draft, 'notes', [at.x, at.y - i * TEXT_m * PITCH, 0], line);
  }
  nameRooms(draft, spaces);
  writeRemarks(draft, derived, content, leftOut);
  return { lengths, text_m: TEXT_m, layers: layersInUse(layersOf(draft)), blocks: draft.blocks, entities: draft.entities };
}

/** Radius that texts keep off a nozzle or a device [m]. */
const SYMBOL_m = 2.2 * M_PER_MM;

/** Keeps the texts of what is drawn first off the symbols that are drawn later. */
function blockSymbols(draft: DrawingDraft, { level, networks }: PlanContent): void {
  const places = [...networks.flatMap(({ nozzles }) => nozzles.flatMap(({ at }) => at ?? [])), ...Object.values(level.devices).map(({ at }) => at)];
  for (const { x, y } of places) draft.words.block(x, y, SYMBOL_m);
}

const layersOf = ({ entities }: DrawingDraft): ReadonlySet<string> => new Set(entities.map(({ layer }) => layer));

/** What must be known before anything is measured in the drawing, below it. */
function writeRemarks(draft: DrawingDraft, derived: Derived, content: PlanContent, { missing, pictures }: LeftOut): void {
  const { plan } = derived;
  const { lengths } = plan.settings;
  const own = profilesInUse(derived);
  const profiles = own.length > 0 ? own : Object.values(plan.profiles);
  const elevation_m = content.level.floorElevation_m;
  const lines = [
    [plan.info.project, plan.info.site].filter((words) => words.trim() !== '').join(', '),
    `Nozzle and pipe plan: ${content.title}`,
    `Drawn in ${lengths === 'feet' ? 'inches' : 'metres'}. Heights are above the finished floor of this level${elevation_m === 0 ? '' : `, which lies at ${formatLength(elevation_m, lengths)}`}. Symbols and texts have their size for a print 1:${DRAWN_FOR}.`,
    ...(missing > 0 ? ['An imported floor plan of this level is not in this drawing: lay it over the file that it came from.'] : []),
    ...(pictures > 0 ? ['The floor plan beneath has pictures that are not in this drawing.'] : []),
    ...(profiles.some(({ isSample }) => isSample) ? ['SAMPLE PROFILE: NOT FOR CONSTRUCTION'] : []),
    'A copy for reference. The issued sheets, the listing and the manual of the unit, and local codes come first.',
  ].filter((words) => words !== '');
  const { minX: left, minY: bottom } = boundsOfEntities(draft.entities);
  const first = bottom - TEXT_m * 6;
  for (const [i, words] of lines.entries()) addWords(draft, 'remarks', at3({ x: left, y: first - i * TEXT_m * PITCH * 1.2 }), words, i < 2 ? { height_m: TEXT_m * 1.2 } : {});
}
