import { memo, useMemo } from 'react';
import type { Ink } from '../ink.ts';
import { selectChanges } from '../store/compared-changes.ts';
import type { State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { BoardLayer } from './board-layer.tsx';
import { changesOn, drawChanges } from './draw-changes.ts';
import { type FindingMark, drawFindingMarks } from './draw-findings.ts';
import type { Paint } from './paint.ts';

const NO_PAINTS: readonly Paint[] = [];
const shownOf = ({ session }: State): string | null => session.compared?.shown ?? null;

interface ChangeProps {
  readonly level: string;
  /** What the checks say, painted over the changes. */
  readonly marks: readonly FindingMark[];
  readonly ink: Ink;
}

/** What differs between two states of the plan, while they are compared, and what the checks say. */
export const ChangeLayer = memo(function ChangeLayer({ level, marks, ink }: ChangeProps) {
  const changes = useStore(selectChanges);
  const shown = useStore(shownOf);
  const paints = useMemo((): readonly Paint[] => {
    const here = changesOn(changes, level);
    const all: Paint[] = [];
    if (here.length > 0) all.push((pen, view) => drawChanges(pen, view, here, level, shown, ink));
    if (marks.length > 0) all.push((pen, view) => drawFindingMarks(pen, view, marks, ink));
    return all.length > 0 ? all : NO_PAINTS;
  }, [changes, level, shown, marks, ink]);
  return <BoardLayer paints={paints} />;
});
