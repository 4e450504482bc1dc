import { useEffect, useState } from 'react';
import type { Plan } from '#shared/model/plan';
import type { PrintedTolerances } from '#shared/site/judge-measurements';
import { useTolerancesWorker } from '../../input/board-context.ts';
import { needsTolerances, toleranceGrounds, workOutTolerances } from '../../store/printed-tolerances.ts';

interface Known {
  readonly grounds: readonly unknown[];
  readonly printed: PrintedTolerances | null;
}

/** What the field sheet prints as tolerances of the plan as it stands; undefined until it is known, and where it cannot be worked out. */
export function usePrintedTolerances(plan: Plan): { readonly printed: PrintedTolerances | undefined; readonly isWorking: boolean } {
  const [known, setKnown] = useState<Known | null>(null);
  const start = useTolerancesWorker();
  const isWanted = start !== undefined && needsTolerances(plan);
  const grounds = toleranceGrounds(plan);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was measured does not change what is printed
  useEffect(() => (isWanted ? workOutTolerances(plan, start, (printed) => setKnown({ grounds, printed })) : undefined), [isWanted, start, ...grounds]);
  const isCurrent = known?.grounds.every((part, i) => part === grounds[i]) ?? false;
  return { printed: isCurrent ? (known?.printed ?? undefined) : undefined, isWorking: isWanted && !isCurrent };
}
