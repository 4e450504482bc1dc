import type { MountSums } from '../../calculations/design/design.ts';
import { anchorPullBasis, anchorShearBasis } from '../../calculations/formulas/wall-load.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Anchors } from '../../model/plan.ts';
import { type Member, placeOn } from '../design-subjects.ts';
import { type CheckContext, atLeast, atMost, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { cylinderAt, wallMountSubjects } from './wall-mounts.ts';

const MAKER = 'anchors, as stated on the plan';

/**
 * C3: the anchors of a cylinder's rail bear shear and pull together, far enough from the edge of the wall.
 * Measure: shear over allowable shear plus pull over allowable pull of one anchor [-]; from anchor to edge [m].
 * Limit: 1; least distance to an edge, as the maker of the anchors states it.
 * Not checked: the anchors are not chosen, or their load is not known.
 */
export const c03Anchors = defineRule<Member<MountSums>>({
  id: 'C3',
  title: 'Anchors',
  severity: 'stop',
  measure: 'ratio',
  basis: {
    formula: `V/V_allow + T/T_allow ≤ 1, and distance to the edge ≥ least; ${anchorShearBasis.formula}; ${anchorPullBasis.formula}`,
    source: 'shear and pull added in a straight line: common practice; statics; figures of the anchors: their maker',
    caution: `${anchorShearBasis.caution} ${anchorPullBasis.caution}`,
  },
  limitKeys: ['filledMass_kg'],
  subjects: wallMountSubjects,
  check(subject, { say }) {
    const { network, member } = subject;
    if (!member.isKnown) return notChecked(member.because);
    const { ref, wall, anchor } = member.sums;
    const place = placeOn(network, cylinderAt(subject));
    const cylinder = network.network.cylinders[ref.id];
    const anchors = cylinder?.anchors;
    if (!anchors) return notChecked('its anchors are not chosen.', place);
    const edge = { ...edgeFigures(anchors, say), place, cure: { kind: 'advice', text: 'Move the rail away from the edge, or choose other anchors.' } } as const;
    if (!anchor) {
      if (!edge.isKept) return edge;
      const missing = cylinder.railHeight_m ? 'what pulls at its anchors is not known' : 'the height of its rail is not known';
      return notChecked(wall ? `${missing}.` : 'no wall is near behind it that could hold anchors.', place);
    }
    const used = anchor.shear_N / anchors.shear_N + anchor.tension_N / anchors.tension_N;
    const load = atMost(used, { value: 1, source: MAKER }, slackOf(1));
    const { value: share } = say.quantityAgainst(used, 1, 'ratio');
    const text =
      `Each anchor takes ${say.quantity(anchor.shear_N, 'force')} of shear of ${say.quantity(anchors.shear_N, 'force')} ` +
      `and ${say.quantity(anchor.tension_N, 'force')} of pull of ${say.quantity(anchors.tension_N, 'force')}: ${Number.isFinite(used) ? share : 'more than all'} of what it bears`;
    if (load.isKept && !edge.isKept) return edge;
    if (load.isKept) return { ...load, text: `${text}. ${edge.text}`, place };
    const cure = { kind: 'advice', text: 'Use more or stronger anchors, or a spreader plate.' } as const;
    return { ...load, isKept: false, text: `${text}. Use more or stronger anchors.${edge.isKept ? '' : ` ${edge.text}`}`, place, cure };
  },
});

function edgeFigures({ edge_m, leastEdge_m }: Anchors, say: CheckContext['say']) {
  const figures = atLeast(edge_m, { value: leastEdge_m, source: MAKER }, LENGTH_SLACK_m);
  const { value: far, limit: least } = say.against(edge_m, leastEdge_m);
  const text = figures.isKept ? `They are ${far} from the edge; ${least} is enough.` : `They are ${far} from the edge of the wall; ${least} is the least. Move them.`;
  return { ...figures, measure: 'length' as const, text };
}
