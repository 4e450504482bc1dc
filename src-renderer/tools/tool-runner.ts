import type { Derived } from '#shared/derived/derived';
import type { PlanPoint } from '#shared/geometry/point';
import type { Session, State, Store, ToolId } from '../store/state.ts';
import { presentEvaluation } from '../store/selectors.ts';
import type { UnderlayDrawings } from '../store/underlay-drawings.ts';
import { TOOLS } from './index.ts';
import type { Sketch, Snap, Tool, ToolEvent, ToolStep, ToolView } from './tool.ts';
import { type HeldKeys, makeToolView } from './tool-view.ts';
import { type UnderlayIndex, indexUnderlay } from './underlay-index.ts';

/** What tools look at besides the state. */
export interface ViewSource {
  /** What follows from the plan without the gesture under way. */
  derived(state: State): Derived;
  /** Floor plans placed on the session's level, those that are read. */
  underlays(state: State): readonly UnderlayIndex[];
}

/** What the board and the status line show of the tool. */
export interface ToolLook {
  readonly tool: ToolId;
  /** What the tool expects next. */
  readonly hint: string;
  readonly sketch: Sketch;
  /** What the pointer caught last; null before it came onto the board. */
  readonly snap: Snap | null;
  /** Values that the field at the pointer takes now. */
  readonly asks: NonNullable<Sketch['asks']>;
}

/** Runs the session's tool: gives it events, carries out its steps on the store. */
export interface ToolRunner {
  /** `point` of a pointer event is worked out here from `raw`; what it holds does not matter. */
  send(event: ToolEvent): void;
  /** Identical while nothing changed. */
  look(): ToolLook;
  subscribe(listener: () => void): () => void;
  /** Drops a gesture under way and stops listening to the store. */
  dispose(): void;
}

/** The window's source of views: the memoised evaluation and the floor plans that were read. */
export function viewSourceOf(drawings: UnderlayDrawings): ViewSource {
  let last: { level: unknown; version: number; found: readonly UnderlayIndex[] } | null = null;
  return {
    derived: (state) => presentEvaluation(state).derived,
    underlays(state) {
      const plan = state.history.present;
      const level = plan.levels[state.session.level];
      if (last?.level !== level?.underlays || last?.version !== drawings.version()) {
        const found = Object.values(level?.underlays ?? {}).flatMap((underlay) => {
          const drawing = drawings.find(plan, underlay);
          return drawing ? [indexUnderlay(drawing, underlay)] : [];
        });
        last = { level: level?.underlays, version: drawings.version(), found };
      }
      return last?.found ?? [];
    },
  };
}

const NO_KEYS: HeldKeys = { shift: false, alt: false };

/** Session parts that a tool's hint and sketch may read. */
const isSeenAlike = (a: Session, b: Session): boolean =>
  a.tool === b.tool && a.level === b.level && a.selection === b.selection && a.toolOptions === b.toolOptions && a.layers === b.layers;

/** Makes the runner of a window's tools. */
export function makeToolRunner(store: Store, source: ViewSource): ToolRunner {
  const listeners = new Set<() => void>();
  let seen = store.get();
  let tool: Tool<unknown> = TOOLS[seen.session.tool];
  let toolState: unknown = tool.start;
  let snap: Snap | null = null;
  let pointer: PlanPoint | null = null;
  let looked: ToolLook | null = null;
  let isSending = false;

  const viewOf = (keys: HeldKeys = NO_KEYS): ToolView => {
    const state = store.get();
    return makeToolView({ plan: state.history.present, session: state.session, underlays: source.underlays(state), derive: () => source.derived(state) }, keys);
  };
  const tell = (): void => {
    looked = null;
    for (const listener of [...listeners]) listener();
  };

  const watch = (): void => {
    const state = store.get();
    const before = seen;
    seen = state;
    if (state.session.tool !== before.session.tool || state.session.level !== before.session.level) {
      tool = TOOLS[state.session.tool];
      toolState = tool.start;
      if (state.preview) store.preview(null);
      if (!isSending) tell();
    } else if (!isSending && (state.history.present !== before.history.present || !isSeenAlike(state.session, before.session))) tell();
  };

  const carryOut = (step: ToolStep<unknown>, event: ToolEvent): void => {
    toolState = step.state;
    if (step.commit) store.commit(step.commit);
    else if (step.preview !== undefined) store.preview(step.preview);
    const { session } = store.get();
    const change: Partial<Session> = { ...step.session };
    if (step.select) Object.assign(change, { selection: step.select });
    if (step.refusal !== undefined) Object.assign(change, { refusal: step.refusal });
    else if (!step.commit && !step.preview && event.kind !== 'move' && event.kind !== 'up' && session.refusal !== null) Object.assign(change, { refusal: null });
    if (pointer !== session.pointer) Object.assign(change, { pointer });
    if (step.finished) Object.assign(change, { tool: 'select' });
    if (Object.keys(change).length > 0) store.session(change);
  };

  const unsubscribe = store.subscribe(watch);
  return {
    send(event) {
      isSending = true;
      try {
        if ('raw' in event) {
          const view = viewOf(event);
          snap = view.snap(event.raw, event.reach_m, tool.anchors?.(toolState, view));
          pointer = snap.at;
          const caught = { ...event, point: snap.at };
          carryOut(tool.step(toolState, caught, view), caught);
        } else carryOut(tool.step(toolState, event, viewOf()), event);
      } finally {
        isSending = false;
      }
      tell();
    },
    look() {
      if (!looked) {
        const view = viewOf();
        const sketch = tool.sketch(toolState, view, pointer);
        looked = { tool: tool.id, hint: tool.hint(toolState, view), sketch, snap, asks: sketch.asks ?? [] };
      }
      return looked;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    dispose() {
      unsubscribe();
      if (store.get().preview) store.preview(null);
    },
  };
}
