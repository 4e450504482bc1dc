import { defineRule } from '../rule.ts';
import { perServedSpace } from '../subjects.ts';
import { type AskedVoid, askedVoid, judgeVoid } from './void-protection.ts';

/**
 * N16: the void under a raised floor has a nozzle of its own, or is left out with reason, name and date.
 * Measure: nozzles that serve it. Limit: one at least, or a signed exclusion.
 */
export const n16FloorVoid = defineRule<AskedVoid>({
  id: 'N16',
  title: 'Void under the floor',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'void under a raised floor: at least one nozzle that serves it, or an exclusion with reason, name and date', source: 'NFPA 2001 and ISO 14520-1, all spaces of the protected volume (memory)' },
  subjects: perServedSpace((space, nozzles) => (space.kind === 'under-floor' ? [askedVoid(space, nozzles)] : [])),
  check: judgeVoid,
});
