import { NITROGEN_R_J_kgK } from '../formulas/nitrogen-coefficients.ts';
import type { DischargeInput, FlowEnclosure, FlowSpace } from './discharge.ts';

/** R of dry air, 8.31446/0.0289652 [J/(kg·K)]. */
const AIR_R_J_kgK = 287.05;
/** The pressure of a room follows within a fraction of a second: each step of the unit is cut into these. */
const CUTS = 4;

/** One space as it fills. */
export interface SpaceFill {
  readonly space: FlowSpace;
  readonly mass_kg: number;
  /** Volume share of agent, 0 to 1. */
  readonly share: number;
  readonly timeTo95_s: number | undefined;
}

export interface EnclosureFill {
  readonly enclosure: FlowEnclosure;
  readonly overpressure_Pa: number;
}

export interface Rooms {
  readonly spaces: readonly SpaceFill[];
  readonly enclosures: readonly EnclosureFill[];
}

/** Rooms with nothing in them but air. */
export const emptyRooms = (input: DischargeInput): Rooms => ({
  spaces: input.spaces.map((space) => ({ space, mass_kg: 0, share: 0, timeTo95_s: undefined })),
  enclosures: input.enclosures.map((enclosure) => ({ enclosure, overpressure_Pa: 0 })),
});

/** All spaces of an enclosure together. */
interface Mixture {
  readonly volume_m3: number;
  /** Of agent, by volume. */
  readonly share: number;
}

function mixtureOf(spaces: readonly SpaceFill[]): Mixture {
  let volume_m3 = 0;
  let agent_m3 = 0;
  for (const { space, share } of spaces) {
    volume_m3 += space.volume_m3;
    agent_m3 += share * space.volume_m3;
  }
  return { volume_m3, share: volume_m3 > 0 ? agent_m3 / volume_m3 : 0 };
}

/** Overpressure after some even cuts of a step: what flows in presses, the vents relieve; each cut is solved at its end, so that no vent is too large for it. */
function pressedInCuts_Pa({ enclosure, overpressure_Pa }: EnclosureFill, { volume_m3, share }: Mixture, flow_kg_s: number, step_s: number, cuts: number): number {
  const { ambient_Pa, temperature_K, ventArea_m2, ventCoefficient } = enclosure;
  const rising_Pa_s = (flow_kg_s * NITROGEN_R_J_kgK * temperature_K) / volume_m3;
  const cut_s = step_s / cuts;
  let over_Pa = overpressure_Pa;
  for (let count = 0; count < cuts; count += 1) {
    const pressure_Pa = ambient_Pa + over_Pa;
    const density_kg_m3 = (pressure_Pa / temperature_K) * (share / NITROGEN_R_J_kgK + (1 - share) / AIR_R_J_kgK);
    // Δp' = Δp + Δt·(a − b·√Δp'), solved for √Δp'.
    const relief = (cut_s * pressure_Pa * ventCoefficient * ventArea_m2 * Math.sqrt(2 / density_kg_m3)) / volume_m3;
    const pressed = over_Pa + cut_s * rising_Pa_s;
    over_Pa = pressed > 0 ? ((2 * pressed) / (relief + Math.sqrt(relief ** 2 + 4 * pressed))) ** 2 : 0;
  }
  return over_Pa;
}

/** Overpressure after a step: twice the cuts halve what is still wrong, which tells what none would leave. */
function pressed_Pa(fill: EnclosureFill, spaces: readonly SpaceFill[], flow_kg_s: number, step_s: number): number {
  const mixture = mixtureOf(spaces);
  if (mixture.volume_m3 === 0) return 0;
  return Math.max(0, 2 * pressedInCuts_Pa(fill, mixture, flow_kg_s, step_s, 2 * CUTS) - pressedInCuts_Pa(fill, mixture, flow_kg_s, step_s, CUTS));
}

/** A space after a step with a steady flow into it: agent takes the place of what is there. */
function filled(fill: SpaceFill, flow_kg_s: number, temperature_K: number, pressure_Pa: number, time_s: number, step_s: number): SpaceFill {
  const { space } = fill;
  const inflow_m3_s = (flow_kg_s * NITROGEN_R_J_kgK * temperature_K) / pressure_Pa;
  const share = 1 - (1 - fill.share) * Math.exp((-inflow_m3_s * step_s) / space.volume_m3);
  const target = (0.95 * space.designConcentration_pct) / 100;
  const timeTo95_s = fill.timeTo95_s ?? (share >= target ? time_s + (step_s * (target - fill.share)) / (share - fill.share || 1) : undefined);
  return { space, mass_kg: fill.mass_kg + flow_kg_s * step_s, share, timeTo95_s };
}

/** All rooms after a step. @param flows_kg_s  into each space; @param time_s  at the start of the step */
export function roomsAfter(rooms: Rooms, flows_kg_s: readonly number[], time_s: number, step_s: number): Rooms {
  const enclosures = rooms.enclosures.map((fill, index) => {
    const within = rooms.spaces.filter(({ space }) => space.enclosure === index);
    const flow_kg_s = rooms.spaces.reduce((sum, { space }, at) => sum + (space.enclosure === index ? (flows_kg_s[at] ?? 0) : 0), 0);
    return { enclosure: fill.enclosure, overpressure_Pa: pressed_Pa(fill, within, flow_kg_s, step_s) };
  });
  const spaces = rooms.spaces.map((fill, index) => {
    const before = rooms.enclosures[fill.space.enclosure];
    const after = enclosures[fill.space.enclosure];
    if (!before || !after) throw new RangeError(`Space ${fill.space.id} lies in no enclosure.`);
    const pressure_Pa = before.enclosure.ambient_Pa + (before.overpressure_Pa + after.overpressure_Pa) / 2;
    return filled(fill, flows_kg_s[index] ?? 0, before.enclosure.temperature_K, pressure_Pa, time_s, step_s);
  });
  return { spaces, enclosures };
}
