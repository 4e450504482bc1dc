import { useMemo, useRef } from 'react';
import type { Ink } from '../ink.ts';
import { presentEvaluation, selectEvaluation } from '../store/selectors.ts';
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

/** The scenes of the session's level in the colours of a ground. */
export function useBoardScenes(ink: Ink): BoardScenes {
  const present = useStore(presentEvaluation);
  const shown = useStore(selectEvaluation);
  const level = useStore(levelOf);
  const layers = useStore(layersOf);
  const found = useMemo(
    (): Moved =>
      present === shown
        ? NOTHING_MOVED
        : { keys: new Set([...changedThings(present.derived.plan, shown.derived.plan), ...changedConsequences(present.derived, shown.derived)]), touched: touchedBetween(present.derived, shown.derived) },
    [present, shown],
  );
  const { keys: moved, touched } = useMoved(found);
  const rest = useMemo(
    (): Scene => ({ evaluation: present, level, ink, layers, lengths: present.derived.plan.settings.lengths, shows: moved.size === 0 ? () => true : (key) => !moved.has(key) }),
    [present, level, ink, layers, moved],
  );
  const live = useMemo(
    (): Scene | null => (present === shown ? null : { evaluation: shown, level, ink, layers, lengths: shown.derived.plan.settings.lengths, shows: (key) => moved.has(key), ...(touched ? { touched } : {}) }),
    [present, shown, level, ink, layers, moved, touched],
  );
  return useMemo(() => ({ rest, live, moved }), [rest, live, moved]);
}
