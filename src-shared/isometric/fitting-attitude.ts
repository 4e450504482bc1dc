import type { DerivedNetwork, Fitting } from '../derived/derived.ts';
import { FITTING_WORDS } from '../derived/fitting-words.ts';
import { type TeeAttitude, findTeeAttitude } from '../derived/tee-attitude.ts';

export { legsOf } from '../derived/tee-attitude.ts';

const ATTITUDES: Readonly<Record<TeeAttitude, string>> = {
  side: 'tee, branch to the side',
  up: 'tee, branch up',
  down: 'tee, branch down',
  bull: 'tee, fed through its branch (bull)',
};

/** A fitting in words, a tee with how it is turned: branch up, down or to the side, or fed through its branch. */
export function fittingAttitude(network: DerivedNetwork, fitting: Fitting): string {
  const attitude = findTeeAttitude(network, fitting);
  return attitude ? ATTITUDES[attitude] : FITTING_WORDS[fitting.kind];
}
