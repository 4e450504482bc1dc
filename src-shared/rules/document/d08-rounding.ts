import { nearestClearanceFace } from '../../derived/clearance-faces.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { parseLength } from '../../units/length-text.ts';
import { defineRule, notChecked } from '../rule.ts';
import { type NozzleSubject, nozzleSubjects, placeOfNozzle } from '../subjects.ts';

/**
 * D8: no printed figure of a nozzle reads as kept when the true one is not, or the other way round.
 * Measure: figures whose print is on the other side of their limit.
 * Limit: none.
 * Not checked: neither wall distance nor ceiling drop of the nozzle can be judged.
 */
export const d08Rounding = defineRule<NozzleSubject>({
  id: 'D8',
  title: 'Rounding hides no fault',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'printed figure and true figure lie on the same side of the limit', source: 'common practice' },
  subjects: nozzleSubjects,
  check(nozzle, { say, lengths }) {
    const { at, space, profile, localCeiling_m } = nozzle;
    const wall = profile?.limits.nozzleToWall_m;
    const ceiling = profile?.limits.nozzleToCeiling_m;
    const figures: { true_m: number; limit_m: number; sign: 1 | -1 }[] = [];
    const near = at && space && nearestClearanceFace(space, at);
    if (near && wall) figures.push({ true_m: near.distance_m, limit_m: wall.value, sign: 1 });
    if (at && localCeiling_m !== undefined && ceiling) figures.push({ true_m: localCeiling_m - at.z, limit_m: ceiling.value, sign: -1 });
    if (!at || figures.length === 0) return notChecked('neither its wall distance nor its ceiling drop can be judged.');
    const hidden = figures.filter(({ true_m, limit_m, sign }) => {
      const printed = say.against(true_m, limit_m);
      const value = parseLength(printed.value, lengths);
      const limit = parseLength(printed.limit, lengths);
      const isKept = (value_m: number, against_m: number): boolean => sign * (value_m - against_m) >= -LENGTH_SLACK_m;
      return !value.ok || !limit.ok || isKept(value.length_m, limit.length_m) !== isKept(true_m, limit_m);
    });
    return {
      kind: 'judged',
      isKept: hidden.length === 0,
      measured: hidden.length,
      limit: 0,
      limitSource: 'common practice',
      margin: 0 - hidden.length,
      text: hidden.length === 0 ? 'Its printed figures say what the true ones say.' : 'A printed figure reads as kept though the true one is not. Print it in a finer unit.',
      place: placeOfNozzle(nozzle, at),
    };
  },
});
