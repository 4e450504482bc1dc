import type { DerivedNetwork } from '../../derived/derived.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { PipeSize } from '../../profile/pipe-table.ts';
import { pipeWall_m } from '../../profile/pipe-table.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import { gaugeOf_Pa, toCelsius } from '../../units/convert.ts';
import { SUM_NOISE } from '../formulas/agent-quantity.ts';
import { expectedPressure_Pa } from '../formulas/cylinder-gas.ts';
import { FORGED_CLASSES, type ForgedClass, fittingRating_Pa, forgedRating_Pa, isClassForService } from '../formulas/fitting-rating.ts';
import { pipeRating_Pa } from '../formulas/pipe-rating.ts';
import { allowableStress_Pa } from '../formulas/pipe-stress.ts';
import { threadDepth_m } from '../formulas/pipe-threads.ts';
import { REFERENCE_K } from './agent.ts';
import type { DischargeSums, ZoneSums } from './design.ts';
import { FILL_K, regulatorOf } from './flow-input.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

type FittingClass = NonNullable<UnitProfile['fittingClass']>;
const isForged = (fittingClass: FittingClass): fittingClass is ForgedClass => FORGED_CLASSES.some((each) => each === fittingClass);

/** Ratings of all that stands in the drawn pipe. */
type Strength = Pick<ZoneSums, 'pipes' | 'fittings'> & { readonly line_Pa: number };

/** A fitting bears what its weakest end bears; a bend that no made fitting has is judged as one. */
function strengthOf(derived: DerivedNetwork, fittingClass: FittingClass, stress_Pa: number, { millFactor, yCoefficient }: BasisOfDesign): Strength {
  const ratingOf = (size: PipeSize): number => (isForged(fittingClass) ? forgedRating_Pa(size, fittingClass, stress_Pa, millFactor, yCoefficient) : fittingRating_Pa(size, fittingClass, REFERENCE_K));
  const pipes = derived.pipes.map((pipe) => {
    const depth_m = pipe.pipe.joint === 'threaded' ? threadDepth_m(pipe.pipe.size) : 0;
    return { pipe, rating_Pa: pipeRating_Pa(pipe.outside_m, pipeWall_m(pipe.pipe.size, pipe.pipe.schedule), depth_m, stress_Pa, millFactor, yCoefficient) };
  });
  const fittings = derived.fittings.flatMap((fitting) => {
    const ends = fitting.pipes.flatMap((id) => derived.network.pipes[id]?.size ?? []).map((size) => ({ fitting, size, rating_Pa: ratingOf(size), isEverAllowed: isClassForService(fittingClass) }));
    return ends.sort((a, b) => a.rating_Pa - b.rating_Pa).slice(0, 1);
  });
  return { pipes, fittings, line_Pa: Math.min(...[...pipes, ...fittings].map(({ rating_Pa }) => rating_Pa)) };
}

/**
 * The pressure zones of a network, each with the ratings of what stands in it. All drawn pipe begins behind the
 * discharge assembly: with a regulator in it, the pipe is after the regulator; the assembly itself is the unit's own.
 */
export function zonesOf(derived: DerivedNetwork, discharge: Worked<DischargeSums>, basis: BasisOfDesign): Worked<readonly ZoneSums[]> {
  const { profile } = derived;
  if (derived.pipes.length === 0) return notWorked('the network has no pipe yet.');
  if (!profile) return notWorked('the network has no unit profile.');
  const fill = profile.limits.fillPressure_Pa;
  if (!fill) return notWorked(`“Fill pressure” is blank in the unit profile “${profile.name}”.`);
  if (profile.fittingClass === null) return notWorked(`the fitting class is blank in the unit profile “${profile.name}”.`);
  if (derived.pipes.some(({ pipe }) => pipe.joint === 'grooved')) return notWorked('how much the grooves leave of the pipe, and what its couplings bear, is not known. Their maker states it.');
  if (derived.pipes.some(({ pipe }) => pipe.material === 'stainless-steel')) return notWorked('the stress sets hold carbon steel only: the stress that stainless pipe bears is not known.');
  const regulator = regulatorOf(derived);
  if (!regulator.isKnown) return regulator;
  const stress_Pa = allowableStress_Pa(basis.stressSet, basis.pipeSpecification);
  if (stress_Pa === undefined) return notWorked('the chosen stress set has no value for the chosen pipe specification.');
  const { fittingClass } = profile;
  return workOut((): Worked<readonly ZoneSums[]> => {
    const strength = strengthOf(derived, fittingClass, stress_Pa, basis);
    if (regulator.sums === null) {
      const where = `full cylinder at its hottest place (${Math.round(toCelsius(basis.hottestCylinder_K))} °C); no regulator is listed in the discharge assembly`;
      return worked([{ side: 'no regulator', greatest_Pa: gaugeOf_Pa(expectedPressure_Pa(fill.value, FILL_K, basis.hottestCylinder_K)), greatestSource: where, ...strength }]);
    }
    const set_Pa = gaugeOf_Pa(regulator.sums);
    const peak_Pa = discharge.isKnown ? gaugeOf_Pa(discharge.sums.result.peakPipePressure_Pa) : 0;
    const isPeak = peak_Pa > set_Pa * (1 + SUM_NOISE);
    return worked([{ side: 'after the regulator', greatest_Pa: Math.max(set_Pa, peak_Pa), greatestSource: isPeak ? 'peak of the calculated discharge' : 'set pressure of the regulator', ...strength }]);
  });
}
