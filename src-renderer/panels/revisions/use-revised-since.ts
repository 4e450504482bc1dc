import { useEffect, useState } from 'react';
import type { Host } from '#shared/host/contract';
import type { Plan } from '#shared/model/plan';
import type { RevisedSince } from '#shared/sheets/changes-table';
import { revisedSince } from '../../actions/revised-since.ts';

/** What the newest issue changed, for the sheets on the screen: read anew when another set was issued. */
export function useRevisedSince(plan: Plan, host: Pick<Host, 'readIssue'>): RevisedSince | undefined {
  const [since, setSince] = useState<RevisedSince | undefined>(undefined);
  const { issuedSets, lastIssue } = plan;
  const { lengths } = plan.settings;
  // biome-ignore lint/correctness/useExhaustiveDependencies: two issued sets stay as they are, whatever is drawn meanwhile
  useEffect(() => {
    let isGone = false;
    void revisedSince(plan, host).then((read) => {
      if (!isGone) setSince(read);
    });
    return () => {
      isGone = true;
    };
  }, [issuedSets, lastIssue, lengths, host]);
  return since;
}
