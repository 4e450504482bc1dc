import type { Space } from '../../derived/derived.ts';
import { defineRule, notChecked } from '../rule.ts';
import { perServedSpace } from '../subjects.ts';
import { type AskedVoid, askedVoid, judgeVoid } from './void-protection.ts';

/** A room under tiles, over which there is always a void. */
const hidesVoid = ({ kind, enclosure }: Space): boolean => kind === 'room' && enclosure.ceiling.make === 'tiles' && !enclosure.ceilingVoid;

/**
 * N17: the void above a ceiling has a nozzle of its own, or is left out with reason, name and date.
 * Measure: nozzles that serve it. Limit: one at least, or a signed exclusion.
 * Not checked: the ceiling is of tiles, but no void above it is drawn.
 */
export const n17CeilingVoid = defineRule<AskedVoid>({
  id: 'N17',
  title: 'Void above the ceiling',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'void above a ceiling: at least one nozzle that serves it, or an exclusion with reason, name and date', source: 'NFPA 2001 and ISO 14520-1, all spaces of the protected volume (memory)' },
  subjects: perServedSpace((space, nozzles) => (space.kind === 'ceiling-void' || (hidesVoid(space) && nozzles.length > 0) ? [askedVoid(space, nozzles)] : [])),
  check: (asked) =>
    asked.space.kind === 'room'
      ? notChecked('its ceiling is of tiles, but the void above them is not drawn. Enter its depth, and whether it is protected.', { level: asked.space.level.id, at: asked.space.outline })
      : judgeVoid(asked),
});
