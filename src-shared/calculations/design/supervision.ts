import { rememberedPart } from '../../derived/remember.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import { celsius_K, gaugeOf_Pa } from '../../units/convert.ts';
import { pressureChart } from '../formulas/cylinder-gas.ts';
import type { SupervisionSums } from './design.ts';
import { FILL_K } from './flow-input.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** A cylinder that has lost more of its charge than this is taken out of service (common practice of half-yearly checks). */
const REJECTED_LOSS = 0.05;
const CHART_C = [-20, -10, 0, 10, 15, 20, 25, 30, 40, 50];

const chartOf = rememberedPart((profile: UnitProfile): Worked<SupervisionSums> => {
  const fill = profile.limits.fillPressure_Pa;
  if (!fill) return notWorked(`“Fill pressure” is blank in the unit profile “${profile.name}”.`);
  return workOut(() =>
    worked({
      fillPressure_Pa: fill.value,
      fillTemperature_K: FILL_K,
      chart: pressureChart(fill.value, FILL_K, CHART_C.map(celsius_K), REJECTED_LOSS).map(({ temperature_K, expected_Pa, afterLoss_Pa, short_Pa }) => ({
        temperature_K,
        full_Pa: gaugeOf_Pa(expected_Pa),
        // A loss of pressure and a loss of mass are not the same: whichever is noticed first.
        reject_Pa: gaugeOf_Pa(Math.max(afterLoss_Pa, short_Pa)),
      })),
    }),
  );
});

/** What the gauge of a full cylinder reads at each temperature, and of one that has lost 5 %. */
export const supervisionOf = (profile: UnitProfile | undefined): Worked<SupervisionSums> => (profile ? chartOf(profile) : notWorked('the network has no unit profile.'));
