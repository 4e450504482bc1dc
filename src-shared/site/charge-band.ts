import type { SupervisionSums } from '../calculations/design/design.ts';
import { type Worked, workOut, worked } from '../calculations/design/worked.ts';
import { expectedPressure_Pa, pressureAfterLoss_Pa, pressureShort_Pa } from '../calculations/formulas/cylinder-gas.ts';

/** A cylinder that has lost more than this of its pressure is refilled or replaced. Source: NFPA 2001, memory. */
export const GREATEST_LOSS = 0.05;
/** More than a full one reads: filled too far, or its gas is not as warm as the reader took it to be. Source: common practice. */
const GREATEST_EXCESS = 0.05;

/** What a cylinder may read at a temperature, absolute [Pa]. */
export interface ChargeBand {
  readonly full_Pa: number;
  readonly least_Pa: number;
  readonly most_Pa: number;
}

export const CHARGE_SOURCE = 'filling chart of the unit profile, real nitrogen; 5 % loss: NFPA 2001, memory (29 CFR 1910.160(b)(7) asks for maintenance after any loss, (b)(8) for another container after 5 %); 5 % excess: common practice. The chart of the manual governs';

/**
 * What a full cylinder and one that has lost 5 % read at a temperature: 5 % of the pressure or of the mass, whichever shows first.
 * @param temperature_K  of the gas [K]; not worked out outside 126.2 to 1000
 */
export const chargeBandAt = ({ fillPressure_Pa, fillTemperature_K }: Pick<SupervisionSums, 'fillPressure_Pa' | 'fillTemperature_K'>, temperature_K: number): Worked<ChargeBand> =>
  workOut(() => {
    const full_Pa = expectedPressure_Pa(fillPressure_Pa, fillTemperature_K, temperature_K);
    const least_Pa = Math.max(pressureAfterLoss_Pa(fillPressure_Pa, fillTemperature_K, temperature_K, GREATEST_LOSS), pressureShort_Pa(fillPressure_Pa, fillTemperature_K, temperature_K, GREATEST_LOSS));
    return worked({ full_Pa, least_Pa, most_Pa: full_Pa * (1 + GREATEST_EXCESS) });
  });
