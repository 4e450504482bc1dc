import type { Space } from '../derived/derived.ts';
import type { Elevation } from '../elevation/elevation.ts';
import type { Settings } from '../model/plan.ts';
import { drawLadder, drawRunning } from './elevation-dimensions.ts';
import { type ElevationLayout, elevationDraft, elevationLayout } from './elevation-frame.ts';
import { drawMountedCylinders, drawRails } from './elevation-mounts.ts';
import { drawAssemblyPieces, drawWallPipes } from './elevation-pipework.ts';
import { drawStrip, stripCaption } from './elevation-strip.ts';
import { drawWallOpenings, drawWallShell, drawWallSolids } from './elevation-wall.ts';
import { settleLabels } from './labels.ts';
import type { ComposedView } from './plan-view.ts';
import { marksBox } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';
import { marksOf } from './view-draft.ts';

/** An elevation on its own paper, with the layout that carries the wall to it. */
export interface ComposedElevation extends ComposedView {
  readonly layout: ElevationLayout;
}

/**
 * Draws a cylinder wall to scale on paper of its own, from its top left corner: the wall with all that hangs on it,
 * its heights and distances, and the floor before it from above.
 * @param scale   site length over paper length
 * @param spaces  every space of the plan: doors of neighbouring rooms may sweep into this one
 */
export function composeElevation(elevation: Elevation, spaces: readonly Space[], scale: number, sizes: TypeSizes, lengths: Settings['lengths']): ComposedElevation {
  const layout = elevationLayout(elevation, scale, sizes, lengths);
  const view = elevationDraft(layout, sizes, lengths);
  drawWallShell(view, elevation, layout);
  drawWallOpenings(view, elevation.openings);
  drawWallSolids(view, elevation);
  drawRails(view, elevation);
  drawMountedCylinders(view, elevation, layout);
  drawAssemblyPieces(view, elevation);
  drawWallPipes(view, elevation);
  drawStrip(view, elevation, layout, spaces);
  drawLadder(view, layout, elevation);
  drawRunning(view, layout, elevation);
  stripCaption(view, layout);
  settleLabels(view);
  const marks = marksOf(view);
  return { marks, box: marksBox(marks), scale, used: view.used, unplaced: view.unplaced, layout };
}
