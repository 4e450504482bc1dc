import type { AssemblyPart } from '../model/plan.ts';

/** Parts of the discharge assembly as they stand in a sentence. */
export const PART_WORDS: Readonly<Record<AssemblyPart['kind'], string>> = {
  hose: 'hose',
  'check-valve': 'check valve',
  manifold: 'manifold',
  'stop-valve': 'stop valve',
  'relief-valve': 'relief valve',
  regulator: 'regulator',
  adapter: 'adapter',
};
