import type { Command } from '#shared/commands/command';
import type { LengthSystem } from '#shared/units/length-text';
import { formatLength } from '#shared/units/length-text';
import { formatQuantity } from '#shared/units/quantity-text';
import { lengthSystem } from '../../plan-words.ts';
import { shownPlan } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';

/** The plan as it is shown. */
export const useShownPlan = () => useStore(shownPlan);

/** Does a command as one step. */
export function useCommit(): (command: Command) => boolean {
  const store = useStoreItself();
  return (command) => store.commit(command);
}

/** Writes figures in the plan's units. */
export interface Figures {
  readonly system: LengthSystem;
  length(value_m: number): string;
  quantity(value: number, kind: string): string;
}

/** How figures are written in this plan. */
export function useFigures(): Figures {
  const system = useStore(lengthSystem);
  return {
    system,
    length: (value_m) => formatLength(value_m, system),
    quantity: (value, kind) => formatQuantity(value, kind, system),
  };
}
