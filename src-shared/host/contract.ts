import type { Plan } from '../model/plan.ts';
import type { FieldRecord } from '../site/field-entries.ts';

/**
 * The typed contract between the window and its host. Two hosts implement it over one set of services:
 * Electron, and the loopback host. Every payload survives JSON, except where `bytes` is declared.
 * Expected trouble is a value (`Answer`), never an exception.
 */

/** What is wrong, where, and what to do: shown to the user as it stands. */
export interface Problem {
  readonly code:
    | 'not-found'
    | 'unreadable'
    | 'too-large'
    | 'unsupported'
    | 'damaged'
    | 'newer-version'
    | 'conflict'
    | 'in-use'
    | 'cancelled'
    | 'refused'
    | 'no-space'
    | 'failed';
  readonly what: string;
  readonly where: string;
  readonly remedy: string;
}
export type Answer<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** Names a plan file; opaque to the window. It was picked by the user or lies in the plans folder. */
export type PlanRef = string;

export interface HostInfo {
  readonly host: 'electron' | 'loopback';
  readonly version: string;
  /** Where plans are kept unless the user picks another place, as the user reads it. */
  readonly plansFolder: string;
  /** Whether `pickPlan` and `pickPlanPlace` show the system's own dialogs. Otherwise the window lists the plans folder itself. */
  readonly hasDialogs: boolean;
  /** Plan that was asked for at the start, e.g. on the command line. */
  readonly startPlan: PlanRef | null;
  /** Demo plan to show at the start when no plan was asked for, as a name for `newPlan`. */
  readonly startDemo: string | null;
}

export interface PlanEntry {
  readonly ref: PlanRef;
  readonly name: string;
  readonly folder: string;
  readonly modifiedAt: string;
  readonly size_bytes: number;
  readonly isRecent: boolean;
  /** A recent plan whose file has gone. */
  readonly isMissing: boolean;
}

export interface OpenPlan {
  /** null: not yet saved anywhere. */
  readonly ref: PlanRef | null;
  readonly name: string;
  readonly plan: Plan;
  /** State of the file when it was read; handed back on save so that nobody's work is overwritten unseen. */
  readonly stamp: string | null;
  /** Another window that has it open, in words; null when this is the only one. */
  readonly openElsewhere: string | null;
  /** What was repaired or migrated while reading, in sentences. */
  readonly remarks: readonly string[];
}

/** Unsaved work that an earlier run left behind. */
export interface Recovery {
  readonly id: string;
  readonly name: string;
  readonly ref: PlanRef | null;
  readonly changedAt: string;
  /** Steps since the last save. */
  readonly steps: number;
}

export interface SavedPlan {
  readonly ref: PlanRef;
  readonly name: string;
  readonly stamp: string;
  /** What could not be kept in the file, in sentences. */
  readonly remarks: readonly string[];
}

/** A long piece of work: poll it, cancel it. */
export interface JobState {
  readonly state: 'running' | 'done' | 'failed' | 'cancelled';
  /** 0 … 1. */
  readonly progress: number;
  /** What it is doing, in words. */
  readonly doing: string;
  readonly problem: Problem | null;
}

/** What an imported file was found to be, without its geometry. */
export interface ImportReport {
  readonly kind: 'dxf' | 'pdf' | 'svg' | 'png' | 'jpeg';
  readonly pageCount: number;
  readonly metresPerUnit: number | null;
  readonly unitsText: string;
  readonly unitsDoubt: string | null;
  readonly width: number;
  readonly height: number;
  readonly layers: readonly { readonly name: string; readonly visible: boolean; readonly segments: number }[];
  readonly segments: number;
  readonly texts: number;
  readonly closedOutlines: number;
  readonly images: number;
  readonly warnings: readonly string[];
}

/** Entry for `plan.assets` of a file that the host now keeps. */
export interface KeptAsset {
  readonly name: string;
  readonly file: string;
  readonly sha256: string;
}

/** Length that pipe is bought in and width of a saw cut [m]. */
export interface TakeOffChoice {
  readonly stock_m: number;
  readonly kerf_m: number;
}

/** Names one life of one window: made anew at each load, the same in every request of that window. */
export type SessionId = string;

/** Bytes cross the contract only in fields of this type, called `bytes`, at the top of a request or a value. */
export type Bytes = Uint8Array;

/** One method of the contract: what goes in and what comes out. */
export interface Host {
  info(request: Record<string, never>): Promise<Answer<HostInfo>>;
  /** Recent plans and those in the plans folder, newest first. */
  listPlans(request: Record<string, never>): Promise<Answer<{ plans: readonly PlanEntry[] }>>;
  forgetRecent(request: { ref: PlanRef }): Promise<Answer<null>>;
  /** System dialog; `unsupported` where the host has none. */
  pickPlan(request: Record<string, never>): Promise<Answer<{ ref: PlanRef }>>;
  /** Where to save: system dialog, or the plans folder with the name. */
  pickPlanPlace(request: { name: string }): Promise<Answer<{ ref: PlanRef; exists: boolean }>>;
  /** Says too when another window has it open; this window holds it until `closePlan`. */
  openPlan(request: { session: SessionId; ref: PlanRef }): Promise<Answer<OpenPlan>>;
  /** A plan file that the window got as bytes (dropped, or a browser's file field). It has no ref until saved. */
  openPlanBytes(request: { name: string; bytes: Bytes }): Promise<Answer<OpenPlan>>;
  newPlan(request: { demo: string | null; lengths: 'feet' | 'metric' }): Promise<Answer<OpenPlan>>;
  /** `stamp` null writes a new file; a stamp that is not the file's answers `conflict` unless `overwrite`. */
  savePlan(request: { session: SessionId; ref: PlanRef; plan: Plan; stamp: string | null; overwrite: boolean }): Promise<Answer<SavedPlan>>;
  /** The plan file as bytes, for a download. */
  packPlan(request: { plan: Plan }): Promise<Answer<{ bytes: Bytes }>>;
  /** This window no longer holds the plan, or with `ref` null any plan. */
  closePlan(request: { session: SessionId; ref: PlanRef | null }): Promise<Answer<null>>;

  /** Writes the unsaved state of a window aside; called within a second of every change. */
  keepRecovery(request: { session: SessionId; ref: PlanRef | null; name: string; steps: number; plan: Plan }): Promise<Answer<null>>;
  /** Saved or discarded: nothing to recover any more. `session` is the window's own, or the id of a listed recovery. */
  dropRecovery(request: { session: SessionId }): Promise<Answer<null>>;
  listRecoveries(request: Record<string, never>): Promise<Answer<{ recoveries: readonly Recovery[] }>>;
  /** Exactly the state that was kept. It belongs to this session from now on. */
  openRecovery(request: { session: SessionId; id: string }): Promise<Answer<OpenPlan>>;

  /** Keeps the bytes of a floor plan and starts reading it. */
  importUnderlay(request: { name: string; bytes: Bytes }): Promise<Answer<{ job: string; asset: KeptAsset }>>;
  /** Starts reading one page of an asset that is kept already. */
  readUnderlay(request: { sha256: string; page: number }): Promise<Answer<{ job: string }>>;
  /** Result of a finished reading: the report, and the drawing as `encodeDrawing` packs it. */
  underlayResult(request: { job: string }): Promise<Answer<{ report: ImportReport; bytes: Bytes }>>;

  /** Starts printing; the result is one PDF. `takeOff`: length that pipe is bought in and width of a saw cut [m]; null: the usual ones. */
  printSheets(request: { plan: Plan; paper: string; scale: number | 'auto'; set: 'submittal' | 'field'; takeOff: { stock_m: number; kerf_m: number } | null }): Promise<Answer<{ job: string }>>;
  /** `remark`: what the sheets had to leave out, a sentence; null: nothing. */
  printResult(request: { job: string }): Promise<Answer<{ name: string; bytes: Bytes; remark: string | null }>>;

  /** Freezes a plan that is being issued, its new revision entered already: prints its set, keeps plan and sheets. */
  keepIssue(request: { plan: Plan; takeOff: TakeOffChoice | null }): Promise<Answer<{ job: string }>>;
  /** What was kept: digest of the plan's text, and the entries for `plan.assets`. */
  issueResult(request: { job: string }): Promise<Answer<{ sha256: string; plan: KeptAsset; sheets: KeptAsset }>>;
  /** A frozen plan by the digest of its file. */
  readIssue(request: { sha256: string }): Promise<Answer<{ plan: Plan; remarks: readonly string[] }>>;
  /** Starts printing an issued set once more, as `printSheets` does: the current one as it was issued, an older one marked as superseded. */
  printIssue(request: { plan: Plan; set: string; takeOff: TakeOffChoice | null }): Promise<Answer<{ job: string }>>;

  /** What a filled field sheet (PDF form) or its table (CSV) says, row by row and before anybody judged it. */
  readFieldRecord(request: { name: string; bytes: Bytes }): Promise<Answer<FieldRecord>>;

  jobState(request: { job: string }): Promise<Answer<JobState>>;
  cancelJob(request: { job: string }): Promise<Answer<null>>;

  /** Writes bytes where the user says (system dialog), or answers `unsupported` where the window must offer a download. */
  saveFile(request: { name: string; bytes: Bytes }): Promise<Answer<{ place: string }>>;
  /** Opens a file that `saveFile` wrote with the system's program for it. */
  openExternally(request: { place: string }): Promise<Answer<null>>;

  readPreferences(request: Record<string, never>): Promise<Answer<{ preferences: Readonly<Record<string, string | number | boolean>> }>>;
  writePreferences(request: { preferences: Readonly<Record<string, string | number | boolean>> }): Promise<Answer<null>>;
}

export type HostMethod = keyof Host;
export type RequestOf<M extends HostMethod> = Parameters<Host[M]>[0];
export type ValueOf<M extends HostMethod> = Extract<Awaited<ReturnType<Host[M]>>, { ok: true }>['value'];

/** Builds a failed answer. */
export const failed = (code: Problem['code'], what: string, where: string, remedy: string): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { code, what, where, remedy },
});
/** Builds a good answer. */
export const answered = <T>(value: T): { ok: true; value: T } => ({ ok: true, value });
