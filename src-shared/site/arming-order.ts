import type { Evaluation } from '../evaluate.ts';
import { HOLD_POINTS, type HoldPoint } from '../model/hold-points.ts';
import type { SiteRecord } from '../model/plan.ts';
import { holdPointCautions } from './hold-point-cautions.ts';
import { type JudgedReading, judgeReading } from './judge-reading.ts';
import { builtNetworks, readingNeeds } from './reading-needs.ts';

/** done: ticked and holds; next: the one to do now; waits: an earlier one comes first; lost: ticked, but what it stood on no longer holds. */
export type HoldPointStanding = 'done' | 'next' | 'waits' | 'lost';

/** A hold point as it stands in the order of the work. */
export interface HoldPointState {
  readonly point: HoldPoint;
  readonly check: SiteRecord['checks'][string] | null;
  readonly standing: HoldPointStanding;
  /** The earliest one that comes first; null: none does. */
  readonly first: HoldPoint | null;
  /** The readings that it stands on. */
  readonly readings: readonly JudgedReading[];
  /** What is missing for it, as sentences; with nothing missing it may be ticked. */
  readonly lacks: readonly string[];
  readonly cautions: readonly string[];
}

/** Hold points that stand on readings of what is drawn. */
const ON_READINGS: ReadonlySet<string> = new Set(['H5', 'H9', 'H12']);

/**
 * The hold points in the order that keeps people safe: each with what comes before it, the readings it stands on and
 * what is missing. A ticked one whose readings no longer hold, or before which another is open, is lost and must be
 * ticked again.
 * @param evaluation  what is drawn, with the sums of its releasing circuits and cylinders
 */
export function armingOrder(evaluation: Pick<Evaluation, 'derived' | 'design'>): HoldPointState[] {
  const { plan } = evaluation.derived;
  const { siteRecord: { checks, log }, settings: { lengths } } = plan;
  const judged = readingNeeds(evaluation).map((need) => judgeReading(need, log, lengths));
  const nothing = builtNetworks(evaluation).length === 0;
  let first: HoldPoint | null = null;
  return HOLD_POINTS.map((point): HoldPointState => {
    const readings = judged.filter(({ need }) => need.point === point.id);
    const check = checks[point.id] ?? null;
    const isTicked = check?.done === true;
    const missing = [
      ...(nothing && ON_READINGS.has(point.id) ? ['No pipe and no cylinder is drawn yet: there is nothing to prove.'] : []),
      ...readings.filter(({ verdict }) => verdict !== 'ok').map(({ text }) => text),
    ];
    const before = first;
    const lacks = before ? [`${before.id} comes first: ${before.words}. ${before.why}`, ...missing] : missing;
    const isWitnessMissing = isTicked && point.isWitnessed && check.witness.trim() === '';
    const holds = isTicked && lacks.length === 0 && !isWitnessMissing;
    if (!holds && !first) first = point;
    const standing = holds ? 'done' : isTicked ? 'lost' : before ? 'waits' : 'next';
    return { point, check, standing, first: before, readings, lacks, cautions: holdPointCautions(point.id) };
  });
}

/** The hold point to do now; undefined when all are done. */
export const findNextHoldPoint = (order: readonly HoldPointState[]): HoldPointState | undefined => order.find(({ standing }) => standing !== 'done');
