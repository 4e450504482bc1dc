import { z } from '../profile/zod.ts';

/** Whose concentrations, safety factors and discharge limits. */
export const DESIGN_SETS = ['iso-14520-2015', 'en-15004-2008', 'nfpa-2001-2012', 'nfpa-2001-2008'] as const;
export const ALTITUDE_METHODS = ['iso', 'nfpa', 'isa'] as const;
export const LOSS_SETS = ['tp-410', 'nfpa-12', 'ashrae'] as const;
export const STRESS_SETS = ['older', 'newer'] as const;
export const PIPE_SPECIFICATIONS = ['A106-C', 'A106-B', 'A53-B-seamless', 'A53-A-seamless', 'A53-B-ERW', 'A53-A-ERW', 'A53-F'] as const;
export const SUPPORT_TABLES = ['b31.1', 'mss-sp-69', 'iso-14520'] as const;
export const SEISMIC = ['unknown', 'not-required', 'required'] as const;
/** Whether an authority asks for something. */
export const REQUIRED = ['unknown', 'not-required', 'required'] as const;
export const EXPOSURES = ['5-min', '3-min', '30-s', 'none'] as const;

/**
 * Basis of design: wherever editions or sources differ, which one this plan follows. Each is a named choice with a
 * stated default (`usualBasis`), printed on the calculation sheets.
 */
export const basisSchema = z.strictObject({
  designSet: z.enum(DESIGN_SETS),
  /** Constants of the specific volume; they differ for IG-01 only. */
  constants: z.enum(['iso', 'nfpa']),
  logarithm: z.enum(['exact', '2.303']),
  altitudeMethod: z.enum(ALTITUDE_METHODS),
  /** Oxygen of plain air [vol %]. */
  oxygenBase_pct: z.number().min(20).max(21),
  /** What decides the exposure band. */
  exposureBy: z.enum(['stricter', 'concentration', 'oxygen']),
  /** Longest delay before discharge that the authority allows [s]; null: not yet known. */
  greatestDelay_s: z.number().min(0).max(3600).nullable(),

  /** Flow that the relief vent is sized for: what the unit's manual states, or what the discharge works out. */
  ventFlow: z.enum(['manual', 'calculated']),
  /** Temperature at which agent fills the room while it is vented. */
  ventTemperature: z.enum(['20C', 'hottest']),
  ventCoefficient: z.number().min(0.05).max(1),
  /** Whether the room's own leaks count as vent. */
  ventCountsLeakage: z.boolean(),

  holdModel: z.enum(['sharp', 'wide', 'mixing']),
  holdTime_s: z.number().min(1).max(86_400),
  /** Share of the design concentration that must be left [%]. */
  holdEnd_pct: z.number().min(1).max(100),
  /** Share of the leaks through which the gas leaves. */
  leakFraction: z.number().min(0.01).max(0.99),
  /** Exponent of the leaks while only their area is known. */
  leakExponent: z.number().min(0.5).max(0.999),
  /** Steady pressure of ventilation while the gas is held [Pa]. */
  bias_Pa: z.number().min(0).max(1000),

  /** How the gas left in a cylinder takes heat. */
  cylinderProcess: z.enum(['wall-heat', 'isothermal', 'adiabatic']),
  lossSet: z.enum(LOSS_SETS),
  pipeRoughness_m: z.number().min(0).max(0.005),

  stressSet: z.enum(STRESS_SETS),
  pipeSpecification: z.enum(PIPE_SPECIFICATIONS),
  millFactor: z.number().min(0.5).max(1),
  yCoefficient: z.number().min(0).max(0.7),
  /** Hottest place of a cylinder: sets the highest pressure before the regulator. */
  hottestCylinder_K: z.number().min(273).max(373),
  supportTable: z.enum(SUPPORT_TABLES),
  lastSupport: z.enum(['iso', 'us']),
  /** Whether the pipe must be braced against earthquakes, as the authority or the structural engineer says. */
  seismic: z.enum(SEISMIC),
  /** Filled cylinder on its wall: weight times this. */
  wallLoadFactor: z.number().min(1).max(10),

  /** Whether the authority asks for a valve that locks the agent out while people work inside. */
  lockOutValve: z.enum(REQUIRED),
  /** How long the battery must stand by and then sound alarm [s]; null: not yet known. */
  batteryStandby_s: z.number().min(0).max(1e6).nullable(),
  batteryAlarm_s: z.number().min(0).max(1e5).nullable(),
  /** Whether the authority asks for extract after a discharge. */
  extract: z.enum(REQUIRED),
  /** Smallest scale of a plan sheet that the authority takes: 1 to this. */
  smallestScale: z.number().min(1).max(10_000),
  /** Least height of letters on a sheet [m]. */
  leastText_m: z.number().min(0.0005).max(0.05),
});
export type BasisOfDesign = z.infer<typeof basisSchema>;

/** What a new plan follows until somebody chooses otherwise. */
export const usualBasis = (): BasisOfDesign => ({
  designSet: 'iso-14520-2015',
  constants: 'iso',
  logarithm: 'exact',
  altitudeMethod: 'iso',
  oxygenBase_pct: 20.95,
  exposureBy: 'stricter',
  greatestDelay_s: null,
  ventFlow: 'manual',
  ventTemperature: '20C',
  ventCoefficient: 0.61,
  ventCountsLeakage: false,
  holdModel: 'wide',
  holdTime_s: 600,
  holdEnd_pct: 85,
  leakFraction: 0.5,
  leakExponent: 0.6,
  bias_Pa: 0,
  cylinderProcess: 'wall-heat',
  lossSet: 'tp-410',
  pipeRoughness_m: 0.000_045_7,
  stressSet: 'older',
  pipeSpecification: 'A106-B',
  millFactor: 0.875,
  yCoefficient: 0.4,
  hottestCylinder_K: 327.594,
  supportTable: 'iso-14520',
  lastSupport: 'iso',
  seismic: 'unknown',
  wallLoadFactor: 1.5,
  lockOutValve: 'unknown',
  batteryStandby_s: null,
  batteryAlarm_s: null,
  extract: 'unknown',
  smallestScale: 96,
  leastText_m: 0.0018,
});
