import { removeVisit } from '#shared/commands/remove-visit';
import { GONE_WORDS, namesByKey } from '#shared/site/name-of-key';
import { SERVICE_WORDS } from '#shared/site/service-due';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { RowButtons } from '../network/row-buttons.tsx';

/** So many of the newest are shown at once. */
const SHOWN = 40;

/** What was done, newest first. */
export function VisitList() {
  const plan = useShownPlan();
  const commit = useCommit();
  const { visits } = plan.siteRecord.service;
  const names = namesByKey(plan);
  if (visits.length === 0) return null;
  return (
    <details className="folded">
      <summary>Visits: {visits.length}</summary>
      <ul className="log-list">
        {visits.toReversed().slice(0, SHOWN).map(({ id, kind, about, on, by, note }) => (
          <li key={id}>
            <span>
              <strong>{about === '' ? (kind === 'enclosure' ? 'All enclosures' : 'All cylinders') : (names.get(about) ?? GONE_WORDS)}</strong> {SERVICE_WORDS[kind].toLowerCase()} {note}
              <span className="quiet log-who">{[on, by].filter(Boolean).join(', ')}</span>
            </span>
            <RowButtons what={`visit of ${on}`} onTakeOut={() => commit(removeVisit(id))} />
          </li>
        ))}
      </ul>
    </details>
  );
}
