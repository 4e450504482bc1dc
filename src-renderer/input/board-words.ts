import type { Plan, Ref } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';

/** What is selected, in words for those who hear the board. */
export function selectionWords(plan: Plan, selection: readonly Ref[]): string {
  const first = selection[0];
  if (!first) return 'Nothing selected.';
  if (selection.length === 1) return `${thingName(plan, first)} selected.`;
  return `${selection.length} things selected: ${selection
    .slice(0, 5)
    .map((ref) => thingName(plan, ref))
    .join(', ')}${selection.length > 5 ? ' and more' : ''}.`;
}
