import type { DerivedNetwork } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import type { DischargeInput, FlowNozzle } from '../discharge/discharge.ts';
import type { DischargeSource, KnownDischarge } from '../discharge/discharge-source.ts';
import type { DischargeSums, ShareSums } from './design.ts';
import { type FlowFrame, spacesServed } from './flow-input.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

const WAITING = notWorked('the discharge is being worked out.');

/** A discharge that can be used, or why not. */
export function usable(known: ReturnType<DischargeSource>): Worked<KnownDischarge> {
  if (known === undefined) return WAITING;
  if (typeof known === 'string') return notWorked(known.endsWith('.') ? known : `${known}.`);
  return known.result.isNetworkSolved ? worked(known) : notWorked('the pressures in the pipe did not settle, so flows and times are not to be used.');
}

interface BothInputs {
  readonly cold: DischargeInput;
  readonly warmed: DischargeInput;
}

/** The inputs of both runs, once for one frame: who keeps results knows them again without looking into them. */
const inputsOf = remembered((frame: FlowFrame): Worked<BothInputs> => {
  const nozzles: FlowNozzle[] = [];
  for (const { name, area_m2, ...nozzle } of frame.nozzles) {
    if (!area_m2) return notWorked(`the orifice of nozzle ${name} is not chosen.`);
    nozzles.push({ ...nozzle, area_m2 });
  }
  const cold: DischargeInput = { ...frame.input, nozzles };
  return worked({ cold, warmed: { ...cold, pipeWarmth: 'warmed', enclosures: frame.coldest } });
});

// Two networks may have one result, but never one input.
const sumsOf = remembered((input: DischargeInput, cold: KnownDischarge, warmed: KnownDischarge, nodeIds: readonly string[]): Worked<DischargeSums> =>
  worked({ input, result: cold.result, slow: warmed.result, isStale: cold.isStale || warmed.isStale, nodeIds }),
);

/** The discharge of a network with its orifices as drawn. */
export function dischargeOfNetwork(derived: DerivedNetwork, frame: Worked<FlowFrame>, dischargeOf: DischargeSource): Worked<DischargeSums> {
  if (!frame.isKnown) return frame;
  const inputs = inputsOf(frame.sums);
  if (!inputs.isKnown) return inputs;
  return workOut(() => {
    const cold = usable(dischargeOf(derived.network.id, inputs.sums.cold));
    const warmed = usable(dischargeOf(`${derived.network.id}, warmed`, inputs.sums.warmed));
    if (!cold.isKnown) return cold;
    return warmed.isKnown ? sumsOf(inputs.sums.cold, cold.sums, warmed.sums, frame.sums.tree.nodeIds) : warmed;
  });
}

/** How a network parts its agent among its spaces, against how they part their volume. */
export function sharesOf(derived: DerivedNetwork, discharge: Worked<DischargeSums>): Worked<readonly ShareSums[]> {
  if (!discharge.isKnown) return discharge;
  const { input, result } = discharge.sums;
  const total_kg = result.spaces.reduce((sum, { mass_kg }) => sum + mass_kg, 0);
  const total_m3 = input.spaces.reduce((sum, { volume_m3 }) => sum + volume_m3, 0);
  if (!(total_kg > 0 && total_m3 > 0)) return notWorked('nothing comes out.');
  return worked(
    spacesServed(derived).flatMap((space): ShareSums[] => {
      const mass_kg = result.spaces.find(({ id }) => id === space.key)?.mass_kg;
      const volume_m3 = input.spaces.find(({ id }) => id === space.key)?.volume_m3;
      return mass_kg === undefined || volume_m3 === undefined ? [] : [{ space, flowShare: mass_kg / total_kg, volumeShare: volume_m3 / total_m3 }];
    }),
  );
}
