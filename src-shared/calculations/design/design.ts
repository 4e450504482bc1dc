import type { DerivedPipe, Fitting, Space } from '../../derived/derived.ts';
import type { PlacedSupport } from '../../derived/placed-supports.ts';
import type { EXPOSURES } from '../../model/basis-of-design.ts';
import type { PlanPoint3 } from '../../geometry/point.ts';
import type { Enclosure, Network, RefOf } from '../../model/plan.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import type { DischargeInput, DischargeResult } from '../discharge/discharge.ts';
import type { AskedDischarge } from '../discharge/discharge-source.ts';
import type { Worked } from './worked.ts';

/** Longest stay that a room filled with agent allows, gravest last. */
export type Exposure = (typeof EXPOSURES)[number];

/** A solid thing that is taken off the volume, and how much of it. */
export interface Deduction {
  readonly ref: RefOf<'obstruction'>;
  readonly name: string;
  /** What it takes off by itself; where things overlap the sum of all is more than what is deducted [m³]. */
  readonly volume_m3: number;
}

export interface VolumeSums {
  readonly gross_m3: number;
  readonly net_m3: number;
  readonly spaces: readonly { readonly space: Space; readonly gross_m3: number; readonly net_m3: number }[];
  readonly deductions: readonly Deduction[];
}

/** What the networks that serve an enclosure hold for it. */
export interface SupplySums {
  readonly networks: readonly { readonly ref: RefOf<'network'>; readonly name: string; readonly cylinders: number; readonly massEach_kg: number; /** Share of its agent that comes here. */ readonly share: number }[];
  /** Whole cylinders when every network serves this enclosure alone, else their shares. */
  readonly cylinders: number;
  readonly massEach_kg: number;
  readonly installed_kg: number;
}

export interface AgentSums {
  readonly net_m3: number;
  readonly concentration_pct: number;
  readonly least_K: number;
  readonly greatest_K: number;
  readonly altitude_m: number;
  readonly altitudeFactor: number;
  readonly coldSpecificVolume_m3_kg: number;
  readonly hotSpecificVolume_m3_kg: number;
  /** At sea level, coldest. */
  readonly massSeaLevel_kg: number;
  readonly massNeeded_kg: number;
  /** Volume at 20 °C and 1.013 bar [m³]. */
  readonly referenceVolume_m3: number;
  readonly floodingFactor_kg_m3: number;
}

/** Atmosphere in the enclosure with all the installed agent in it, at one temperature. */
export interface Atmosphere {
  readonly temperature_K: number;
  readonly concentration_pct: number;
  readonly oxygen_pct: number;
  readonly oxygenSeaLevel_pct: number;
  readonly byConcentration: Exposure;
  readonly byOxygen: Exposure;
}

export interface PeopleSums {
  readonly cold: Atmosphere;
  /** Decides: most agent by volume, least oxygen. */
  readonly hot: Atmosphere;
  readonly doBandsAgree: boolean;
  /** As the basis of design judges. */
  readonly exposure: Exposure;
  /** Longest stay that it allows [s]. */
  readonly longest_s: number;
}

/** Volumes that a number of full cylinders fits: enough agent when coldest, enough oxygen when hottest. */
export interface FillSums {
  readonly net_m3: number;
  readonly cylinders: number;
  readonly least_m3: number;
  readonly greatest_m3: number;
  /** For the stay that the design counts on, sea-level equivalent [vol %]. */
  readonly oxygenLimit_pct: number;
  /** Numbers of cylinders whose band holds this volume; empty when none does. */
  readonly fitting: readonly number[];
  /** Bands of one cylinder fewer, this number and one more, for a picture. */
  readonly bands: readonly { readonly cylinders: number; readonly least_m3: number; readonly greatest_m3: number }[];
}

export interface WeakestSums {
  readonly pressure_Pa: number;
  readonly wall: RefOf<'wall'>;
  readonly wallName: string;
}

export interface VentSums {
  readonly flow_kg_s: number;
  readonly flowSource: string;
  readonly temperature_K: number;
  readonly specificVolume_m3_kg: number;
  readonly allowable_Pa: number;
  readonly needed_m2: number;
  readonly provided_m2: number;
  readonly vents: readonly { readonly ref: RefOf<'opening'>; readonly name: string; readonly freeArea_m2: number; readonly leadsTo: string }[];
  /** Leakage that counts as vent under the basis of design [m²]. */
  readonly countedLeakage_m2: number;
  /** Pressure at that flow with what is provided [Pa]; undefined without any vent. */
  readonly pressureWithVents_Pa: number | undefined;
}

/** The leaks of an enclosure as a power law. */
export interface LeakSums {
  /** Flow of air at 1 Pa [m³/s], and exponent. */
  readonly coefficient: number;
  readonly exponent: number;
  /** Equivalent area at 10 Pa [m²]. */
  readonly area_m2: number;
  readonly source: string;
  /** What is doubtful about the readings, in sentences. */
  readonly remarks: readonly string[];
}

export interface HoldSums {
  readonly model: 'sharp' | 'wide' | 'mixing';
  /** By the chosen model. */
  readonly time_s: number;
  readonly sharp_s: number;
  readonly wide_s: number;
  readonly mixing_s: number;
  readonly required_s: number;
  readonly interface: 'rising' | 'descending';
  readonly concentration_pct: number;
  readonly endConcentration_pct: number;
  readonly mixture_kg_m3: number;
  readonly height_m: number;
  readonly lowestProtected_m: number;
  /** Leakage area at 10 Pa with which the required time would just be held [m²]. */
  readonly allowedLeakage_m2: number;
}

export interface TimedSpace {
  readonly space: Space;
  readonly mass_kg: number;
  readonly timeTo95_s: number | undefined;
}

/** How fast an enclosure is filled. */
export interface FillingSums {
  readonly spaces: readonly TimedSpace[];
  /** Of the slowest space; undefined when one never gets there. */
  readonly timeTo95_s: number | undefined;
  readonly limit_s: number;
  readonly limitSource: string;
  readonly peakOverpressure_Pa: number;
  /** The last result still stands while a new one is worked out. */
  readonly isStale: boolean;
}

/** Every sum about one enclosure. */
export interface EnclosureDesign {
  readonly ref: RefOf<'enclosure'>;
  readonly name: string;
  readonly enclosure: Enclosure;
  /** Some nozzle blows into it. */
  readonly isServed: boolean;
  readonly volume: Worked<VolumeSums>;
  readonly supply: Worked<SupplySums>;
  readonly agent: Worked<AgentSums>;
  readonly cylindersNeeded: Worked<number>;
  readonly minimum: Worked<{ readonly concentration_pct: number; readonly source: string }>;
  readonly people: Worked<PeopleSums>;
  readonly fill: Worked<FillSums>;
  readonly weakest: Worked<WeakestSums>;
  readonly vent: Worked<VentSums>;
  readonly leaks: Worked<LeakSums>;
  readonly hold: Worked<HoldSums>;
  readonly filling: Worked<FillingSums>;
}

/** The transient of a network with what it was worked out from. */
export interface DischargeSums {
  readonly input: DischargeInput;
  /** With gas in the pipe as cold as it was throttled: greatest flow, pressures and thrust. */
  readonly result: DischargeResult;
  /** With gas warmed by the pipe: least flow, and so the time that is judged. */
  readonly slow: DischargeResult;
  readonly isStale: boolean;
  /** Plan node behind each node of the input; `from` and `to` of its stretches count in this order. */
  readonly nodeIds: readonly string[];
}

export interface OrificeSums {
  readonly ref: RefOf<'nozzle'>;
  readonly name: string;
  /** On the plan; null: not yet chosen. */
  readonly drawn_m2: number | null;
  /** With it the space gets its share of the greatest flow that the unit's manual states. */
  readonly needed_m2: number;
  /** The largest one that the nozzle is made with and that does not exceed it; undefined when there is none. */
  readonly made: { readonly code: string; readonly area_m2: number } | undefined;
}

export interface ShareSums {
  readonly space: Space;
  /** Shares of the network's discharged mass and of the volume that it serves. */
  readonly flowShare: number;
  readonly volumeShare: number;
}

/** One side of the regulator with the weakest part on it. All gauge pressures over sea level [Pa]. */
export interface ZoneSums {
  readonly side: 'before the regulator' | 'after the regulator' | 'no regulator';
  readonly greatest_Pa: number;
  readonly greatestSource: string;
  readonly pipes: readonly { readonly pipe: DerivedPipe; readonly rating_Pa: number }[];
  readonly fittings: readonly { readonly fitting: Fitting; readonly size: string; readonly rating_Pa: number; readonly isEverAllowed: boolean }[];
  /** Least rating of all; undefined when nothing stands on this side. */
  readonly line_Pa: number | undefined;
}

export interface SupervisionSums {
  /** Gauge readings over sea level [Pa]: of a full cylinder, and of one that has lost 5 % of its charge. */
  readonly chart: readonly { readonly temperature_K: number; readonly full_Pa: number; readonly reject_Pa: number }[];
  readonly fillPressure_Pa: number;
  readonly fillTemperature_K: number;
}

/** A support with the pipe that it holds. */
export type HeldSupport = PlacedSupport;

/** A stretch of pipe between two neighbouring supports or from a support to an end of the network. */
export interface SpanSums {
  readonly pipe: DerivedPipe;
  readonly length_m: number;
  /** undefined: the table has none for so small a pipe. */
  readonly allowed_m: number | undefined;
  readonly at: readonly [from: PlanPoint3, to: PlanPoint3];
}

export interface ThrustSums {
  readonly ref: RefOf<'nozzle'>;
  readonly name: string;
  /** Of one hole, with the nozzle's highest pressure. */
  readonly hole_N: number;
  /** With all holes open; and the worst that its support must take, be it that or with one hole blocked. */
  readonly open_N: number;
  readonly blocked_N: number;
  /** The support nearest along the pipe; undefined when there is none. */
  readonly support: HeldSupport | undefined;
}

/** Force on an elbow or odd bend, outwards along its bisector. */
export interface TurnThrustSums {
  readonly fitting: Fitting;
  readonly flow_kg_s: number;
  readonly velocity_m_s: number;
  readonly pressure_Pa: number;
  readonly area_m2: number;
  /** Of the flow alone: its support takes it. */
  readonly support_N: number;
  /** With the pressure: the wall of screwed or welded pipe takes what is more. */
  readonly pipe_N: number;
}

export interface SupportSums {
  readonly held: readonly HeldSupport[];
  readonly table: string;
  readonly spans: readonly SpanSums[];
  /** Along the pipe from each nozzle to its nearest support; undefined when there is none on its path. */
  readonly nozzles: readonly { readonly ref: RefOf<'nozzle'>; readonly name: string; readonly distance_m: number | undefined; readonly allowed_m: number; readonly support: HeldSupport | undefined }[];
  /** Along the pipe from each elbow or tee to its nearest support. */
  readonly turns: readonly { readonly fitting: Fitting; readonly distance_m: number | undefined; readonly allowed_m: number }[];
}

export interface MountSums {
  readonly ref: RefOf<'cylinder'>;
  readonly name: string;
  /** The wall behind it; undefined when none is near. */
  readonly wall: RefOf<'wall'> | undefined;
  readonly isLoadBearing: boolean | null;
  readonly capacity_N: number | null;
  /** Filled weight times the factor of the basis of design. */
  readonly load_N: number;
  readonly factor: number;
  /** On each anchor; undefined while they are not chosen. */
  readonly anchor: { readonly shear_N: number; readonly tension_N: number } | undefined;
}

export interface DeviceVoltage {
  readonly id: string;
  readonly name: string;
  readonly kind: 'solenoid' | 'other';
  readonly distance_m: number;
  readonly current_A: number;
  readonly voltage_V: number;
  /** undefined: nobody stated one. */
  readonly least_V: number | undefined;
}

export interface ReleaseSums {
  readonly devices: readonly DeviceVoltage[];
  readonly resistance_ohm_m: number;
  readonly drop_V: number;
  readonly lumpedDrop_V: number;
  readonly end_V: number;
  readonly total_A: number;
}

export interface BatterySums {
  readonly standby_A: number;
  readonly standby_s: number;
  readonly alarm_A: number;
  readonly alarm_s: number;
  /** With the reserve for its age. */
  readonly needed_Ah: number;
  readonly capacity_Ah: number;
}

export interface FillOfConduit {
  readonly area_m2: number;
  readonly allowed_m2: number;
  readonly conductors: number;
}

/** Every sum about one network. */
export interface NetworkDesign {
  readonly ref: RefOf<'network'>;
  readonly name: string;
  readonly network: Network;
  readonly profile: UnitProfile | undefined;
  readonly discharge: Worked<DischargeSums>;
  readonly orifices: Worked<readonly OrificeSums[]>;
  readonly shares: Worked<readonly ShareSums[]>;
  readonly zones: Worked<readonly ZoneSums[]>;
  readonly supervision: Worked<SupervisionSums>;
  readonly supports: Worked<SupportSums>;
  readonly thrusts: Worked<readonly ThrustSums[]>;
  readonly turnThrusts: Worked<readonly TurnThrustSums[]>;
  readonly mounts: Worked<readonly MountSums[]>;
  readonly release: Worked<ReleaseSums>;
  readonly conduit: Worked<FillOfConduit>;
  readonly battery: Worked<BatterySums>;
}

/** Every sum of a plan. */
export interface Design {
  readonly enclosures: readonly EnclosureDesign[];
  readonly networks: readonly NetworkDesign[];
  /** Every discharge that it asked for, and what it was told. */
  readonly asked: readonly AskedDischarge[];
}
