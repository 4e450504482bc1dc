import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import type { Command } from '#shared/commands/command';
import type { History } from '#shared/commands/history';
import type { PlanPoint } from '#shared/geometry/point';
import type { MarginRule } from '#shared/margins/place-margin';
import type { HostInfo, PlanRef, Problem } from '#shared/host/contract';
import type { Adjoining, Device, DeviceKind, Obstruction, Plan, Ref } from '#shared/model/plan';
import type { PipeSize } from '#shared/profile/pipe-table';

/** Where the job stands; decides what the side shows, never what the plan is. */
export type Stage = 'survey' | 'layout' | 'proof' | 'sheets' | 'site';
export const STAGES: readonly Stage[] = ['survey', 'layout', 'proof', 'sheets', 'site'];

export type ToolId =
  | 'select'
  | 'enclosure'
  | 'hole'
  | 'pick-outline'
  | 'ceiling-zone'
  | 'opening'
  | 'obstruction'
  | 'device'
  | 'adjoining'
  | 'cylinder'
  | 'pipe'
  | 'nozzle'
  | 'support'
  | 'dimension'
  | 'note'
  | 'measure'
  | 'calibrate'
  | 'section';

/** What the board shows: plan place at its middle and pixels per metre. */
export interface Camera {
  readonly at: PlanPoint;
  readonly scale_px_m: number;
}

/** Things of a kind that are shown and that can be picked. */
export type LayerName = 'underlays' | 'adjoining' | 'enclosures' | 'obstructions' | 'devices' | 'pipes' | 'nozzles' | 'coverage' | 'jets' | 'dimensions' | 'notes' | 'findings' | 'grid';
export interface LayerState {
  readonly visible: boolean;
  readonly locked: boolean;
}

/** `stretch`: neighbours become longer or shorter; `move`: all that follows goes along; `alone`: nothing but what stands over and under it. */
export type PipeMove = 'stretch' | 'move' | 'alone';

/** Choices that the drawing tools start from and remember. */
export interface ToolOptions {
  /** Height of new pipe nodes above the finished floor [m]. */
  readonly pipeHeight_m: number;
  readonly pipeSize: PipeSize;
  /** How far new runs fall for each metre, away from where they begin; 0 runs level, less than 0 rises. Below the one degree that fittings take up. */
  readonly pipeFall: number;
  /** Distance at which new runs follow the walls [m]; null follows none. */
  readonly pipeFollow_m: number | null;
  /** How far new nodes lie below their local ceiling [m]; null keeps them at `pipeHeight_m`. */
  readonly pipeDrop_m: number | null;
  /** What goes along when a place where pipes meet is moved. */
  readonly pipeMove: PipeMove;
  readonly openingKind: 'door' | 'relief-vent' | 'damper' | 'grille' | 'penetration' | 'window';
  /** Clear width of new openings [m]; null: the usual one of the kind. */
  readonly openingWidth_m: number | null;
  readonly obstructionKind: Obstruction['kind'];
  readonly obstructionBottom_m: number;
  readonly obstructionTop_m: number;
  readonly deviceKind: DeviceKind;
  /** Middle of new devices above the finished floor [m]; null: not yet known. */
  readonly deviceHeight_m: number | null;
  /** What the next sign is for. */
  readonly signKind: Extract<Device, { kind: 'sign' }>['sign'];
  readonly adjoiningKind: Adjoining['kind'];
  readonly orthogonal: boolean;
  readonly snapGrid: boolean;
  readonly snapPlan: boolean;
  readonly snapUnderlay: boolean;
}

/** A message that stays until it is answered or replaced; never slides over the plan. */
export interface Message {
  readonly kind: 'done' | 'problem';
  readonly text: string;
  readonly problem?: Problem;
}

export type DialogId =
  | 'open'
  | 'save-as'
  | 'import'
  | 'print'
  | 'issue'
  | 'way-out'
  | 'profile'
  | 'info'
  | 'actions'
  | 'recover'
  | 'conflict'
  | 'help'
  | 'discard'
  | null;

/** A second view of the plan beside the board: every network as an isometric, or the wall behind the cylinders. */
export type SideViewKind = 'none' | 'isometric' | 'cylinder-wall';

/** A state of the plan that is compared: an issued set by its id, as the user reads it. */
export interface ComparedState {
  readonly set: string;
  readonly label: string;
  readonly plan: Plan;
}

/** Two states of the plan that are compared; `now` null means the plan as it is. */
export interface Compared {
  readonly before: ComparedState;
  readonly now: ComparedState | null;
  /** Key of the change that is read. */
  readonly shown: string | null;
}

/** Everything in the window that is not the plan. */
export interface Session {
  readonly id: string;
  readonly host: HostInfo | null;
  readonly file: { readonly ref: PlanRef | null; readonly name: string; readonly stamp: string | null; readonly savedAtStep: number; readonly openElsewhere: string | null } | null;
  readonly stage: Stage;
  readonly level: string;
  readonly tool: ToolId;
  readonly toolOptions: ToolOptions;
  readonly selection: readonly Ref[];
  readonly camera: Camera;
  /** Board size [px]. */
  readonly board: { readonly width: number; readonly height: number };
  /** Where the pointer is on the plan, snapped; null off the board. */
  readonly pointer: PlanPoint | null;
  readonly layers: Readonly<Record<LayerName, LayerState>>;
  /** Line on the plan along which the section strip cuts; null: along the selected run. */
  readonly cut: { readonly a: PlanPoint; readonly b: PlanPoint } | null;
  readonly sectionHeight_px: number;
  readonly benchWidth_px: number;
  /** What the pointer is over in a view beside the plan: marked there and on the board. */
  readonly pointed: readonly Ref[];
  /** What stands beside the plan. */
  readonly sideView: SideViewKind;
  readonly sideViewWidth_px: number;
  /** Length that pipe is bought in and width of a saw cut [m]. */
  readonly takeOff: { readonly stock_m: number; readonly kerf_m: number };
  readonly theme: 'light' | 'dark' | 'system';
  readonly dialog: DialogId;
  readonly message: Message | null;
  /** Why a command was refused or what the tool expects; the status line. */
  readonly refusal: string | null;
  /** Finding shown in detail, by its key. */
  readonly finding: string | null;
  /** What is compared and painted on the board; null: nothing. */
  readonly compared: Compared | null;
  /** What is shown of where the selected nozzle may be put: its patch, a map of one rule's margins, the directions for its holes at the pointer. */
  readonly margins: { readonly patch: boolean; readonly map: MarginRule | null; readonly dial: boolean };
}

/** The one state of the window. Views read `preview ?? history.present`. */
export interface State {
  readonly history: History;
  /** Plan as a gesture would leave it; dropped on cancel. */
  readonly preview: Plan | null;
  /** Where evaluations get discharges from; another one whenever more are known. */
  readonly discharges: DischargeSource;
  readonly session: Session;
}

/** What a tool, panel or action may do to the state. */
export interface Store {
  get(): State;
  subscribe(listener: () => void): () => void;
  /** Changes the session only. */
  session(change: Partial<Session> | ((session: Session) => Partial<Session>)): void;
  /** Tries a command on the present plan, records it as one step, selects what it made. Answers whether it was done. */
  commit(command: Command): boolean;
  /** Shows what a command would make of the present plan, without a step. */
  preview(command: Command | null): void;
  /** More discharges are known. */
  takeDischarges(source: DischargeSource): void;
  /** More of the plan has been checked. */
  tellChecked(): void;
  undo(): void;
  redo(): void;
  /** Another plan: history and selection start anew. */
  load(plan: Plan, file: Session['file']): void;
}
