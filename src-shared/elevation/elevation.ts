import type { DerivedNetwork, DerivedPipe, Solid, Space } from '../derived/derived.ts';
import type { AssemblyPiece } from '../derived/assembly-run.ts';
import type { PanelSpace } from '../derived/panel-space.ts';
import type { PlacedSupport } from '../derived/placed-supports.ts';
import type { Anchors, Cylinder, Opening, RefOf } from '../model/plan.ts';
import type { WallFrame, WallPlace } from './wall-frame.ts';

/** Way along a wall, from and to, from its left end as seen from the room [m]. */
export interface Stretch {
  readonly from_m: number;
  readonly to_m: number;
}

/** Where a gauge looks, as seen by who stands in the room before the wall. */
export type GaugeLook = 'room' | 'left' | 'right' | 'wall';

/** A cylinder of the wall. */
export interface WallCylinder {
  readonly ref: RefOf<'cylinder'>;
  readonly cylinder: Cylinder;
  /** Its axis on the floor. */
  readonly at: WallPlace;
  readonly radius_m: number;
  /** Its diameter is known; else it is a symbol. */
  readonly isMeasured: boolean;
  /** undefined: blank in the profile. */
  readonly outlet_m: number | undefined;
  readonly gauge: { readonly height_m: number; readonly look: GaugeLook } | undefined;
  /** Share of the outlet's direction to the right and toward the viewer; undefined while it is not known. */
  readonly outlet: { readonly right: number; readonly toward: number } | undefined;
}

/** What runs along the wall at a height and holds cylinders. */
export interface Rail extends Stretch {
  readonly height_m: number;
  /** Cylinders clamped to it, from the left. */
  readonly cylinders: readonly WallCylinder[];
  /** Where each anchor sits along it. */
  readonly anchors: readonly { readonly s: number; readonly anchors: Anchors }[];
}

/** A frame on the floor that holds cylinders without loading the wall. */
export interface FloorRack extends Stretch {
  readonly height_m: number;
  readonly cylinders: readonly WallCylinder[];
}

/** An opening in the wall. */
export interface WallOpening extends Stretch {
  readonly ref: RefOf<'opening'>;
  readonly opening: Opening;
  readonly bottom_m: number;
  readonly top_m: number;
  /** End at which a door hangs; undefined for what does not swing. */
  readonly hinge: 'left' | 'right' | undefined;
}

/** A thing that stands or hangs before the wall. */
export interface WallSolid extends Stretch {
  readonly solid: Solid;
  /** Nearest and farthest off the wall [m]. */
  readonly near_m: number;
  readonly far_m: number;
  readonly isOverhead: boolean;
  /** Working space, where it is an electrical panel whose front is known. */
  readonly space: PanelSpace | undefined;
}

/** Free floor that a cylinder wants in front of it, as the plan strip shows it. */
export interface FrontSpace extends Stretch {
  readonly near_m: number;
  readonly far_m: number;
}

/** One wall that carries cylinders of one network, as it is seen from the room. Heights are above the finished floor. */
export interface Elevation {
  /** Network and wall. */
  readonly key: string;
  readonly network: DerivedNetwork;
  readonly room: Space;
  readonly wall: RefOf<'wall'>;
  readonly frame: WallFrame;
  /** The part of the wall that is drawn. */
  readonly shown: Stretch;
  /** End of the wall that every distance along it is measured from. */
  readonly datum: 'left' | 'right';
  /** Ceiling along the shown part; empty while its height is not known. */
  readonly ceiling: readonly { readonly s: number; readonly z: number }[];
  /** Highest place that is drawn [m]. */
  readonly top_m: number;
  readonly cylinders: readonly WallCylinder[];
  readonly rails: readonly Rail[];
  readonly racks: readonly FloorRack[];
  readonly openings: readonly WallOpening[];
  readonly solids: readonly WallSolid[];
  readonly fronts: readonly FrontSpace[];
  /** Depth of the plan strip below the wall [m]. */
  readonly depth_m: number;
  /** The nearest door of the room, and where it lies from the middle of the cylinders; undefined without one. */
  readonly wayOut: { readonly name: string; readonly s: number; readonly off: number } | undefined;
  readonly pieces: readonly { readonly piece: AssemblyPiece; readonly places: readonly WallPlace[] }[];
  readonly pipes: readonly { readonly pipe: DerivedPipe; readonly from: WallPlace; readonly to: WallPlace }[];
  readonly supports: readonly { readonly support: PlacedSupport; readonly at: WallPlace }[];
  /** What the drawing leaves out or draws as a symbol only, each a sentence. */
  readonly missing: readonly string[];
}

/** How far the rail reaches past the outside of the outer cylinders [m]: 6 in, common practice. */
export const RAIL_OVERHANG_m = 0.1524;
/** Height of the rail's profile [m]: 1-5/8 in strut, common practice. */
export const RAIL_PROFILE_m = 0.0413;
