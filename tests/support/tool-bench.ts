import type { PlanPoint } from '#shared/geometry/point';
import type { Plan } from '#shared/model/plan';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { startSession } from '../../src-renderer/store/start-session.ts';
import type { Session, Store, ToolId, ToolOptions } from '../../src-renderer/store/state.ts';
import { presentEvaluation } from '../../src-renderer/store/selectors.ts';
import { makeStore } from '../../src-renderer/store/store.ts';
import { type ToolRunner, makeToolRunner } from '../../src-renderer/tools/tool-runner.ts';
import { readTyped } from '../../src-renderer/tools/typed-entry.ts';
import { indexUnderlay } from '../../src-renderer/tools/underlay-index.ts';

/** How far a click reaches in tests [m]. */
export const REACH_m = 0.1;

/** A window without a canvas: what the user does goes in as plan places, the plan comes out. */
export interface ToolBench {
  readonly store: Store;
  readonly runner: ToolRunner;
  readonly plan: () => Plan;
  /** Steps that undo would take back. */
  readonly steps: () => number;
  readonly refusal: () => string | null;
  use(tool: ToolId): ToolBench;
  move(x: number, y: number, keys?: Keys): ToolBench;
  /** Moves there, presses and lets go. */
  click(x: number, y: number, keys?: Keys): ToolBench;
  /** Two clicks and the double click that a browser sends after them. */
  doubleClick(x: number, y: number): ToolBench;
  press(x: number, y: number, keys?: Keys): ToolBench;
  release(x: number, y: number, keys?: Keys): ToolBench;
  drag(from: readonly [number, number], to: readonly [number, number], keys?: Keys): ToolBench;
  type(values: { length?: number; angle?: number; height?: number }): ToolBench;
  /** Types a line of words into the field at the pointer, in feet. */
  say(words: string): ToolBench;
  enter(): ToolBench;
  back(): ToolBench;
  escape(): ToolBench;
}
interface Keys {
  readonly shift?: boolean;
  readonly alt?: boolean;
  readonly mod?: boolean;
}

/** Only what tests ask for catches: no grid, no square lines, unless options say so. */
const PLAIN: Partial<ToolOptions> = { orthogonal: false, snapGrid: false };

/** Sets a bench up with a plan. */
export function toolBench(plan: Plan, options: Partial<ToolOptions> = {}, drawing?: UnderlayDrawing, session: Partial<Session> = {}): ToolBench {
  const first = startSession('test');
  const store = makeStore(plan, { ...first, ...session, toolOptions: { ...first.toolOptions, ...PLAIN, ...options } });
  const runner = makeToolRunner(store, {
    derived: (state) => presentEvaluation(state).derived,
    underlays: ({ history, session: { level } }) =>
      drawing ? Object.values(history.present.levels[level]?.underlays ?? {}).map((underlay) => indexUnderlay(drawing, underlay)) : [],
  });
  const pointer = (kind: 'down' | 'move' | 'up' | 'double', x: number, y: number, { shift = false, alt = false, mod = false }: Keys = {}): void => {
    const at: PlanPoint = { x, y };
    runner.send({ kind, point: at, raw: at, reach_m: REACH_m, shift, alt, mod });
  };
  const bench: ToolBench = {
    store,
    runner,
    plan: () => store.get().history.present,
    steps: () => store.get().history.past.length,
    refusal: () => store.get().session.refusal,
    use(tool) {
      store.session({ tool });
      return bench;
    },
    move(x, y, keys) {
      pointer('move', x, y, keys);
      return bench;
    },
    press(x, y, keys) {
      pointer('move', x, y, keys);
      pointer('down', x, y, keys);
      return bench;
    },
    release(x, y, keys) {
      pointer('move', x, y, keys);
      pointer('up', x, y, keys);
      return bench;
    },
    click: (x, y, keys) => bench.press(x, y, keys).release(x, y, keys),
    doubleClick(x, y) {
      bench.click(x, y).click(x, y);
      pointer('double', x, y);
      return bench;
    },
    drag: (from, to, keys) => bench.press(...from, keys).move((from[0] + to[0]) / 2, (from[1] + to[1]) / 2, keys).release(...to, keys),
    type({ length, angle, height }) {
      runner.send({ kind: 'typed', length_m: length ?? null, angle_rad: angle ?? null, height_m: height ?? null });
      return bench;
    },
    say(words) {
      const entry = readTyped({ words }, ['length', 'angle', 'height', 'words'], 'feet');
      if (!entry.ok) throw new Error(entry.reason);
      runner.send(entry.event);
      return bench;
    },
    enter() {
      runner.send({ kind: 'enter' });
      return bench;
    },
    back() {
      runner.send({ kind: 'back' });
      return bench;
    },
    escape() {
      runner.send({ kind: 'cancel' });
      return bench;
    },
  };
  return bench;
}
