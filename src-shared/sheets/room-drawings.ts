import { fieldDimensionsOf } from '../derived/field-dimensions.ts';
import { drawAsBuilt, isAnyMeasured } from './as-built-view.ts';
import { drawFieldSheet } from './field-room-view.ts';
import type { RoomDrawing } from './room-sheets.ts';
import type { ViewSet } from './view-set.ts';

/** Each room as it is measured. */
export const fieldDrawing = ({ derived }: ViewSet): RoomDrawing => ({ title: 'Field sheet', isWanted: () => true, draw: drawFieldSheet(fieldDimensionsOf(derived)) });

/** Each room in which something was measured, with red lines. */
export function asBuiltDrawing({ derived }: ViewSet): RoomDrawing {
  const { siteRecord, settings } = derived.plan;
  const all = fieldDimensionsOf(derived);
  const { measurements } = siteRecord;
  return { title: 'As built', isWanted: (content) => isAnyMeasured(content, all, measurements), draw: drawAsBuilt(all, measurements, settings.siteTolerance_m) };
}
