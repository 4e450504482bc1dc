import type { Space } from '../../derived/derived.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Enclosure } from '../../model/plan.ts';
import { bothDirections, fitDoorFan, leakageArea_m2 } from '../formulas/door-fan.ts';
import { gasHeightLeft_m, gasInterface, holdTimeAllowedLeakage } from '../formulas/hold-leakage.ts';
import { type LeakyEnclosure, fanCoefficientOf, interfaceTime_s, mixingTime_s, mixtureDensity_kg_m3, wideInterfaceHeight_m } from '../formulas/hold-time.ts';
import { specificVolume_m3_kg } from '../formulas/specific-volume.ts';
import { AGENT, REFERENCE_K } from './agent.ts';
import type { AgentSums, HoldSums, LeakSums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** Leakage areas are compared at this pressure [Pa]. */
const COMPARED_AT_Pa = 10;
/** Float noise of an exponent that lies on its bound. */
const EXPONENT_NOISE = 1e-9;

/** The leaks as a power law: from a listed area, or from what a door fan read both ways. */
export function leaksOf({ leakage }: Enclosure, basis: BasisOfDesign): Worked<LeakSums> {
  if (leakage.kind === 'unknown') return notWorked('the leakage of the enclosure is not known: enter a door-fan test or an area.');
  return workOut(() => {
    if (leakage.kind === 'area') {
      const coefficient = fanCoefficientOf(leakage.area_m2, leakage.pressure_Pa, basis.leakExponent);
      const area_m2 = leakageArea_m2(coefficient, basis.leakExponent, COMPARED_AT_Pa);
      return worked({ coefficient, exponent: basis.leakExponent, area_m2, source: 'leakage area entered in the plan; exponent of the basis of design', remarks: ['An area that nobody measured is an assumption: a door-fan test decides.'] });
    }
    const [inward, outward] = (['in', 'out'] as const).map((way) => leakage.readings.filter(({ direction }) => direction === way));
    if (!inward || !outward || inward.length < 2 || outward.length < 2) return notWorked('a door-fan test needs at least two readings each way.');
    const fits = [fitDoorFan(inward), fitDoorFan(outward)] as const;
    const { fanCoefficient, fanExponent } = bothDirections(...fits);
    const exponent = Math.min(1, Math.max(0.5, fanExponent));
    if (!(Math.abs(exponent - fanExponent) <= EXPONENT_NOISE)) return notWorked(`the door-fan readings give an exponent of ${fanExponent.toFixed(2)}, which no leak has: from 0.5 to 1. Read the test again.`);
    const remarks = [
      ...(fits.every(({ isEnough }) => isEnough) ? [] : ['Fewer readings than a door-fan test should have each way.']),
      ...(fits.every(({ isPlausible }) => isPlausible) ? [] : ['An exponent outside 0.5 to 1: read the test again.']),
    ];
    return worked({ coefficient: fanCoefficient, exponent, area_m2: leakageArea_m2(fanCoefficient, exponent, COMPARED_AT_Pa), source: 'door-fan readings both ways, mean of both', remarks });
  });
}

/** How long the enclosure holds its gas. */
export function holdOf(enclosure: Enclosure, spaces: readonly Space[], agent: Worked<AgentSums>, leaks: Worked<LeakSums>, basis: BasisOfDesign): Worked<HoldSums> {
  if (!agent.isKnown) return agent;
  if (!leaks.isKnown) return leaks;
  const { lowestProtected_m } = enclosure;
  if (lowestProtected_m === null) return notWorked('the lowest place that must stay protected is not known.');
  const floor_m = Math.min(...spaces.map((space) => space.floor_m));
  const tops = spaces.map(({ tallest_m }) => tallest_m);
  const top_m = Math.max(...tops.map((each) => each ?? Number.NaN));
  if (!Number.isFinite(top_m)) return notWorked('the height of the enclosure is not known.');
  const height_m = top_m - floor_m;
  if (lowestProtected_m < floor_m || lowestProtected_m > top_m) return notWorked('the lowest protected place lies outside the enclosure.');
  return workOut(() => {
    const { net_m3, concentration_pct } = agent.sums;
    const density_kg_m3 = 1 / specificVolume_m3_kg(AGENT, REFERENCE_K, basis.constants);
    const mixture_kg_m3 = mixtureDensity_kg_m3(density_kg_m3, concentration_pct);
    const way = gasInterface(mixture_kg_m3);
    const left_m = gasHeightLeft_m(way, height_m, lowestProtected_m - floor_m);
    const endConcentration_pct = (concentration_pct * basis.holdEnd_pct) / 100;
    const { coefficient, exponent } = leaks.sums;
    const room: LeakyEnclosure = { volume_m3: net_m3, height_m, fanCoefficient: coefficient, fanExponent: exponent, lowerLeakFraction: basis.leakFraction, bias_Pa: basis.bias_Pa };
    const sharp_s = interfaceTime_s(room, mixture_kg_m3, left_m);
    const wide_s = interfaceTime_s(room, mixture_kg_m3, wideInterfaceHeight_m(height_m, left_m, concentration_pct, endConcentration_pct));
    const mixing_s = mixingTime_s(room, density_kg_m3, concentration_pct, endConcentration_pct);
    const time_s = { sharp: sharp_s, wide: wide_s, mixing: mixing_s }[basis.holdModel];
    return worked({
      model: basis.holdModel,
      time_s,
      sharp_s,
      wide_s,
      mixing_s,
      required_s: basis.holdTime_s,
      interface: way,
      concentration_pct,
      endConcentration_pct,
      mixture_kg_m3,
      height_m,
      lowestProtected_m,
      allowedLeakage_m2: holdTimeAllowedLeakage(coefficient, exponent, time_s, basis.holdTime_s).leakageArea_m2,
    });
  });
}
