/** How the gas left in a cylinder takes heat while it empties. */
export const CYLINDER_PROCESSES = ['wall-heat', 'isothermal', 'adiabatic'] as const;
export type CylinderProcess = (typeof CYLINDER_PROCESSES)[number];

/**
 * How warm the gas in the pipe is. As cold as it was throttled it is dense: greatest flow, pressure and thrust. Warmed by
 * the pipe to the filling temperature it is thin: least flow, longest discharge. Real gas lies between the two.
 */
export const PIPE_WARMTHS = ['as-throttled', 'warmed'] as const;
export type PipeWarmth = (typeof PIPE_WARMTHS)[number];

/** A straight or bent stretch of one bore between two places where flow parts, the bore changes or a nozzle sits. */
export interface FlowStretch {
  /** Node nearer the source; node 0 is the outlet of the discharge assembly. */
  readonly from: number;
  readonly to: number;
  readonly length_m: number;
  readonly bore_m: number;
  readonly roughness_m: number;
  /** Sum of the loss coefficients K of the fittings on it, for its own bore [-]. */
  readonly lossFactor: number;
}

export interface FlowNozzle {
  readonly id: string;
  readonly node: number;
  /** Of all its holes [m²]. */
  readonly area_m2: number;
  readonly dischargeCoefficient: number;
  /** Index of the space it blows into. */
  readonly space: number;
}

export interface FlowSpace {
  readonly id: string;
  /** Net volume [m³]. */
  readonly volume_m3: number;
  /** Index of its enclosure. */
  readonly enclosure: number;
  /** 95 % of this concentration is timed [vol %]. */
  readonly designConcentration_pct: number;
}

export interface FlowEnclosure {
  readonly id: string;
  readonly temperature_K: number;
  /** Outdoors [Pa], absolute. */
  readonly ambient_Pa: number;
  /** Free area of its relief vents and what they and its leaks pass: C_d·A [m²]. */
  readonly ventArea_m2: number;
  readonly ventCoefficient: number;
}

/** A whole unit as the transient sees it: numbers only, so that equal inputs mean equal results. */
export interface DischargeInput {
  readonly gas: 'real' | 'ideal';
  readonly process: CylinderProcess;
  readonly pipeWarmth: PipeWarmth;
  readonly cylinders: number;
  /** Water volume of one cylinder [m³]. */
  readonly cylinderVolume_m3: number;
  /** At the start [Pa], absolute. */
  readonly fillPressure_Pa: number;
  readonly fillTemperature_K: number;
  /** Steel of one cylinder [kg] and its inner face [m²]: they give heat to the gas under `wall-heat`. */
  readonly steelMass_kg: number;
  readonly innerArea_m2: number;
  /** Set pressure [Pa], absolute; null: no regulator, the pipe sees the cylinder. */
  readonly regulatorPressure_Pa: number | null;
  /** A tree rooted at node 0, in flow order. */
  readonly stretches: readonly FlowStretch[];
  readonly nodeCount: number;
  readonly nozzles: readonly FlowNozzle[];
  readonly spaces: readonly FlowSpace[];
  readonly enclosures: readonly FlowEnclosure[];
  /** Longest time followed [s]. */
  readonly until_s: number;
}

/** What the transient gives. Arrays run over `times_s`. */
export interface DischargeResult {
  readonly times_s: readonly number[];
  readonly flow_kg_s: readonly number[];
  readonly cylinderPressure_Pa: readonly number[];
  readonly cylinderTemperature_K: readonly number[];
  /** Behind the regulator, at node 0. */
  readonly sourcePressure_Pa: readonly number[];
  readonly sourceTemperature_K: readonly number[];
  readonly nozzles: readonly { readonly id: string; readonly mass_kg: number; readonly peakFlow_kg_s: number; readonly peakPressure_Pa: number; readonly isChokedAtPeak: boolean }[];
  /** Greatest pressure at each node [Pa], absolute. */
  readonly nodes: readonly { readonly peakPressure_Pa: number }[];
  readonly spaces: readonly {
    readonly id: string;
    readonly mass_kg: number;
    readonly concentration_pct: readonly number[];
    /** undefined: never reached. */
    readonly timeTo95_s: number | undefined;
  }[];
  readonly enclosures: readonly { readonly id: string; /** Over outdoors. */ readonly overpressure_Pa: readonly number[]; readonly peakOverpressure_Pa: number }[];
  /** Of the slowest space; undefined when one never reaches it. */
  readonly timeTo95_s: number | undefined;
  readonly peakFlow_kg_s: number;
  readonly peakPipePressure_Pa: number;
  readonly leastSourceTemperature_K: number;
  readonly leastCylinderTemperature_K: number;
  /** At the start and at the end in all cylinders together [kg]. */
  readonly massAtStart_kg: number;
  readonly massLeft_kg: number;
  /** False when the pressures of the pipes did not settle at some moment: then flows and times are not to be used. */
  readonly isNetworkSolved: boolean;
  /** Why it ended: the cylinders came to the room's pressure, the time was up, or the gas came to the end of the range of its equation. */
  readonly ended: 'empty' | 'time' | 'gas-limit';
}
