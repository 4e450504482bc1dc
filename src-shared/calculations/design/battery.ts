import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Network } from '../../model/plan.ts';
import { BATTERY_RESERVE, batteryCharge_Ah } from '../formulas/battery.ts';
import type { BatterySums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** What the battery of the panel must hold to stand by and then sound alarm, as long as the basis of design says. */
export function batteryOf({ release, name }: Network, { batteryStandby_s, batteryAlarm_s }: BasisOfDesign): Worked<BatterySums> {
  if (!release) return notWorked(`the releasing circuit of “${name}” is not drawn up.`);
  const { battery } = release;
  // A figure of 0 stands for one that nobody has entered: no panel takes nothing.
  if (!battery || battery.capacity_Ah === 0) return notWorked(`the battery of the panel of “${name}” is not entered.`);
  if (battery.standby_A === 0) return notWorked(`what the panel of “${name}” takes while it stands by is not entered.`);
  if (battery.alarm_A === 0) return notWorked(`what the panel of “${name}” takes in alarm is not entered.`);
  if (batteryStandby_s === null) return notWorked('how long the battery must stand by is not entered in the basis of design.');
  if (batteryAlarm_s === null) return notWorked('how long the battery must sound alarm is not entered in the basis of design.');
  const { standby_A, alarm_A, capacity_Ah } = battery;
  return workOut(() =>
    worked({ standby_A, standby_s: batteryStandby_s, alarm_A, alarm_s: batteryAlarm_s, needed_Ah: batteryCharge_Ah(standby_A, batteryStandby_s, alarm_A, batteryAlarm_s, BATTERY_RESERVE), capacity_Ah }),
  );
}
