import { PIPE_SPECIFICATIONS, STRESS_SETS } from '../../model/basis-of-design.ts';
import { psi_Pa } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';

export { STRESS_SETS };
/** Whose allowable stresses: ASME B31.1 before the addenda of 1999, or after. */
export type StressSet = (typeof STRESS_SETS)[number];

export { PIPE_SPECIFICATIONS };
/** Specification, grade and seam of steel pipe: ERW is electric resistance welded, A53-F furnace butt welded. */
export type PipeSpecification = (typeof PIPE_SPECIFICATIONS)[number];

/** SE [psi]. */
const STRESSES: Readonly<Record<StressSet, Readonly<Partial<Record<PipeSpecification, number>>>>> = {
  older: { 'A106-C': 17_500, 'A106-B': 15_000, 'A53-B-seamless': 15_000, 'A53-A-seamless': 12_000, 'A53-B-ERW': 12_800, 'A53-A-ERW': 10_200, 'A53-F': 6800 },
  newer: { 'A106-B': 17_100, 'A53-B-seamless': 17_100, 'A53-A-seamless': 13_700, 'A53-B-ERW': 14_600, 'A53-A-ERW': 11_700 },
};

export const pipeStressBasis: Basis = {
  formula: 'SE = E·(tensile strength)/4 in the older set, /3.5 in the newer; E 1 seamless, 0.85 ERW, 0.6 furnace butt welded',
  source: 'older: annex of NFPA 2001 (2000 to 2008) and ASME B31.1 before 1999; newer: ASME B31.1 from the 1999 addenda on; both memory',
  caution: 'The sets differ by 14 %. The mill certificate and the adopted code decide.',
};
/**
 * Allowable stress of a steel pipe with the efficiency of its seam, below 200 °C.
 *
 * @param set            whose stresses [-]
 * @param specification  of the pipe [-]
 * @returns stress, undefined when the set does not give one [Pa]
 * @example allowableStress_Pa('older', 'A53-B-ERW') // 88_252_893
 */
export function allowableStress_Pa(set: StressSet, specification: PipeSpecification): number | undefined {
  const stress_psi = STRESSES[set][specification];
  return stress_psi === undefined ? undefined : psi_Pa(stress_psi);
}
