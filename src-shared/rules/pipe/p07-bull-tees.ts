import type { DerivedNetwork, Fitting } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import { type TeeAttitude, findTeeAttitude } from '../../derived/tee-attitude.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzlePath, pathSubjects, placeOfPath } from '../subjects.ts';
import { counted } from './path-budget.ts';

const TURNED: Readonly<Record<TeeAttitude, string>> = { side: 'with its branch to the side', up: 'with its branch up', down: 'with its branch down', bull: 'fed through its branch' };

/** The tees of a network that part the agent, with how each is turned. */
const teesOf = remembered((network: DerivedNetwork): readonly { readonly tee: Fitting; readonly attitude: TeeAttitude | undefined }[] =>
  network.fittings.filter(({ kind, isTrap }) => kind === 'tee' && !isTrap).map((tee) => ({ tee, attitude: findTeeAttitude(network, tee) })),
);

/**
 * P7: the tees on the way to every nozzle are turned as the manual allows, and no more of them than it allows are fed
 * through their branch. A tee that only holds a dirt trap or drain parts nothing and is not asked.
 * Measure: tees on the path that are fed through their branch and leave both ways along their run.
 * Limit: bull-head tees per path, and the ways in which a tee may be turned, from the unit profile.
 * Not checked: no pipe leads to the nozzle, a limit is blank, or a tee where the pipe begins is turned nobody knows how.
 */
export const p07BullTees = defineRule<NozzlePath>({
  id: 'P7',
  title: 'Tee attitude',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'every tee between source and nozzle turned as allowed; those fed through their branch ≤ limit', source: 'unit profile' },
  limitKeys: ['bullTeesPerPath'],
  subjects: pathSubjects,
  check(subject) {
    const { network, path } = subject;
    const { limit, ...missing } = limitOrBlank(network.profile, 'bullTeesPerPath');
    if (!path) return 'blank' in missing ? missing.blank : notChecked('no pipe leads to it from the cylinder.');
    const passed = new Set(path.nodes);
    const tees = teesOf(network).filter(({ tee }) => passed.has(tee.node));
    const bulls = tees.filter(({ tee }) => tee.isBull).length;
    const allowed = network.profile?.teeAttitudes;
    const place = placeOfPath(subject);
    const figures = limit && atMost(bulls, limit, LENGTH_SLACK_m);
    const wrong = tees.find(({ attitude }) => attitude && allowed && !allowed.includes(attitude));
    if (figures && !figures.isKept) {
      const printed = counted(bulls, limit.value, 'bull-head tee');
      return { ...figures, text: `Its path has ${printed.value}; only ${printed.limit} allowed. Feed the tee along its run, or branch the tree another way.`, place };
    }
    if (wrong?.attitude) {
      return {
        kind: 'judged',
        isKept: false,
        measured: bulls,
        limit: limit?.value,
        limitSource: limit?.source ?? 'unit profile',
        text: `A tee on its path is turned ${TURNED[wrong.attitude]}, which the unit profile does not allow. Turn it.`,
        place: { level: network.level.id, at: [wrong.tee.at], heights: [wrong.tee.at] },
        cure: { kind: 'advice', text: `Turn the tee so that it stands ${(allowed ?? []).map((each) => TURNED[each]).join(', or ') || 'nowhere on the path'}.` },
      };
    }
    if ('blank' in missing || !figures) return 'blank' in missing ? missing.blank : notChecked('the limit is not known.');
    if (tees.length > 0 && !allowed) return notChecked(`in which ways a tee may be turned is blank in the unit profile “${network.profile?.name ?? ''}”.`, place);
    const { value, limit: most } = counted(bulls, limit?.value ?? 0, 'bull-head tee');
    if (tees.some(({ attitude }) => !attitude)) return notChecked('how the tee where the pipe begins is turned is not known.', place);
    return { ...figures, text: `Its path has ${value}; ${most} allowed${tees.length > 0 ? ', and every tee is turned as allowed' : ''}.`, place };
  },
});
