import { useMemo, useRef } from 'react';
import type { Ink } from '../ink.ts';
import { presentEvaluation, selectEvaluation } from '../store/selectors.ts';
import type { State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { changedConsequences, changedThings, touchedBetween } from './changed-things.ts';
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

/** The set of before while it holds the same keys, so that the resting picture is drawn only when a gesture begins and ends. */
function useSameKeys(keys: ReadonlySet<string>): ReadonlySet<string> {
  const last = useRef(keys);
  const before = last.current;
  if (before !== keys && before.size === keys.size && [...keys].every((key) => before.has(key))) return before;
  last.current = keys;
  return keys;
}

/** The scenes of the session's level in the colours of a ground. */
export function useBoardScenes(ink: Ink): BoardScenes {
  const present = useStore(presentEvaluation);
  const shown = useStore(selectEvaluation);
  const level = useStore(levelOf);
  const layers = useStore(layersOf);
  const found = useMemo(
    () => (present === shown ? NOTHING : new Set([...changedThings(present.derived.plan, shown.derived.plan), ...changedConsequences(present.derived, shown.derived)])),
    [present, shown],
  );
  const moved = useSameKeys(found);
  const rest = useMemo(
    (): Scene => ({ evaluation: present, level, ink, layers, lengths: present.derived.plan.settings.lengths, shows: moved.size === 0 ? () => true : (key) => !moved.has(key) }),
    [present, level, ink, layers, moved],
  );
  const live = useMemo(
    (): Scene | null => (present === shown ? null : { evaluation: shown, level, ink, layers, lengths: shown.derived.plan.settings.lengths, shows: (key) => moved.has(key), touched: touchedBetween(present.derived, shown.derived) }),
    [present, shown, level, ink, layers, moved],
  );
  return useMemo(() => ({ rest, live, moved }), [rest, live, moved]);
}
