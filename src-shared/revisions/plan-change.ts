import type { PlanPoint } from '../geometry/point.ts';
import type { Ref } from '../model/plan.ts';

export const CHANGE_KINDS = ['added', 'moved', 'changed', 'removed'] as const;
export type ChangeKind = (typeof CHANGE_KINDS)[number];

/** How far a thing was moved: east, north and up [m]. */
export interface Move {
  readonly east_m: number;
  readonly north_m: number;
  readonly up_m: number;
}

/** One figure or word of a thing that is another now, with units. `before` is empty where `now` says all. */
export interface FieldChange {
  readonly label: string;
  readonly before: string;
  readonly now: string;
}

/** Where a thing lies on a level, to be shown and painted. */
export interface ThingShape {
  readonly level: string;
  readonly places: readonly PlanPoint[];
  readonly isClosed: boolean;
}

/** What differs in one thing between two states of a plan. */
export interface PlanChange {
  /** Key of the thing, or of what the plan says of its job. */
  readonly key: string;
  readonly kind: ChangeKind;
  /** null: not drawn, but said of the job. */
  readonly ref: Ref | null;
  readonly name: string;
  /** Level, room or network that it belongs to, in words. */
  readonly where: string;
  readonly move: Move | null;
  readonly fields: readonly FieldChange[];
  readonly before: ThingShape | null;
  readonly now: ThingShape | null;
}
