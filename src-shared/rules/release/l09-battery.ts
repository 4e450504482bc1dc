import type { NetworkDesign } from '../../calculations/design/design.ts';
import { BATTERY_RESERVE, batteryBasis } from '../../calculations/formulas/battery.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { perNetworkSums } from '../subjects.ts';

const HOUR_s = 3600;
const MINUTE_s = 60;

/** A time as it is said of a battery, with up to two decimals. */
const inUnits = (time_s: number, unit_s: number): string => String(Number((time_s / unit_s).toFixed(2)));

/**
 * L9: the battery of the panel stands by and then sounds alarm for as long as it must.
 * Measure: charge that it takes, with the reserve for its age [Ah]. Limit: charge of the battery.
 * Not checked: battery or one of the times is not entered.
 */
export const l09Battery = defineRule<NetworkDesign>({
  id: 'L9',
  title: 'Battery of the panel',
  severity: 'stop',
  measure: 'charge',
  basis: {
    formula: `${batteryBasis.formula}; Q ≤ charge of the battery`,
    source: `${batteryBasis.source}; times: authority, as the basis of design has them`,
    caution: batteryBasis.caution,
  },
  // L1 says where no circuit is drawn up.
  subjects: perNetworkSums((sums) => (sums.network.release ? [{ subject: sums, ref: sums.ref, name: sums.name }] : [])),
  check({ battery }, { say }) {
    if (!battery.isKnown) return notChecked(battery.because);
    const { standby_A, standby_s, alarm_A, alarm_s, needed_Ah, capacity_Ah } = battery.sums;
    const figures = atMost(needed_Ah, { value: capacity_Ah, source: 'battery, as stated on the plan' }, slackOf(capacity_Ah));
    const { value: takes, limit: holds } = say.quantityAgainst(needed_Ah, capacity_Ah, 'charge');
    const times = `${inUnits(standby_s, HOUR_s)} h of standing by and ${inUnits(alarm_s, MINUTE_s)} min of alarm`;
    return {
      ...figures,
      text: figures.isKept
        ? `${times} take ${takes}, with the reserve for its age; the battery holds ${holds}.`
        : `${times} take ${takes}, with the reserve for its age; the battery holds only ${holds}. Take a larger one.`,
      inputs: [
        { label: 'Current while it stands by', value: say.quantity(standby_A, 'current'), source: 'plan' },
        { label: 'Stands by for', value: `${inUnits(standby_s, HOUR_s)} h`, source: 'basis of design' },
        { label: 'Current in alarm', value: say.quantity(alarm_A, 'current'), source: 'plan' },
        { label: 'Sounds alarm for', value: `${inUnits(alarm_s, MINUTE_s)} min`, source: 'basis of design' },
        { label: 'Reserve', value: `times ${BATTERY_RESERVE}`, source: batteryBasis.source },
      ],
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Take a larger battery, or two of the same kind as the panel’s manual allows.' },
    };
  },
});
