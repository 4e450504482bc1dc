import { applyCure } from '#shared/commands/apply-cure';
import { type Finding, findingKey } from '#shared/rules/finding';
import { goToFinding } from '../../actions/check-actions.ts';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { lengthSystem } from '../../plan-words.ts';
import { WhereToEnter } from '../sums/where-to-enter.tsx';
import { useRun } from '../window-context.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { asksForProfile, figuresOf } from './finding-words.ts';
import { whereToMend } from './where-to-mend.ts';

/** Why a check says what it says, and what would cure it. */
export function FindingDetail({ finding }: { readonly finding: Finding }) {
  const system = useStore(lengthSystem);
  const store = useStoreItself();
  const run = useRun();
  const { derived } = useStore(selectEvaluation);
  const { measured, limit, margin } = figuresOf(finding, system);
  const { basis, cure, limitSource } = finding;
  const rows: [string, string | null | undefined][] = [
    ['Measured', measured],
    ['Limit', limit],
    ['Margin', margin],
    ['Limit from', limitSource],
    ['How', basis.formula],
    ['Source', basis.source],
  ];
  return (
    <div className="finding-detail">
      {cure && cure.kind !== 'advice' ? (
        <button type="button" className="button is-main" onClick={() => store.commit(applyCure(cure))}>
          {cure.text}
        </button>
      ) : null}
      {cure?.kind === 'advice' ? <p className="advice">{cure.text}</p> : null}
      <WhereToEnter fields={whereToMend(derived, finding)} />
      {asksForProfile(finding) ? (
        <button type="button" className="button" onClick={() => run('profile')}>
          Open the unit profile…
        </button>
      ) : null}
      <dl className="readings">
        {rows.map(([label, value]) =>
          value ? (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ) : null,
        )}
      </dl>
      {basis.caution ? <p className="caution">{basis.caution}</p> : null}
    </div>
  );
}

/** One line of the list; pressing it goes there and opens the explanation. */
export function FindingRow({ finding, isOpen }: { readonly finding: Finding; readonly isOpen: boolean }) {
  const store = useStoreItself();
  const key = findingKey(finding);
  return (
    <li className="finding" data-verdict={finding.verdict} data-rule={finding.rule}>
      <button
        type="button"
        className="finding-head"
        aria-expanded={isOpen}
        onClick={() => (isOpen ? store.session({ finding: null }) : goToFinding(store, finding))}
        data-finding={key}
      >
        <VerdictMark verdict={finding.verdict} />
        <span className="finding-text">
          <span className="finding-title">
            <strong>{finding.name}</strong> {finding.title}
          </span>
          <span>{finding.text}</span>
        </span>
      </button>
      {isOpen ? <FindingDetail finding={finding} /> : null}
    </li>
  );
}
