import { addUnderlay } from '#shared/commands/add-underlay';
import { calibrateUnderlay } from '#shared/commands/calibrate-underlay';
import { type Command, sequence } from '#shared/commands/command';
import { editUnderlay } from '#shared/commands/edit-underlay';
import { placeUnderlay } from '#shared/commands/place-underlay';
import type { Box } from '#shared/geometry/outline';
import type { KeptAsset } from '#shared/host/contract';
import type { RefOf, Underlay } from '#shared/model/plan';

/** A drawing whose own origin is farther away than this is brought to the plan's origin [m]. */
const FAR_m = 1000;

/** What is laid under the drawing, and how large it is. */
export interface LaidPlan {
  readonly level: string;
  readonly asset: KeptAsset;
  readonly kind: Underlay['kind'];
  readonly page: number;
  readonly name: string;
  /** Extents in file units. */
  readonly extents: Box;
  /** Layers that the file itself hides. */
  readonly hiddenLayers: readonly string[];
  /** Metres on site per file unit as the file or the user says; null while the scale is open. */
  readonly metresPerUnit: number | null;
  /** True width of the whole drawing that the user typed [m]; it is kept as a known length. */
  readonly trueWidth_m: number | null;
}

/** Where the file's origin goes: drawings keep theirs, paper and pictures lie with their lower left corner on the plan's origin. */
export function originFor(kind: Underlay['kind'], extents: Box, metresPerUnit: number): { readonly x: number; readonly y: number } {
  const corner = { x: -extents.minX * metresPerUnit, y: -extents.minY * metresPerUnit };
  return kind === 'dxf' && Math.hypot(corner.x, corner.y) < FAR_m ? { x: 0, y: 0 } : corner;
}

/** Lays a floor plan under the drawing, at its scale and place, as one step. */
export const layUnder =
  ({ level, asset, kind, page, name, extents, hiddenLayers, metresPerUnit, trueWidth_m }: LaidPlan): Command =>
  (plan) => {
    const isFileScale = trueWidth_m === null && metresPerUnit !== null;
    const added = addUnderlay(level, asset, { kind, page, name, metresPerUnit: isFileScale ? metresPerUnit : null, calibration: isFileScale ? 'file-units' : 'none' })(plan);
    if (!added.ok) return added;
    const laid = added.created.find((ref): ref is RefOf<'underlay'> => ref.kind === 'underlay');
    if (!laid) return added;
    const middle = (extents.minY + extents.maxY) / 2;
    const measured = trueWidth_m === null ? [] : [calibrateUnderlay(laid, { a: { x: extents.minX, y: middle }, b: { x: extents.maxX, y: middle }, distance_m: trueWidth_m })];
    const at = originFor(kind, extents, metresPerUnit ?? 1);
    const hidden = hiddenLayers.length > 0 ? [editUnderlay(laid, { hiddenLayers: [...hiddenLayers] })] : [];
    return sequence(added.label, [() => added, ...measured, placeUnderlay(laid, { at }), ...hidden])(plan);
  };
