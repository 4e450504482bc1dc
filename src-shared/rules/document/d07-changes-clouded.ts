import type { Issue, Level, Network } from '../../model/plan.ts';
import { changedKeys, digestsOfLevel, digestsOfNetwork } from '../../model/thing-digests.ts';
import { defineRule } from '../rule.ts';
import { perPlan } from '../subjects.ts';
import { planSubject } from './plan-subject.ts';

type Part = { readonly issue: Issue | null } & ({ readonly kind: 'network'; readonly network: Network } | { readonly kind: 'level'; readonly level: Level } | { readonly kind: 'plan'; readonly gone: readonly string[] });

/** Owner of a thing by its key: "pipe///net-1/pipe-3" is of network net-1, "note/level-0///note-1" of its level. */
function ownerOf(key: string): string {
  const [kind, level, , network, id] = key.split('/');
  return kind === 'network' ? `network/${id}` : network ? `network/${network}` : `level/${level}`;
}

const issuedOf = (issue: Issue, owner: string): Issue['things'] => Object.fromEntries(Object.entries(issue.things).filter(([key]) => ownerOf(key) === owner));

/**
 * D7: what has changed since the sheets were issued belongs to a revision, which clouds it.
 * Measure: things that are new, gone or different since the last revision. Limit: none.
 */
export const d07ChangesClouded = defineRule<Part>({
  id: 'D7',
  title: 'Changes since the issue',
  severity: 'warn',
  measure: 'count',
  basis: { formula: 'things that differ from the last issue and belong to no revision = 0', source: 'common practice' },
  subjects: perPlan(({ plan }) => {
    const issue = plan.lastIssue;
    if (!issue) return [planSubject<Part>(plan, { issue, kind: 'plan', gone: [] })];
    const gone = [...new Set(Object.keys(issue.things).map(ownerOf))].filter((owner) => {
      const [kind = '', id = ''] = owner.split('/');
      return kind === 'network' ? !Object.hasOwn(plan.networks, id) : !Object.hasOwn(plan.levels, id);
    });
    return [
      planSubject<Part>(plan, { issue, kind: 'plan', gone }),
      ...Object.values(plan.levels).map((level) => ({ subject: { issue, kind: 'level', level } satisfies Part as Part, ref: { kind: 'plan', id: 'plan' } as const, name: level.name })),
      ...Object.values(plan.networks).map((network) => ({ subject: { issue, kind: 'network', network } satisfies Part as Part, ref: { kind: 'network', id: network.id } as const, name: network.name })),
    ];
  }),
  check(part) {
    const { issue } = part;
    if (!issue) return { kind: 'judged', isKept: true, text: 'The sheets were never issued: there is nothing to cloud.' };
    const changed =
      part.kind === 'plan'
        ? part.gone.length
        : part.kind === 'network'
          ? changedKeys(issuedOf(issue, `network/${part.network.id}`), digestsOfNetwork(part.network)).length
          : changedKeys(issuedOf(issue, `level/${part.level.id}`), digestsOfLevel(part.level)).length;
    const what = part.kind === 'plan' ? (changed === 1 ? 'A whole level or network has gone' : `${changed} whole levels or networks have gone`) : changed === 1 ? 'One thing has changed' : `${changed} things have changed`;
    return {
      kind: 'judged',
      isKept: changed === 0,
      measured: changed,
      limit: 0,
      limitSource: 'common practice',
      margin: 0 - changed,
      inputs: [{ label: 'Last issue', value: [issue.mark, issue.date].filter(Boolean).join(', ') }],
      text: changed === 0 ? `Nothing here has changed since revision ${issue.mark}.` : `${what} since revision ${issue.mark}. Issue a new set, so that the sheets cloud what is new.`,
    };
  },
});
