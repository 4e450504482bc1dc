import type { PlanPoint3 } from '../geometry/point.ts';
import type { Wording } from './wording.ts';

/** A part of a move smaller than this is left unsaid [m]: a quarter of what a tape shows. */
const UNSAID_m = 0.0004;

/** How something moves, as a fitter says it: 4 1/2" east and 2" up. Each part is true to what a tape shows. */
export function moveWords(from: PlanPoint3, to: PlanPoint3, say: Wording): string {
  const parts: readonly (readonly [number, string, string])[] = [
    [to.x - from.x, 'east', 'west'],
    [to.y - from.y, 'north', 'south'],
    [to.z - from.z, 'up', 'down'],
  ];
  const said = parts.flatMap(([by_m, onward, back]) => (Math.abs(by_m) <= UNSAID_m ? [] : [`${say.length(Math.abs(by_m))} ${by_m > 0 ? onward : back}`]));
  return said.length > 1 ? `${said.slice(0, -1).join(', ')} and ${said.at(-1)}` : (said[0] ?? say.length(0));
}
