import type { HoldPointState } from '../site/arming-order.ts';
import { holdPointCriterion } from '../site/hold-point-criteria.ts';
import type { Foot, Table } from './tables.ts';

/** What must be seen at each hold point, why the work stops there, and what may hurt somebody. */
export const holdPointCriteriaTable = (order: readonly HoldPointState[]): Table => ({
  title: 'What each hold point asks',
  note: 'Common practice; the manual of the unit, its listing and the authority govern.',
  columns: [{ head: 'No.', font: 'bold' }, { head: 'Must be seen', isWide: true }, { head: 'Why the work stops here', isWide: true }, { head: 'Caution', isWide: true }],
  rows: order.map(({ point, cautions }) => [point.id, holdPointCriterion(point.id), point.why, cautions.join(' ')]),
});

/** Says below the hold points which ticks no longer hold, so that nobody takes them for done. */
export function lostTicksFoot(order: readonly HoldPointState[]): Foot[] {
  const lost = order.filter(({ standing }) => standing === 'lost').map(({ point }) => point.id);
  return lost.length === 0 ? [] : [{ kind: 'words', isStrong: true, words: `NO LONGER HOLDS: ${lost.join(', ')}. Ticked, but what it stood on is missing, old or not as asked: to be ticked again in order.` }];
}
