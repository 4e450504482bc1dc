import type { Solid } from '../../derived/derived.ts';
import { boundsOf } from '../../geometry/outline.ts';
import { isOverhead } from '../../sheets/draw-solids.ts';
import { heightText } from '../../sheets/sheet-text.ts';
import { formatLength } from '../../units/length-text.ts';
import { type DrawingDraft, addRun, addWords } from './drawing-draft.ts';

/** What stands or hangs in the rooms: outlines at the top of what stands and at the underside of what hangs, named with that height. */
export function drawSolids(draft: DrawingDraft, solids: readonly Solid[]): void {
  for (const solid of solids) {
    const { obstruction, bottom_m, top_m } = solid;
    const hangs = isOverhead(solid);
    const z = hangs ? bottom_m : top_m;
    addRun(draft, hangs ? 'overhead' : 'standing', obstruction.footprint, true, z);
    const { minX, minY, maxX, maxY } = boundsOf(solid.footprint);
    const height = hangs ? `underside ${heightText(bottom_m, draft.lengths)}` : `top ${formatLength(top_m, draft.lengths)}`;
    const isUpright = maxY - minY > maxX - minX;
    addWords(draft, 'names', [(minX + maxX) / 2, (minY + maxY) / 2, z], `${obstruction.name || obstruction.kind}, ${height}`, { align: 'centre', rotation_rad: isUpright ? Math.PI / 2 : 0 });
  }
}
