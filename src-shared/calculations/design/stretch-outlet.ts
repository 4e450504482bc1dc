import { ATMOSPHERE_Pa } from '../../units/convert.ts';
import type { FlowStretch } from '../discharge/discharge.ts';
import type { PipeGas } from '../discharge/pipe-gas.ts';
import { type SteadyStretch, meanPressure_Pa, steadyStretch } from '../discharge/stretch-flow.ts';

/** Enough to find a pressure to a thousandth of a pascal. */
const HALVINGS = 36;

/** Steps from chord to chord; mostly three or four are enough. */
const MOST_CHORDS = 8;
/** A pressure found by chords is known far better than this [Pa]; nearer to it every halving is looked at. */
const SURE_Pa = 1e-4;
/** Where chords are trusted: the inlet rises steadily with the outlet there, whatever the gas does on its way. */
const TRUSTED = { leastTemperature_K: 200, greatestInlet_Pa: 2e7, chokedShare: 0.9, outletShare: 0.5, squareMach: 0.1 } as const;

/**
 * Where an inlet that rises with its outlet comes to a pressure, by chords on the squares, which lie almost on a line;
 * undefined where they do not settle.
 */
function byChords(inletOf: (end_Pa: number) => number, inlet_Pa: number): number | undefined {
  const over = (square: number): number => inletOf(Math.sqrt(square)) ** 2 - inlet_Pa ** 2;
  const least = ATMOSPHERE_Pa ** 2;
  let [before, overBefore] = [inlet_Pa ** 2, over(inlet_Pa ** 2)];
  let square = before - overBefore;
  for (let step = 0; step < MOST_CHORDS; step += 1) {
    if (!(square > least)) return undefined;
    const now = over(square);
    if (now === 0) return Math.sqrt(square);
    const next = square - (now * (square - before)) / (now - overBefore);
    if (!(next > least)) return undefined;
    if (Math.abs(Math.sqrt(next) - Math.sqrt(square)) < SURE_Pa / 100) return Math.sqrt(next);
    [before, overBefore, square] = [square, now, next];
  }
  return undefined;
}

/** The pressure around which a halving decides, where that is sure beforehand. */
function foundBefore(stretch: SteadyStretch, { temperature_K }: PipeGas, inletOf: (end_Pa: number) => number, inlet_Pa: number, choked_Pa: number): number | undefined {
  if (temperature_K < TRUSTED.leastTemperature_K || inlet_Pa > TRUSTED.greatestInlet_Pa || choked_Pa > inlet_Pa * TRUSTED.chokedShare) return undefined;
  const found_Pa = byChords(inletOf, inlet_Pa);
  if (found_Pa === undefined || found_Pa < inlet_Pa * TRUSTED.outletShare || stretch.squareMach(found_Pa, meanPressure_Pa(inlet_Pa, found_Pa)) > TRUSTED.squareMach) return undefined;
  return inletOf(found_Pa - SURE_Pa) <= inlet_Pa && inletOf(found_Pa + SURE_Pa) > inlet_Pa ? found_Pa : undefined;
}

/**
 * Pressure at the end of a stretch that a flow enters at a pressure; undefined when it cannot pass. By halving; which half
 * it is in is mostly told without looking.
 */
export function outletOf_Pa(stretch: FlowStretch, gas: PipeGas, inlet_Pa: number, flow_kg_s: number): number | undefined {
  const steady = steadyStretch(stretch, gas, flow_kg_s);
  const inletOf = (end_Pa: number): number => steady.inlet_Pa(end_Pa, meanPressure_Pa(inlet_Pa, end_Pa));
  const choked_Pa = inletOf(ATMOSPHERE_Pa);
  if (choked_Pa > inlet_Pa) return undefined;
  const found_Pa = foundBefore(steady, gas, inletOf, inlet_Pa, choked_Pa);
  let [low_Pa, high_Pa] = [ATMOSPHERE_Pa, inlet_Pa];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle_Pa = (low_Pa + high_Pa) / 2;
    const isSure = found_Pa !== undefined && Math.abs(middle_Pa - found_Pa) > SURE_Pa;
    if (isSure ? middle_Pa > found_Pa : inletOf(middle_Pa) > inlet_Pa) high_Pa = middle_Pa;
    else low_Pa = middle_Pa;
  }
  return low_Pa;
}
