import type { Derived } from '#shared/derived/derived';
import type { Plan } from '#shared/model/plan';
import type { Session } from '../store/state.ts';
import { outlinesAround } from './outline-at.ts';
import { pickAt, pickInBox, pickStack } from './pick.ts';
import { snapTo } from './snap.ts';
import { snapSources } from './snap-sources.ts';
import type { Anchors, ToolView } from './tool.ts';
import type { UnderlayIndex } from './underlay-index.ts';

/** Keys held down while the pointer acts. */
export interface HeldKeys {
  readonly shift: boolean;
  readonly alt: boolean;
}

/** What a view is made from. */
export interface ViewParts {
  readonly plan: Plan;
  readonly session: Session;
  /** Floor plans placed on the session's level. */
  readonly underlays: readonly UnderlayIndex[];
  /** Worked out only when a tool asks. */
  readonly derive: () => Derived;
}

/** Makes the view that a tool looks at. */
export function makeToolView({ plan, session, underlays, derive }: ViewParts, keys: HeldKeys = { shift: false, alt: false }): ToolView {
  const { toolOptions } = session;
  return {
    plan,
    session,
    get derived() {
      return derive();
    },
    pick: (at, reach_m) => pickAt(plan, session, underlays, at, reach_m),
    pickStack: (at, reach_m) => pickStack(plan, session, at, reach_m),
    pickBox: (a, b) => pickInBox(plan, session, a, b),
    snap(raw, reach_m, anchors: Anchors = {}) {
      const settings = { grid_m: toolOptions.snapGrid && !keys.alt ? plan.settings.grid_m : null, orthogonal: anchors.isFree ? keys.shift : toolOptions.orthogonal !== keys.shift };
      const nothing: Session = { ...session, toolOptions: { ...toolOptions, snapPlan: false, snapUnderlay: false } };
      const at = anchors.carry ? { x: raw.x + anchors.carry.x, y: raw.y + anchors.carry.y } : raw;
      return snapTo(at, reach_m, snapSources(plan, keys.alt ? nothing : session, underlays, anchors.without), settings, anchors);
    },
    outlineAt(at, larger) {
      const found = outlinesAround(session.layers.underlays.visible ? underlays : [], at);
      return found[Math.min(larger, found.length - 1)];
    },
  };
}
