import type { DeviceVoltage } from '../../calculations/design/design.ts';
import { type Worked, notWorked, worked } from '../../calculations/design/worked.ts';
import { endOfBatteryBasis, voltageDropBasis } from '../../calculations/formulas/voltage-drop.ts';
import { wireResistanceBasis } from '../../calculations/formulas/wire.ts';
import { type Member, memberSubjects } from '../design-subjects.ts';
import { perNetworkSums } from '../subjects.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { namesApart } from './releasing-circuits.ts';

/**
 * L1: every device of the releasing circuit still gets its least voltage at the end of the battery.
 * Measure: voltage at the device [V].
 * Limit: its least voltage, as stated or as the unit profile gives it for the solenoid.
 * Not checked: the circuit is not drawn up, a current or distance is not known, or nobody stated the least voltage.
 */
export const l01DeviceVoltage = defineRule<Member<DeviceVoltage>>({
  id: 'L1',
  title: 'Voltage at device',
  severity: 'stop',
  measure: 'voltage',
  basis: {
    formula: `supply at the end of the battery − drop ≥ least voltage; ${voltageDropBasis.formula}`,
    source: `${voltageDropBasis.source}; ${wireResistanceBasis.source}; least voltage: unit profile or maker of the device`,
    caution: endOfBatteryBasis.caution,
  },
  limitKeys: ['solenoidCurrent_A', 'solenoidLeastVoltage_V'],
  subjects: perNetworkSums((network) => {
    const { release } = network;
    const devices: Worked<readonly DeviceVoltage[]> = release.isKnown ? worked(release.sums.devices) : release;
    const isDrawn = network.network.release !== null;
    const names = release.isKnown ? namesApart(release.sums.devices.map(({ name }) => name), 'device') : [];
    return memberSubjects(network, isDrawn ? devices : notWorked('the releasing circuit is not drawn up.'), ({ name }, i) => ({
      ref: network.ref,
      name: `${network.name}, ${names[i] ?? name}`,
    }));
  }),
  check({ network, member }, { say }) {
    if (!member.isKnown) return notChecked(member.because);
    const { kind, voltage_V, least_V, distance_m } = member.sums;
    const gets = `${say.quantity(voltage_V, 'voltage')} ${say.length(distance_m)} from the panel`;
    if (least_V === undefined) return notChecked(`nobody has stated the least voltage that it needs. It gets ${gets}.`);
    const inProfile = network.profile?.limits.solenoidLeastVoltage_V;
    const source = kind === 'solenoid' && inProfile?.value === least_V ? inProfile.source : 'device, as stated on the plan';
    const figures = atLeast(voltage_V, { value: least_V, source }, slackOf(least_V));
    const { value: volts, limit: needs } = say.quantityAgainst(voltage_V, least_V, 'voltage');
    return {
      ...figures,
      text: figures.isKept
        ? `Gets ${volts} ${say.length(distance_m)} from the panel; ${needs} is enough.`
        : `Gets only ${volts} ${say.length(distance_m)} from the panel; it needs ${needs}. Use thicker wire or a shorter run.`,
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Use thicker wire, a shorter run or a releasing module nearby.' },
    };
  },
});
