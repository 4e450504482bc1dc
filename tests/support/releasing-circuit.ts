import type { Enclosure, Plan, Release } from '#shared/model/plan';
import { type LayoutSpec, layout } from './layout.ts';

const DRAWN: Release = {
  supply_V: 20.4,
  wireGauge: '14',
  stranding: 'solid',
  devices: [{ id: 'd1', name: 'Solenoid', kind: 'solenoid', distance_m: 30, current_A: null, leastVoltage_V: null, wiring: 'in-line' }],
  panelCurrent_A: 2,
  panelPulse_s: 1,
  conduit: { kind: 'EMT', size: '1/2' },
  conductors: [{ type: 'THHN', wireGauge: '14', count: 4 }],
  pulls: [{ name: 'Panel to hut', bends_rad: [Math.PI / 2, Math.PI / 2] }],
  pressureSwitch: { setPoint_Pa: 25_101_325, isClosedWhenCharged: false },
  endOfLine: 'after-last',
  isActuatorWatched: true,
  panel: { isListed: true, isCompatible: true, listing: 'Listing of the test' },
  battery: { capacity_Ah: 18, standby_A: 0.3, alarm_A: 2 },
};

/** A network with a releasing circuit that differs from a faultless one as told; null: none is drawn up. */
export const withRelease = (given: Partial<Release> | null, more: LayoutSpec = {}): Plan => layout({ ...more, network: { release: given && { ...DRAWN, ...given } } });

/** A room of that least temperature [K]. */
export const coldRoom = (least_K: number): Partial<Enclosure> => ({ temperature: { least_K, greatest_K: 310 } });
