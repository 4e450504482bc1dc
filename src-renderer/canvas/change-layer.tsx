import { memo, useMemo } from 'react';
import type { Ink } from '../ink.ts';
import { selectChanges } from '../store/compared-changes.ts';
import type { State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { BoardLayer } from './board-layer.tsx';
import { changesOn, drawChanges } from './draw-changes.ts';
import type { Paint } from './paint.ts';

const NO_PAINTS: readonly Paint[] = [];
const shownOf = ({ session }: State): string | null => session.compared?.shown ?? null;

/** What differs between two states of the plan, while they are compared. */
export const ChangeLayer = memo(function ChangeLayer({ level, ink }: { readonly level: string; readonly ink: Ink }) {
  const changes = useStore(selectChanges);
  const shown = useStore(shownOf);
  const paints = useMemo((): readonly Paint[] => {
    const here = changesOn(changes, level);
    return here.length > 0 ? [(pen, view) => drawChanges(pen, view, here, level, shown, ink)] : NO_PAINTS;
  }, [changes, level, shown, ink]);
  return <BoardLayer paints={paints} />;
});
