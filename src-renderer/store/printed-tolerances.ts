import type { Plan } from '#shared/model/plan';
import type { PrintedTolerances } from '#shared/site/judge-measurements';

/** What the window gets back: the tolerances of the field sheet by the id of the dimension. */
export interface TolerancesReply {
  readonly printed: readonly (readonly [id: string, tolerance_m: readonly [minus_m: number, plus_m: number]])[];
}

export type StartTolerancesWorker = (onReply: (reply: TolerancesReply) => void, onBroken: () => void) => { post(plan: Plan): void; end(): void };

/** All of a plan that the tolerances follow from: not what was measured, nor how the sheets lie. */
export const toleranceGrounds = ({ levels, networks, profiles, basis, settings, waivers }: Plan): readonly unknown[] => [levels, networks, profiles, basis, settings.siteTolerance_m, settings.lengths, waivers];

/** Whether anything is measured that a printed tolerance could decide: nothing is worked out before. */
export const needsTolerances = ({ siteRecord }: Plan): boolean => Object.keys(siteRecord.measurements).length > 0;

/**
 * Works out in a worker what the field sheet of a plan prints as tolerances.
 * @param onEnd  told once: the tolerances, or null where they could not be worked out
 * @returns how to give it up
 */
export function workOutTolerances(plan: Plan, start: StartTolerancesWorker, onEnd: (printed: PrintedTolerances | null) => void): () => void {
  let isOver = false;
  const end = (printed: PrintedTolerances | null): void => {
    if (isOver) return;
    giveUp();
    onEnd(printed);
  };
  const worker = start(
    ({ printed }) => end(new Map(printed)),
    () => end(null),
  );
  const giveUp = (): void => {
    isOver = true;
    worker.end();
  };
  worker.post(plan);
  return giveUp;
}
