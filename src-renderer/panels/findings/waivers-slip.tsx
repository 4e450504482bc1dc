import { withdrawWaiver } from '#shared/commands/withdraw-waiver';
import { type Finding, findingKey } from '#shared/rules/finding';
import type { LapsedWaiver } from '#shared/rules/waive';
import { goToFinding } from '../../actions/check-actions.ts';
import { isWorkingOut } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useActionContext } from '../window-context.ts';
import { FindingRow } from './finding-row.tsx';

const LAPSED_WORDS: Readonly<Record<LapsedWaiver['because'], string>> = {
  gone: 'What it was about is no longer found.',
  kept: 'The limit is kept by now: nothing has to be accepted.',
  changed: 'What it rested on has changed: the finding is open again.',
};

/** Findings that somebody accepted as they are, with reason, name and date. */
export function AcceptedSlip({ findings, open }: { readonly findings: readonly Finding[]; readonly open: string | null }) {
  const { store } = useActionContext();
  if (findings.length === 0) return null;
  return (
    <Slip title={`Accepted as they are: ${findings.length}`} part="accepted">
      <ul className="finding-list">
        {findings.map((finding) => {
          const key = findingKey(finding);
          return <FindingRow key={key} finding={finding} isOpen={key === open} />;
        })}
      </ul>
      <div className="row">
        <button type="button" className="button is-slim" onClick={() => store.commit(withdrawWaiver(findings.flatMap(({ waiver }) => (waiver ? [waiver.id] : []))))}>
          {findings.length === 1 ? 'Withdraw it' : 'Withdraw all'}
        </button>
      </div>
    </Slip>
  );
}

/** Acceptances that no longer hold, and why. */
export function LapsedSlip({ lapsed }: { readonly lapsed: readonly LapsedWaiver[] }) {
  const { store } = useActionContext();
  const isBusy = useStore(isWorkingOut);
  if (lapsed.length === 0) return null;
  return (
    <Slip title={`Acceptances that have lapsed: ${lapsed.length}`} part="lapsed">
      <ul className="lapsed-list">
        {lapsed.map(({ waiver, because, finding }) => (
          <li key={waiver.id}>
            <p>
              <strong>{waiver.name}</strong> {finding?.title ?? ''} <span className="quiet">accepted by {waiver.by}{waiver.date ? `, ${waiver.date}` : ''}: {waiver.reason}</span>
            </p>
            <p>{LAPSED_WORDS[because]}</p>
            {finding && because === 'changed' ? (
              <button type="button" className="link" onClick={() => goToFinding(store, finding)}>
                Look at it again
              </button>
            ) : null}
          </li>
        ))}
      </ul>
      <div className="row">
        <button type="button" className="button is-slim" disabled={isBusy} title={isBusy ? 'A discharge is still being worked out: it may make an acceptance hold again.' : undefined} onClick={() => store.commit(withdrawWaiver(lapsed.map(({ waiver }) => waiver.id)))}>
          Clear lapsed acceptances
        </button>
      </div>
    </Slip>
  );
}
