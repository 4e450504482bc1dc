import type { SupportSums } from '../../calculations/design/design.ts';
import { worked } from '../../calculations/design/worked.ts';
import { nozzleSupportBasis } from '../../calculations/formulas/support-spans.ts';
import { pipeAt } from '../../derived/pipe-at.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import { type Member, memberSubjects, nozzleAt, placeOn, supportSumsOf } from '../design-subjects.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { type ShapedNetwork, perShapedNetwork } from './shaped-networks.ts';
import { supportsBeside } from './support-cures.ts';

const SOURCES: Readonly<Record<BasisOfDesign['lastSupport'], string>> = { iso: 'ISO 14520-1:2000 as a trade-press series reports it', us: 'common practice' };

/**
 * P19: the last support stands near the nozzle.
 * Measure: along the pipe from the nozzle to its nearest support [m].
 * Limit: by pipe size, from the source that the basis of design names.
 * Not checked: no support is drawn on the network.
 */
export const p19NozzleSupport = defineRule<Member<SupportSums['nozzles'][number]> & ShapedNetwork>({
  id: 'P19',
  title: 'Support at nozzle',
  severity: 'stop',
  measure: 'length',
  basis: { formula: `along the pipe, nozzle to nearest support ≤ limit; ${nozzleSupportBasis.formula}`, source: nozzleSupportBasis.source, caution: nozzleSupportBasis.caution },
  subjects: perShapedNetwork(({ network, shape }) => {
    const supports = supportSumsOf(network);
    const members = memberSubjects(network, supports.isKnown ? worked(supports.sums.nozzles) : supports, ({ ref, name }) => ({ ref, name }));
    return members.map((asked) => ({ ...asked, subject: { ...asked.subject, shape } }));
  }),
  check({ network, shape, member }, { basis, say }) {
    if (!member.isKnown) return notChecked(member.because);
    const { ref, distance_m, allowed_m, support } = member.sums;
    const source = SOURCES[basis.lastSupport];
    const at = nozzleAt(network, ref);
    const node = network.network.nozzles[ref.id]?.node ?? '';
    const last = pipeAt(network.network, node);
    const toAdd = 'Add a rigid support beside the nozzle';
    const cureOf = () => supportsBeside(shape, last ? [{ pipe: last.id, node, within_m: allowed_m }] : [], toAdd) ?? ({ kind: 'advice', text: `${toAdd}.` } as const);
    if (distance_m === undefined) {
      return {
        kind: 'judged',
        isKept: false,
        limit: allowed_m,
        limitSource: source,
        text: `No support holds its pipe; one is needed within ${say.length(allowed_m)}. Add one.`,
        place: placeOn(network, at ? [at] : []),
        cure: cureOf,
      };
    }
    const figures = atMost(distance_m, { value: allowed_m, source }, LENGTH_SLACK_m);
    const { value: far, limit: allowed } = say.against(distance_m, allowed_m);
    const held = support?.support.at;
    return {
      ...figures,
      text: figures.isKept ? `Its last support is ${far} away; ${allowed} is allowed.` : `Its last support is ${far} away; only ${allowed} is allowed. Add one.`,
      place: placeOn(network, at ? [at] : [], at && held ? { dimension: { a: at, b: held } } : {}),
      cure: figures.isKept ? undefined : cureOf,
    };
  },
});
