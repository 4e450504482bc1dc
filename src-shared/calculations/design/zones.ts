import type { DerivedNetwork, Fitting } from '../../derived/derived.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { PipeSize } from '../../profile/pipe-table.ts';
import { pipeWall_m } from '../../profile/pipe-table.ts';
import { gaugeOf_Pa } from '../../units/convert.ts';
import { expectedPressure_Pa } from '../formulas/cylinder-gas.ts';
import { FORGED_CLASSES, type ForgedClass, fittingRating_Pa, forgedRating_Pa } from '../formulas/fitting-rating.ts';
import { pipeRating_Pa } from '../formulas/pipe-rating.ts';
import { allowableStress_Pa } from '../formulas/pipe-stress.ts';
import { threadDepth_m } from '../formulas/pipe-threads.ts';
import { REFERENCE_K } from './agent.ts';
import type { DischargeSums, ZoneSums } from './design.ts';
import { FILL_K, regulatorOf } from './flow-input.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

const isForged = (fittingClass: string): fittingClass is ForgedClass => FORGED_CLASSES.some((each) => each === fittingClass);

/** Fittings that hold pressure by themselves; a bend that no made fitting has is judged as one. */
const isRated = ({ kind }: Fitting): boolean => kind !== 'cap';

/**
 * The pressure zones of a network, each with the ratings of what stands in it. All drawn pipe begins behind the
 * discharge assembly: with a regulator in it, the pipe is after the regulator; the assembly itself is the unit's own.
 */
export function zonesOf(derived: DerivedNetwork, discharge: Worked<DischargeSums>, basis: BasisOfDesign): Worked<readonly ZoneSums[]> {
  const { profile, network } = derived;
  if (derived.pipes.length === 0) return notWorked('the network has no pipe yet.');
  if (!profile) return notWorked('the network has no unit profile.');
  const fill = profile.limits.fillPressure_Pa;
  if (!fill) return notWorked(`“Fill pressure” is blank in the unit profile “${profile.name}”.`);
  if (profile.fittingClass === null) return notWorked(`the fitting class is blank in the unit profile “${profile.name}”.`);
  const { fittingClass } = profile;
  const regulator = regulatorOf(derived);
  if (!regulator.isKnown) return regulator;
  const stress_Pa = allowableStress_Pa(basis.stressSet, basis.pipeSpecification);
  if (stress_Pa === undefined) return notWorked('the chosen stress set has no value for the chosen pipe specification.');
  return workOut(() => {
    const hottest_Pa = gaugeOf_Pa(expectedPressure_Pa(fill.value, FILL_K, basis.hottestCylinder_K));
    const set_Pa = regulator.sums;
    const peak_Pa = discharge.isKnown ? gaugeOf_Pa(discharge.sums.result.peakPipePressure_Pa) : 0;
    const greatest = set_Pa === null ? { side: 'no regulator' as const, greatest_Pa: hottest_Pa } : { side: 'after the regulator' as const, greatest_Pa: Math.max(gaugeOf_Pa(set_Pa), peak_Pa) };
    const rating = (size: PipeSize): number =>
      isForged(fittingClass) ? forgedRating_Pa(size, fittingClass, stress_Pa, basis.millFactor, basis.yCoefficient) : fittingRating_Pa(size, fittingClass, REFERENCE_K);
    const pipes = derived.pipes.map((pipe) => {
      const depth_m = pipe.pipe.joint === 'threaded' ? threadDepth_m(pipe.pipe.size) : 0;
      return { pipe, rating_Pa: pipeRating_Pa(pipe.outside_m, pipeWall_m(pipe.pipe.size, pipe.pipe.schedule), depth_m, stress_Pa, basis.millFactor, basis.yCoefficient) };
    });
    const fittings = derived.fittings.filter(isRated).flatMap((fitting) => {
      const sizes = fitting.pipes.flatMap((id) => network.pipes[id]?.size ?? []);
      const rated = sizes.map((size) => ({ fitting, size, rating_Pa: rating(size), isEverAllowed: true }));
      return rated.sort((a, b) => a.rating_Pa - b.rating_Pa).slice(0, 1);
    });
    return worked([
      {
        ...greatest,
        greatestSource: set_Pa === null ? `full cylinder at its hottest place (${Math.round(basis.hottestCylinder_K - 273.15)} °C); no regulator is listed in the discharge assembly` : peak_Pa > gaugeOf_Pa(set_Pa) ? 'peak of the calculated discharge' : 'set pressure of the regulator',
        pipes,
        fittings,
        line_Pa: Math.min(...pipes.map(({ rating_Pa }) => rating_Pa), ...fittings.map(({ rating_Pa }) => rating_Pa)),
      },
    ]);
  });
}
