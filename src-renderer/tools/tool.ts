import type { Command } from '#shared/commands/command';
import type { Derived } from '#shared/derived/derived';
import type { PlanPoint } from '#shared/geometry/point';
import type { Plan, Ref } from '#shared/model/plan';
import type { Session, ToolId } from '../store/state.ts';
import type { TypedRun } from './typed-words.ts';

/** What the pointer caught and why: named beside the pointer, so that the user sees what a click will hit. */
export interface Snap {
  readonly at: PlanPoint;
  readonly kind: 'free' | 'grid' | 'end' | 'midpoint' | 'perpendicular' | 'intersection' | 'on-line' | 'underlay' | 'node' | 'typed';
  /** Guides drawn while the snap holds. */
  readonly guides: readonly { readonly a: PlanPoint; readonly b: PlanPoint }[];
}

/** What a tool wants its places to refer to while they are caught. */
export interface Anchors {
  /** Last place drawn: orthogonal lock and perpendiculars start there. */
  readonly from?: PlanPoint;
  /** Lines are not kept square unless Shift is held; feet of perpendiculars from `from` are caught all the same. */
  readonly isFree?: boolean;
  /** Direction that was typed: the next place stays on this line through `from` [rad]. */
  readonly axis_rad?: number;
  /** Places that a locked line stops level with, e.g. the first corner of a ring. */
  readonly align?: readonly PlanPoint[];
  /** Added to the pointer before it is caught: for a thing that was taken hold of beside its own place [m]. */
  readonly carry?: PlanPoint;
  /** Things that are being moved: they catch nothing. */
  readonly without?: readonly Ref[];
}

/**
 * What the user did, in plan places. `typed` is what the field at the pointer was given.
 * `point` is the caught place: the runner fills it in from `raw`. `mod` is Ctrl, on a Mac Cmd.
 */
export type ToolEvent =
  | { readonly kind: 'down' | 'move' | 'up' | 'double'; readonly point: PlanPoint; readonly raw: PlanPoint; readonly reach_m: number; readonly shift: boolean; readonly alt: boolean; readonly mod?: boolean }
  | { readonly kind: 'typed'; readonly length_m: number | null; readonly angle_rad: number | null; readonly height_m: number | null; /** What was said in words; left out when nothing was. */ readonly run?: TypedRun }
  | { readonly kind: 'enter' }
  | { readonly kind: 'back' }
  | { readonly kind: 'cancel' };

/** What a tool may look at. */
export interface ToolView {
  readonly plan: Plan;
  readonly derived: Derived;
  readonly session: Session;
  /** Nearest thing that can be picked within reach, or undefined. */
  pick(at: PlanPoint, reach_m: number): Ref | undefined;
  /** Things of the picked kind that lie over each other there, the topmost first. */
  pickStack(at: PlanPoint, reach_m: number): readonly Ref[];
  /** Everything inside a box. */
  pickBox(a: PlanPoint, b: PlanPoint): readonly Ref[];
  /** Caught place. Shift turns the orthogonal lock over, Alt catches nothing. */
  snap(raw: PlanPoint, reach_m: number, anchors?: Anchors): Snap;
  /** Closed outline of an underlay around a place, on the plan: the smallest for 0, the next larger one for 1, and so on. */
  outlineAt(at: PlanPoint, larger: number): readonly PlanPoint[] | undefined;
}

/** Lines and texts shown while a tool works; not part of the plan. */
export interface Sketch {
  readonly lines?: readonly { readonly places: readonly PlanPoint[]; readonly closed?: boolean; readonly dashed?: boolean }[];
  readonly labels?: readonly { readonly at: PlanPoint; readonly text: string }[];
  /** Which values the field at the pointer takes now. */
  readonly asks?: readonly ('length' | 'angle' | 'height' | 'words')[];
}

/** Answer of a step: the next state, and what it does to plan and session. */
export interface ToolStep<S> {
  readonly state: S;
  readonly preview?: Command | null;
  readonly commit?: Command;
  readonly select?: readonly Ref[];
  readonly session?: Partial<Session>;
  readonly refusal?: string;
  /** Done: go back to the select tool. */
  readonly finished?: boolean;
}

/** A state machine that turns what the user does into commands. No React, no canvas. */
export interface Tool<S> {
  readonly id: ToolId;
  readonly start: S;
  /** What `point` of the next event is to be caught with; nothing of it in a tool that draws single places. */
  anchors?(state: S, view: ToolView): Anchors;
  /** One sentence: what the tool expects next. */
  hint(state: S, view: ToolView): string;
  sketch(state: S, view: ToolView, pointer: PlanPoint | null): Sketch;
  step(state: S, event: ToolEvent, view: ToolView): ToolStep<S>;
}
