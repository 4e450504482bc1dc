import type { DxfEntity, DxfPlace } from './drawing.ts';
import { dimensionLine } from './put-entity.ts';

/** Least and greatest places of a drawing [m]. */
export interface DxfBounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

function placesOf(entity: DxfEntity): readonly DxfPlace[] {
  switch (entity.kind) {
    case 'line':
      return [entity.from, entity.to];
    case 'polyline':
    case 'fill':
      return entity.places;
    case 'dimension': {
      const { from, to } = dimensionLine(entity);
      return [from, to, entity.a, entity.b];
    }
    default:
      return [entity.at];
  }
}

/** The box around everything of a drawing; one metre square when there is nothing. */
export function boundsOfEntities(entities: readonly DxfEntity[]): DxfBounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const entity of entities) {
    for (const [x, y] of placesOf(entity)) [minX, minY, maxX, maxY] = [Math.min(minX, x), Math.min(minY, y), Math.max(maxX, x), Math.max(maxY, y)];
  }
  return minX <= maxX ? { minX, minY, maxX, maxY } : { minX: 0, minY: 0, maxX: 1, maxY: 1 };
}
