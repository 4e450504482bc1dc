import type { DerivedNetwork } from '../../derived/derived.ts';
import type { DischargeInput } from '../discharge/discharge.ts';
import type { DischargeSource } from '../discharge/discharge-source.ts';
import type { DischargeSums, ShareSums } from './design.ts';
import { type FlowFrame, spacesServed } from './flow-input.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** The discharge of a network with its orifices as drawn. */
export function dischargeOfNetwork(derived: DerivedNetwork, frame: Worked<FlowFrame>, dischargeOf: DischargeSource): Worked<DischargeSums> {
  if (!frame.isKnown) return frame;
  const blank = frame.sums.nozzles.find(({ area_m2 }) => !area_m2);
  if (blank) return notWorked(`the orifice of nozzle ${blank.name} is not chosen.`);
  const nozzles = frame.sums.nozzles.map(({ name: _, area_m2, ...nozzle }) => ({ ...nozzle, area_m2: area_m2 ?? 0 }));
  const input: DischargeInput = { ...frame.sums.input, nozzles };
  return workOut(() => {
    const known = dischargeOf(derived.network.id, input);
    if (known === undefined) return notWorked('the discharge is being worked out.');
    return typeof known === 'string' ? notWorked(known) : worked({ input, ...known, nodeIds: frame.sums.tree.nodeIds });
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
