import type { DerivedNetwork, Space } from '../../derived/derived.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Enclosure, RefOf } from '../../model/plan.ts';
import { dischargeLimitBasis, dischargeLimit_s } from '../formulas/design-concentration.ts';
import type { DischargeSums, FillingSums, TimedSpace } from './design.ts';
import { networksServing } from './supply.ts';
import { type Worked, notWorked, worked } from './worked.ts';

/** How fast an enclosure comes to 95 % of its design concentration, from the discharge of its one network. */
export function fillingOf(
  ref: RefOf<'enclosure'>,
  { hazardClass }: Enclosure,
  spaces: readonly Space[],
  networks: readonly DerivedNetwork[],
  dischargeOf: (network: DerivedNetwork) => Worked<DischargeSums> | undefined,
  { designSet }: BasisOfDesign,
): Worked<FillingSums> {
  const serving = networksServing(ref, networks);
  const [network] = serving;
  if (!network) return notWorked('no nozzle serves the enclosure.');
  if (serving.length > 1) return notWorked('several networks fill the enclosure, and their discharge together is not worked out here.');
  if (hazardClass === 'unknown') return notWorked('what can burn in the enclosure is not known, so neither is its time limit.');
  const limit_s = dischargeLimit_s(hazardClass, designSet);
  if (limit_s === undefined) return notWorked('the chosen edition gives no time limit for this hazard.');
  const discharge = dischargeOf(network);
  if (!discharge) return notWorked('the discharge has not been run.');
  if (!discharge.isKnown) return discharge;
  const { result, slow, isStale } = discharge.sums;
  const timed: TimedSpace[] = [];
  for (const space of spaces) {
    const found = slow.spaces.find(({ id }) => id === space.key);
    if (!found) return notWorked(`no nozzle blows into “${space.name}”.`);
    timed.push({ space, mass_kg: found.mass_kg, timeTo95_s: found.timeTo95_s });
  }
  const times = timed.map(({ timeTo95_s }) => timeTo95_s);
  const late = timed.find(({ timeTo95_s }) => timeTo95_s === undefined);
  if (late && slow.ended === 'gas-limit') return notWorked(`the gas becomes colder than its equation goes before “${late.space.name}” is filled. Choose another process of the cylinder.`);
  const enclosure = result.enclosures.find(({ id }) => id === ref.id);
  if (!enclosure) return notWorked('the discharge tells nothing of the pressure in the enclosure.');
  return worked({
    spaces: timed,
    timeTo95_s: times.every((time) => time !== undefined) ? Math.max(...times) : undefined,
    limit_s,
    limitSource: dischargeLimitBasis.source,
    peakOverpressure_Pa: enclosure.peakOverpressure_Pa,
    isStale,
  });
}
