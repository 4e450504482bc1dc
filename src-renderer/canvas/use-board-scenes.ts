import { useMemo, useRef } from 'react';
import { derivePlan } from '#shared/derived/derive-plan';
import { type Evaluation, evaluationWith } from '#shared/evaluation';
import type { PlanPoint } from '#shared/geometry/point';
import type { Findings } from '#shared/rules/findings';
import type { Ink } from '../ink.ts';
import { presentEvaluation, selectEvaluation, shownPlan } from '../store/selectors.ts';
import type { State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { type Touched, changedConsequences, changedThings, touchedBetween } from './changed-things.ts';
import type { Scene } from './scene.ts';

const levelOf = (state: State): string => state.session.level;
const layersOf = (state: State): State['session']['layers'] => state.session.layers;

/** The two pictures of the board: what rests, and what a gesture moves over it. */
export interface BoardScenes {
  readonly rest: Scene;
  /** null while no gesture is under way. */
  readonly live: Scene | null;
  /** Keys of what the gesture moves. */
  readonly moved: ReadonlySet<string>;
  /** What the checks say without the gesture. */
  readonly found: Findings;
  /** What they say with it, as far as there was time to ask them; null while no gesture is under way. */
  readonly liveFound: Findings | null;
}

const NOTHING: ReadonlySet<string> = new Set();

/** What a gesture has moved so far, and where. */
interface Moved {
  readonly keys: ReadonlySet<string>;
  readonly touched: Touched | undefined;
}

const NOTHING_MOVED: Moved = { keys: NOTHING, touched: undefined };

/** The earlier set while it holds all that another does, else both together. */
const grown = <T>(before: ReadonlySet<T> | undefined, now: ReadonlySet<T>): ReadonlySet<T> => {
  if (!before) return now;
  for (const each of now) if (!before.has(each)) return new Set([...before, ...now]);
  return before;
};

/**
 * Everything that a gesture has moved since it began. What it moved once goes on to be drawn with it, so that the resting
 * picture is drawn anew only when more is moved, and when the gesture ends.
 */
function useMoved({ keys, touched }: Moved): Moved {
  const last = useRef(NOTHING_MOVED);
  const before = last.current;
  if (!touched) last.current = NOTHING_MOVED;
  else {
    const all = { keys: grown(before.keys, keys), touched: { networks: grown(before.touched?.networks, touched.networks), levels: grown(before.touched?.levels, touched.levels) } };
    const isSame = all.keys === before.keys && all.touched.networks === before.touched?.networks && all.touched.levels === before.touched.levels;
    if (!isSame) last.current = all;
  }
  return last.current;
}

/** Places of a level that the checks object to: texts keep clear of their marks. */
const faultsOf = ({ found }: Evaluation, level: string): readonly PlanPoint[] =>
  found.open.flatMap(({ verdict, place }) => (place?.at[0] && place.level === level && (verdict === 'stop' || verdict === 'warn') ? [place.at[0]] : []));

const isSameList = (a: readonly PlanPoint[], b: readonly PlanPoint[]): boolean => a.length === b.length && a.every(({ x, y }, i) => x === b[i]?.x && y === b[i]?.y);

/** The same as it was while nothing of it is drawn differently: a plan that is checked further is the same picture, but for the places of its texts. */
function useSteady(present: Evaluation, level: string): Evaluation {
  const last = useRef<{ readonly evaluation: Evaluation; readonly level: string; readonly faults: readonly PlanPoint[]; readonly seen: Evaluation } | null>(null);
  const before = last.current;
  if (before?.seen === present && before.level === level) return before.evaluation;
  const isSamePlan = before?.evaluation.derived === present.derived && before.level === level;
  if (before && isSamePlan && present.isStale) return before.evaluation;
  const faults = faultsOf(present, level);
  const evaluation = before && isSamePlan && isSameList(before.faults, faults) ? before.evaluation : present;
  last.current = { evaluation, level, faults, seen: present };
  return evaluation;
}

/** The scenes of the session's level in the colours of a ground. */
export function useBoardScenes(ink: Ink): BoardScenes {
  const present = useStore(presentEvaluation);
  const followed = useStore(selectEvaluation);
  const plan = useStore(shownPlan);
  const level = useStore(levelOf);
  const layers = useStore(layersOf);
  const steady = useSteady(present, level);
  /** The plan under the hand is drawn at every step, whether or not there was time to check it. */
  const shown = useMemo(() => (followed.derived.plan === plan ? followed : evaluationWith(derivePlan(plan), followed.design, followed.found)), [followed, plan]);
  const isAtRest = plan === present.derived.plan;
  const found = useMemo(
    (): Moved =>
      isAtRest
        ? NOTHING_MOVED
        : { keys: new Set([...changedThings(steady.derived.plan, shown.derived.plan), ...changedConsequences(steady.derived, shown.derived)]), touched: touchedBetween(steady.derived, shown.derived) },
    [steady, shown, isAtRest],
  );
  const { keys: moved, touched } = useMoved(found);
  const rest = useMemo(
    (): Scene => ({ evaluation: steady, level, ink, layers, lengths: steady.derived.plan.settings.lengths, shows: moved.size === 0 ? () => true : (key) => !moved.has(key) }),
    [steady, level, ink, layers, moved],
  );
  const live = useMemo(
    (): Scene | null => (isAtRest ? null : { evaluation: shown, level, ink, layers, lengths: shown.derived.plan.settings.lengths, shows: (key) => moved.has(key), ...(touched ? { touched } : {}) }),
    [isAtRest, shown, level, ink, layers, moved, touched],
  );
  return useMemo(() => ({ rest, live, moved, found: present.found, liveFound: isAtRest ? null : followed.found }), [rest, live, moved, present.found, followed.found, isAtRest]);
}
