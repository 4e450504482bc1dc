import { type Release, unknownCircuit } from '#shared/model/plan';

/** Voltage at the panel at the end of its battery that a circuit starts from [V]: 85 % of 24 V. Source: UL 864 and NFPA 72 practice, memory. */
export const END_OF_BATTERY_V = 20.4;

/**
 * A releasing circuit to begin with: one solenoid, whose current and least voltage are those of the unit profile.
 * What nobody stated stays open.
 */
export const startingCircuit = (): Release => ({
  supply_V: END_OF_BATTERY_V,
  wireGauge: '14',
  stranding: 'solid',
  devices: [{ id: 'device-1', name: 'Release solenoid', kind: 'solenoid', distance_m: null, current_A: null, leastVoltage_V: null, wiring: 'unknown' }],
  panelCurrent_A: null,
  panelPulse_s: null,
  conduit: null,
  conductors: [],
  pulls: [],
  pressureSwitch: null,
  ...unknownCircuit(),
});
