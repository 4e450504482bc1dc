import type { Action } from './action.ts';

/**
 * How well a text answers what was typed: every typed letter must appear in order; whole words and beginnings count more.
 * @returns a score, larger is better; 0 when it does not answer at all
 */
export function matchScore(typed: string, text: string): number {
  const wanted = typed.trim().toLowerCase();
  const offered = text.toLowerCase();
  if (wanted === '') return 1;
  const at = offered.indexOf(wanted);
  if (at === 0) return 100;
  if (at > 0) return offered[at - 1] === ' ' ? 80 : 50;
  const words = wanted.split(/\s+/);
  if (words.length > 1 && words.every((word) => offered.includes(word))) return 40;
  let score = 20;
  let from = 0;
  for (const letter of wanted.replace(/\s+/g, '')) {
    const found = offered.indexOf(letter, from);
    if (found < 0) return 0;
    const startsWord = found === 0 || offered[found - 1] === ' ';
    if (found > from && !startsWord) score -= 3;
    from = found + 1;
  }
  return Math.max(0, score);
}

/** Actions that answer what was typed, best first; all of them, in their order, for an empty text. */
export function searchActions<A extends Pick<Action, 'name' | 'also' | 'group'>>(typed: string, actions: readonly A[]): A[] {
  return actions
    .map((action, order) => ({
      action,
      order,
      score: Math.max(matchScore(typed, action.name), action.also ? 0.6 * matchScore(typed, action.also) : 0, 0.3 * matchScore(typed, action.group)),
    }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score || a.order - b.order)
    .map(({ action }) => action);
}
