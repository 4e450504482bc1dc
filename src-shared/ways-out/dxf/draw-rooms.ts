import type { Space } from '../../derived/derived.ts';
import { polar } from '../../geometry/point.ts';
import type { Adjoining } from '../../model/plan.ts';
import { openingPlaces } from '../../sheets/draw-walls.ts';
import { roomyPlaces } from '../../sheets/draw-notes.ts';
import { clearHeight_m } from '../../sheets/sheet-text.ts';
import { formatLength } from '../../units/length-text.ts';
import { formatQuantity } from '../../units/quantity-text.ts';
import { type DrawingDraft, M_PER_MM, TEXT_m, addRun, addWords, at3 } from './drawing-draft.ts';
import { layerName } from './layers.ts';

/** How far an opening's frame stands out of the wall face [m]. */
const FRAME_m = 1.8 * M_PER_MM;

/** Finished wall faces, shafts and columns, doors, vents and openings, and zones of the ceiling. */
export function drawRooms(draft: DrawingDraft, rooms: readonly Space[]): void {
  for (const room of rooms) {
    const { enclosure } = room;
    addRun(draft, 'walls', enclosure.outline, true);
    for (const hole of enclosure.holes) addRun(draft, 'walls', hole, true);
    for (const { outline, name, height_m } of Object.values(enclosure.ceilingZones)) {
      addRun(draft, 'zones', outline, true, height_m);
      const [first] = outline;
      if (first) addWords(draft, 'zones', at3(first, height_m), `${name} ceiling ${formatLength(height_m, draft.lengths)}`);
    }
    drawOpenings(draft, room);
  }
}

function drawOpenings(draft: DrawingDraft, room: Space): void {
  for (const { opening, start, end, middle, wall_rad, inward_rad } of openingPlaces(room)) {
    const out_rad = inward_rad + Math.PI;
    const isDoor = opening.kind === 'door';
    const key = isDoor ? 'doors' : 'openings';
    const words = opening.name || (isDoor ? 'Door' : 'Opening');
    if (!isDoor) {
      addRun(draft, key, [start, end, polar(end, out_rad, FRAME_m), polar(start, out_rad, FRAME_m)], true, opening.bottom_m);
      addWords(draft, 'names', at3(polar(middle, out_rad, FRAME_m * 2)), words, { align: 'middle' });
      continue;
    }
    draft.entities.push({ kind: 'line', layer: layerName(key), from: at3(start), to: at3(end) });
    addWords(draft, 'names', at3(polar(middle, opening.swing === 'in' ? inward_rad : out_rad, opening.width_m * 0.45)), `${words} ${formatLength(opening.width_m, draft.lengths)}`, { align: 'centre' });
    if (opening.swing === 'none') continue;
    const hinge = opening.hinge === 'start' ? start : end;
    const swing_rad = opening.swing === 'in' ? inward_rad : out_rad;
    draft.entities.push({ kind: 'line', layer: layerName(key), from: at3(hinge), to: at3(polar(hinge, swing_rad, opening.width_m)) });
    const shut_rad = opening.hinge === 'start' ? wall_rad : wall_rad + Math.PI;
    const isLeft = Math.sin(shut_rad - swing_rad) > 0;
    draft.entities.push({ kind: 'arc', layer: layerName(key), at: at3(hinge), radius_m: opening.width_m, from_rad: isLeft ? swing_rad : shut_rad, to_rad: isLeft ? shut_rad : swing_rad });
  }
}

/** Spaces beside, under and over the rooms, with their names. */
export function drawAdjoining(draft: DrawingDraft, spaces: readonly Adjoining[]): void {
  for (const { outline, name, floor_m } of spaces) {
    addRun(draft, 'adjoining', outline, true, floor_m);
    const [first] = outline;
    if (first) addWords(draft, 'adjoining', at3(first, floor_m), name);
  }
}

/** Names of spaces with floor area and clear height, where they have room. */
export function nameRooms(draft: DrawingDraft, spaces: readonly Space[]): void {
  for (const space of spaces) {
    const { bounds, area_m2 } = space;
    const { x, y } = roomyPlaces(space)[0] ?? { x: (bounds.minX + bounds.maxX) / 2, y: (bounds.minY + bounds.maxY) / 2 };
    const height_m = clearHeight_m(space);
    addWords(draft, 'roomNames', [x, y, 0], space.name, { height_m: TEXT_m * 1.4, align: 'middle' });
    const height = height_m === undefined ? 'height not known' : `${space.kind === 'room' ? 'ceiling' : 'depth'} ${formatLength(height_m, draft.lengths)}`;
    addWords(draft, 'roomNames', [x, y - TEXT_m * 1.8, 0], `${formatQuantity(area_m2, 'area', draft.lengths)}, ${height}`, { align: 'middle' });
  }
}
