import type { BoughtFitting } from '../derived/bought-fittings.ts';
import type { DerivedNetwork } from '../derived/derived.ts';
import { boughtWords } from '../derived/fitting-words.ts';
import { fittingSign } from './fitting-sign.ts';
import { type TeeAttitude, findTeeAttitude } from '../derived/tee-attitude.ts';

export { legsOf } from '../derived/tee-attitude.ts';

const ATTITUDES: Readonly<Record<TeeAttitude, string>> = {
  side: 'tee, branch to the side',
  up: 'tee, branch up',
  down: 'tee, branch down',
  bull: 'tee, fed through its branch (bull)',
};

/** A fitting in words, a tee with how it is turned: branch up, down or to the side, or fed through its branch. */
export function fittingAttitude(network: DerivedNetwork, fitting: BoughtFitting): string {
  if (fittingSign(network, fitting) === 'dirt-trap') return 'dirt trap, capped';
  if (fitting.isTrap) return `${fitting.isReducing ? 'reducing ' : ''}tee, one leg to the dirt trap`;
  const attitude = findTeeAttitude(network, fitting);
  return attitude ? `${fitting.isReducing ? 'reducing ' : ''}${ATTITUDES[attitude]}` : boughtWords(fitting);
}
