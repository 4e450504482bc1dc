import type { Space } from '../derived/derived.ts';
import type { Elevation } from '../elevation/elevation.ts';
import type { Issue, Settings } from '../model/plan.ts';
import { cloudElevation } from './draw-side-clouds.ts';
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
import { inLayer, marksOf } from './view-draft.ts';

/** An elevation on its own paper, with the layout that carries the wall to it. */
export interface ComposedElevation extends ComposedView {
  readonly layout: ElevationLayout;
}

/**
 * Draws a cylinder wall to scale on paper of its own, from its top left corner: the wall with all that hangs on it,
 * its heights and distances, and the floor before it from above.
 * @param scale   site length over paper length
 * @param spaces  every space of the plan: doors of neighbouring rooms may sweep into this one
 * @param issue   what was issued last: its changes are clouded
 */
export function composeElevation(elevation: Elevation, spaces: readonly Space[], scale: number, sizes: TypeSizes, lengths: Settings['lengths'], issue: Issue | null = null): ComposedElevation {
  const layout = elevationLayout(elevation, scale, sizes, lengths);
  const view = elevationDraft(layout, sizes, lengths);
  inLayer(view, 'building', () => drawWallShell(view, elevation, layout));
  inLayer(view, 'building', () => drawWallOpenings(view, elevation.openings));
  inLayer(view, 'building', () => drawWallSolids(view, elevation));
  inLayer(view, 'supports', () => drawRails(view, elevation));
  inLayer(view, 'cylinders', () => drawMountedCylinders(view, elevation, layout));
  inLayer(view, 'cylinders', () => drawAssemblyPieces(view, elevation));
  inLayer(view, 'pipe', () => drawWallPipes(view, elevation));
  inLayer(view, 'building', () => drawStrip(view, elevation, layout, spaces));
  inLayer(view, 'findings', () => cloudElevation(view, elevation, issue));
  inLayer(view, 'dimensions', () => drawLadder(view, layout, elevation));
  inLayer(view, 'dimensions', () => drawRunning(view, layout, elevation));
  stripCaption(view, layout);
  settleLabels(view);
  const marks = marksOf(view);
  return { marks, box: marksBox(marks), scale, used: view.used, unplaced: view.unplaced, layout };
}
