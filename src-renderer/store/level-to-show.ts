import type { Plan } from '#shared/model/plan';

/** Levels on which something differs between two plans, networks counted where they hang. */
function changedLevels(before: Plan, after: Plan): string[] {
  const changed = Object.keys(after.levels).filter((id) => after.levels[id] !== before.levels[id]);
  for (const id of new Set([...Object.keys(before.networks), ...Object.keys(after.networks)])) {
    const [was, is] = [before.networks[id], after.networks[id]];
    if (was !== is) changed.push((is ?? was)?.level ?? '');
  }
  return changed.filter((id) => after.levels[id]);
}

/**
 * Level to show when the plan became another one by undo, redo or a command: the one that is shown, unless it has
 * gone, or everything that changed lies on another one and nobody would see it.
 */
export function levelToShow(before: Plan, after: Plan, level: string): string {
  const changed = changedLevels(before, after);
  if (after.levels[level] && (changed.length === 0 || changed.includes(level))) return level;
  return changed[0] ?? (after.levels[level] ? level : (Object.keys(after.levels)[0] ?? ''));
}
