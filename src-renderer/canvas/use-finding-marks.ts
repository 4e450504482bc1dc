import { useMemo, useRef } from 'react';
import type { Finding, Verdict } from '#shared/rules/finding';
import { type FindingMark, findingMarks } from './draw-findings.ts';
import type { BoardScenes } from './use-board-scenes.ts';

const NOTHING: ReadonlySet<Finding> = new Set();
const NO_FINDINGS: readonly Finding[] = [];
const NO_MARKS: readonly FindingMark[] = [];

/** What the checks say about the shown level: marks that rest, and those of what a gesture touches. */
export interface BoardMarks {
  readonly rest: readonly FindingMark[];
  readonly live: readonly FindingMark[];
}

/** The marks of the scenes. At each step of a gesture only what is asked anew is looked through. */
export function useFindingMarks({ rest, found, liveFound }: BoardScenes, wanted: ReadonlySet<Verdict>): BoardMarks {
  const isVisible = rest.layers.findings.visible;
  const since = useMemo(() => liveFound?.since(found), [liveFound, found]);
  const last = useRef(NOTHING);
  const gone = useMemo(() => {
    if (!since) return NOTHING;
    const before = last.current;
    const now = new Set(since.gone);
    return before.size === now.size && since.gone.every((finding) => before.has(finding)) ? before : now;
  }, [since]);
  last.current = gone;
  const resting = useMemo(
    () => (isVisible ? findingMarks(gone.size === 0 ? found.open : found.open.filter((finding) => !gone.has(finding)), rest.level, wanted) : NO_MARKS),
    [isVisible, found, gone, rest.level, wanted],
  );
  const come = since?.come ?? NO_FINDINGS;
  const moving = useMemo(() => (isVisible && come.length > 0 ? findingMarks(come, rest.level, wanted) : NO_MARKS), [isVisible, come, rest.level, wanted]);
  return { rest: resting, live: moving };
}
