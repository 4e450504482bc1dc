import type { DerivedNetwork, Fitting } from '../derived/derived.ts';

/** Signs that fittings are drawn with: screwed elbows and tees share the ticks on their legs. */
export const FITTING_SIGNS = ['fitting', 'street-elbow', 'reducer', 'coupling', 'union', 'cap', 'plug', 'drain', 'dirt-trap'] as const;
export type FittingSign = (typeof FITTING_SIGNS)[number];

/** The sign of a fitting. An end that is capped as a dirt trap has the trap's own sign. */
export function fittingSign({ network }: Pick<DerivedNetwork, 'network'>, { kind, isStreet, node }: Fitting): FittingSign {
  if (isStreet) return 'street-elbow';
  switch (kind) {
    case 'reducer':
    case 'coupling':
    case 'union':
    case 'plug':
    case 'drain':
      return kind;
    case 'joint':
      return 'coupling';
    case 'cap':
      return network.nodes[node]?.part === 'dirt-trap' ? 'dirt-trap' : 'cap';
    default:
      return 'fitting';
  }
}
