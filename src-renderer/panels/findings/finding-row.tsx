import { type Finding, findingKey } from '#shared/rules/finding';
import { goToFinding } from '../../actions/check-actions.ts';
import { useStoreItself } from '../../store/use-store.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { FindingWhy } from './finding-why.tsx';

/** One line of the list; pressing it goes there and opens the explanation. */
export function FindingRow({ finding, isOpen }: { readonly finding: Finding; readonly isOpen: boolean }) {
  const store = useStoreItself();
  const key = findingKey(finding);
  return (
    <li className="finding" data-verdict={finding.verdict} data-rule={finding.rule} data-accepted={finding.waiver ? 'yes' : undefined}>
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
          {finding.waiver ? <span className="finding-accepted">Accepted by {finding.waiver.by}</span> : null}
        </span>
      </button>
      {isOpen ? <FindingWhy finding={finding} /> : null}
    </li>
  );
}
