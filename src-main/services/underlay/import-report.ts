import type { ImportReport } from '#shared/host/contract';
import type { UnderlayDrawing } from '#shared/underlay/drawing';

/** What a floor plan was found to be, without its geometry; width and height in file units. */
export function importReportOf(drawing: UnderlayDrawing): ImportReport {
  const { kind, pageCount, metresPerUnit, unitsText, unitsDoubt, extents, images, warnings } = drawing;
  const layers = drawing.layers.map(({ name, visible, segments }) => ({ name, visible, segments: segments.length / 4 }));
  return {
    kind,
    pageCount,
    metresPerUnit,
    unitsText,
    unitsDoubt,
    width: extents.maxX - extents.minX,
    height: extents.maxY - extents.minY,
    layers,
    segments: layers.reduce((sum, { segments }) => sum + segments, 0),
    texts: drawing.layers.reduce((sum, { texts }) => sum + texts.length, 0),
    closedOutlines: drawing.layers.reduce((sum, { closed }) => sum + closed.length, 0),
    images: images.length,
    warnings,
  };
}
