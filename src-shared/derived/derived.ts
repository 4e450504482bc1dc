import type { Box, Outline } from '../geometry/outline.ts';
import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import type { Enclosure, Level, Network, Nozzle, Obstruction, Pipe, Plan, RefOf, SpaceKind } from '../model/plan.ts';
import type { UnitProfile } from '../profile/unit-profile.ts';

/** One finished wall face of a space. */
export interface WallFace {
  readonly ref: RefOf<'wall'>;
  readonly segment: Segment;
  /** Direction into the space, square to the face [rad]. */
  readonly inward_rad: number;
}

/** A corner of a space where two faces meet and the room is inside less than half a turn (a corner gas is trapped in). */
export interface ConvexCorner {
  readonly at: PlanPoint;
  readonly faces: readonly [WallFace, WallFace];
}

/** A thing that stands in or hangs into a level, from `bottom_m` to `top_m` above its finished floor. */
export interface Solid {
  readonly ref: RefOf<'obstruction'>;
  readonly obstruction: Obstruction;
  /** Closed ring, counter-clockwise. */
  readonly footprint: Outline;
  readonly bounds: Box;
  readonly bottom_m: number;
  readonly top_m: number;
}

/** A protected volume or its void. Heights are above the level's finished floor. */
export interface Space {
  /** `<enclosure id>/<kind>`. */
  readonly key: string;
  readonly enclosureRef: RefOf<'enclosure'>;
  readonly enclosure: Enclosure;
  readonly level: Level;
  readonly kind: SpaceKind;
  /** As the user reads it: "Signal hut" or "Archive annex, under floor". */
  readonly name: string;
  /** Closed ring, counter-clockwise; holes are clockwise. */
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly walls: readonly WallFace[];
  readonly convexCorners: readonly ConvexCorner[];
  readonly bounds: Box;
  /** Lower face [m]: 0 for the room, −depth for an under-floor void. */
  readonly floor_m: number;
  /** Upper face at a place [m]; undefined while unknown. Zones and slopes count, beams do not. */
  readonly ceilingAt_m: (at: PlanPoint) => number | undefined;
  /** Greatest height of the upper face [m]; undefined while unknown. */
  readonly tallest_m: number | undefined;
  /** Floor area without holes [m²]. */
  readonly area_m2: number;
  /** Gross volume [m³]; undefined while the height is unknown. */
  readonly grossVolume_m3: number | undefined;
  /** Whether the user says that it is protected: a room always is. */
  readonly isProtected: boolean;
  /** Solids whose footprint touches the space and whose height range overlaps it. */
  readonly solids: readonly Solid[];
}

/** A joint is a weld or a grooved coupling where the make of the pipe changes: it is bought, no geometry demands it. */
export type FittingKind = 'elbow-90' | 'elbow-45' | 'odd-bend' | 'tee' | 'cross' | 'reducer' | 'coupling' | 'union' | 'cap' | 'plug' | 'drain' | 'joint';

/** A fitting that the geometry of a node demands. */
export interface Fitting {
  readonly node: string;
  readonly at: PlanPoint3;
  readonly kind: FittingKind;
  /** Turn of a bend, and of a tee that turns the agent beside a dirt trap [rad]; 0 for fittings that do not turn. */
  readonly turn_rad: number;
  /** Pipes at it, the one toward the source first. */
  readonly pipes: readonly string[];
  /** A tee fed through its branch, leaving both ways along its run. */
  readonly isBull: boolean;
  /** An elbow with one outside thread. */
  readonly isStreet: boolean;
  /** A tee of which one leg only leads to a dirt trap or drain: the agent turns in it and does not part. */
  readonly isTrap: boolean;
}

/** A pipe with its ends in flow order: `from` is the end nearer the source where the network is a tree. */
export interface DerivedPipe {
  readonly ref: RefOf<'pipe'>;
  readonly pipe: Pipe;
  readonly network: DerivedNetwork;
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  readonly length_m: number;
  readonly outside_m: number;
  readonly bore_m: number;
  /** Rises or falls more than it runs. */
  readonly upright: 'riser' | 'drop' | null;
}

/** The way of the agent from the source to one nozzle. */
export interface PipePath {
  readonly nozzle: string;
  /** Node ids, source first. */
  readonly nodes: readonly string[];
  /** Pipe ids in flow order. */
  readonly pipes: readonly string[];
  readonly length_m: number;
  readonly elbows: number;
  readonly tees: number;
}

/** Why a network is not one tree fed by its source, or cannot be built as it is drawn. */
export interface NetworkFault {
  readonly kind: 'no-source' | 'unreachable' | 'loop' | 'gap' | 'open-end' | 'nozzle-not-at-end' | 'unbuildable';
  readonly text: string;
  readonly at: readonly PlanPoint3[];
  readonly pipes: readonly string[];
  /** Where a turn is that no fitting makes; left out for other faults. */
  readonly node?: string;
}

export interface DerivedNetwork {
  readonly ref: RefOf<'network'>;
  readonly network: Network;
  readonly level: Level;
  /** undefined when the plan lost the profile. */
  readonly profile: UnitProfile | undefined;
  readonly pipes: readonly DerivedPipe[];
  readonly nozzles: readonly DerivedNozzle[];
  readonly fittings: readonly Fitting[];
  readonly paths: readonly PipePath[];
  readonly faults: readonly NetworkFault[];
  readonly totalLength_m: number;
  /** Inside volume of all pipe [m³]. */
  readonly pipeVolume_m3: number;
}

/** A nozzle with what its checks need. */
export interface DerivedNozzle {
  readonly ref: RefOf<'nozzle'>;
  readonly nozzle: Nozzle;
  readonly network: DerivedNetwork;
  readonly profile: UnitProfile | undefined;
  /** Orifice; undefined when its node is lost. */
  readonly at: PlanPoint3 | undefined;
  /** The space it serves; undefined when it hangs in none. */
  readonly space: Space | undefined;
  /** Directions of its holes as drawn [rad], counter-clockwise from east. */
  readonly holes_rad: readonly number[];
  /** Lowest ceiling face above the orifice [m]; undefined while unknown. */
  readonly localCeiling_m: number | undefined;
  /** Solids of its space that the horizontal plane of its orifice cuts: they stop its jets. */
  readonly blockers: readonly Solid[];
}

/** A nozzle in its space, whatever pipe it hangs on. */
export type HungNozzle = Omit<DerivedNozzle, 'network'>;

/** A level with what stands on it, whatever pipe runs through it; the very same while nothing on the level changes. */
export interface DerivedLevel {
  readonly level: Level;
  readonly spaces: readonly Space[];
  readonly solids: readonly Solid[];
}

/** Everything that follows from a plan without any limit or judgement. */
export interface Derived {
  readonly plan: Plan;
  readonly levels: readonly DerivedLevel[];
  readonly spaces: readonly Space[];
  readonly solids: readonly Solid[];
  readonly networks: readonly DerivedNetwork[];
  readonly nozzles: readonly DerivedNozzle[];
}
