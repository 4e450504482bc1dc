import { tapeDown_m, tapeUp_m } from '#shared/margins/tape-down';
import { isSameRef } from '#shared/model/plan';
import { useHeightsToRaise } from '../../input/board-context.ts';
import type { Raised } from '../../store/heights-to-raise.ts';
import { shownPlan } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Readings } from './slip.tsx';
import { useFigures } from './use-plan.ts';

/** How far a rail or a level pipe may be raised and lowered, everything else as drawn, before a check stops or warns that does not as drawn. */
export function HeightRoom({ raised, label }: { readonly raised: Raised; readonly label: string }) {
  const found = useHeightsToRaise();
  const plan = useStore(shownPlan);
  const { length, system } = useFigures();
  const heights = found && isSameRef(found.raised, raised) ? found : null;
  if (heights && !heights.range) return null;
  const { range } = heights ?? {};
  const value = range ? `${length(tapeUp_m(range.least_m, system))} to ${length(tapeDown_m(range.greatest_m, system))}` : 'being found';
  return <Readings rows={[{ label, value, note: heights && heights.plan !== plan ? 'from before this change' : undefined }]} />;
}
