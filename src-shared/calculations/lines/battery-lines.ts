import type { BatterySums, NetworkDesign } from '../design/design.ts';
import { BATTERY_RESERVE, batteryBasis } from '../formulas/battery.ts';
import type { Calculation } from './calculation.ts';
import { CHOSEN, Draft, type LineContext, PLAN } from './draft.ts';
import { amount, amountsApart, figure } from './line-text.ts';

const HOUR_s = 3600;
const MINUTE_s = 60;

/** Whether the battery of the panel holds as long as it must. */
export function batteryLines({ lengths }: LineContext, network: NetworkDesign): Calculation {
  const draft = new Draft('battery', 'Battery of the panel', network.ref, network.name);
  draft.with('charge of the battery', network.battery, (sums) => chargeLines(draft, lengths, sums));
  return draft.done();
}

function chargeLines(draft: Draft, lengths: LineContext['lengths'], { standby_A, standby_s, alarm_A, alarm_s, needed_Ah, capacity_Ah }: BatterySums): void {
  draft.given('Current while it stands by, I_standby', amount(standby_A, 'current', lengths), PLAN);
  draft.given('It must stand by for, t_standby', `${figure(standby_s / HOUR_s)} h`, CHOSEN);
  draft.given('Current in alarm, I_alarm', amount(alarm_A, 'current', lengths), PLAN);
  draft.given('It must then sound alarm for, t_alarm', `${figure(alarm_s / MINUTE_s)} min`, CHOSEN);
  const isShort = needed_Ah > capacity_Ah * (1 + 1e-9);
  const { value, limit } = amountsApart(needed_Ah, capacity_Ah, 'charge', lengths);
  const numbers = `${figure(BATTERY_RESERVE)}·(${figure(standby_A)}·${figure(standby_s / HOUR_s)} + ${figure(alarm_A)}·${figure(alarm_s / HOUR_s)})`;
  draft.main('Charge that it must hold, Q', batteryBasis, numbers, `${value}; the battery holds ${limit}${isShort ? ': too little' : ''}`);
}
