import { coverageOf } from '../../derived/coverage.ts';
import type { DerivedNozzle } from '../../derived/derived.ts';
import { isSameRef } from '../../model/plan.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, askedNozzle, perNetworkAmongNozzles, placeOfNozzle } from '../subjects.ts';

/** A nozzle with all that serve its space. */
interface Asked {
  readonly nozzle: NozzleSubject;
  readonly nozzles: readonly DerivedNozzle[];
}

/**
 * N10: a nozzle serves no floor farther away, and no more floor, than its unit allows.
 * Measure: farthest point of the floor that it serves [m]; its area [m²] where that is more than allowed.
 * Limit: farthest point and largest area, from the unit profile.
 * Not checked: the nozzle serves no space, or coverage or a limit is blank.
 */
export const n10NozzleReach = defineRule<Asked>({
  id: 'N10',
  title: 'Nozzle reach',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'farthest point of the floor nearest to this nozzle and covered by it ≤ limit; its area ≤ limit',
    source: 'unit profile',
  },
  limitKeys: ['nozzleReach_m', 'nozzleArea_m2'],
  isHeavy: true,
  subjects: perNetworkAmongNozzles((network, serving) =>
    network.nozzles.map((each, i) => {
      const { subject: nozzle, ...named } = askedNozzle(each);
      return { ...named, subject: { nozzle, nozzles: serving[i] ?? [] } };
    }),
  ),
  check({ nozzle, nozzles }, { say }) {
    const reach = limitOrBlank(nozzle.profile, 'nozzleReach_m');
    if (!reach.limit) return reach.blank;
    const area = limitOrBlank(nozzle.profile, 'nozzleArea_m2');
    if (!area.limit) return area.blank;
    const { at, space } = nozzle;
    if (!at || !space) return notChecked('the nozzle hangs in no enclosure.');
    if (nozzles.some(({ profile }) => !profile?.footprint)) return notChecked('the coverage of one nozzle is blank in the unit profile.');
    const served = coverageOf(space, nozzles).perNozzle.find((each) => isSameRef(each.nozzle, nozzle.ref));
    if (!served) return notChecked('the floor that it serves could not be found.');
    const figures = atMost(served.farthest_m, reach.limit, LENGTH_SLACK_m);
    const { value: far, limit: allowed } = say.against(served.farthest_m, reach.limit.value);
    const place = { ...placeOfNozzle(nozzle, at), dimension: served.farthest && { a: at, b: served.farthest } };
    if (served.area_m2 > area.limit.value * (1 + 1e-9)) {
      const printed = say.areaAgainst(served.area_m2, area.limit.value);
      return {
        ...atMost(served.area_m2, area.limit, 0),
        isKept: false,
        measure: 'area',
        text: `Serves ${printed.value} of floor; one nozzle may serve ${printed.limit}. Add a nozzle.`,
        place,
        cure: { kind: 'advice', text: 'Add a nozzle to the same space, so that each serves less floor.' },
      };
    }
    return {
      ...figures,
      text: figures.isKept
        ? `Serves ${say.area(served.area_m2)}, the farthest point ${far} away; ${allowed} is allowed.`
        : `Serves floor ${far} away; ${allowed} is allowed. Add a nozzle.`,
      inputs: [{ label: 'Floor that it serves', value: say.area(served.area_m2) }],
      place,
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Add a nozzle near the marked point, or move this one toward it.' },
    };
  },
});
