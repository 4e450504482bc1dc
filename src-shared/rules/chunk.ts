import type { BasisOfDesign } from '../model/basis-of-design.ts';
import type { Plan, Settings } from '../model/plan.ts';
import type { Finding, Verdict } from './finding.ts';
import type { Asked } from './rule.ts';

/** What a check looked at besides its subject, the basis of design and the way of showing lengths. */
export type LookedAt = 'nothing' | 'levels' | 'more';

/** What everything that a rule says rests on besides its subjects. */
export interface Ground {
  readonly basis: BasisOfDesign;
  readonly levels: Plan['levels'];
  readonly lengths: Settings['lengths'];
}

export type VerdictCounts = Readonly<Record<Verdict, number>>;

/** What a rule found of one owner of subjects: a network, a room, a level. It stands for as long as its owner is the very same. */
export interface Chunk {
  readonly owner: object;
  readonly ground: Ground;
  readonly asked: readonly Asked<unknown>[];
  readonly findings: readonly Finding[];
  readonly lookedAt: readonly LookedAt[];
  /** The farthest that a check of it looked. */
  readonly farthest: LookedAt;
  readonly counts: VerdictCounts;
  /** The one network or enclosure that all its findings are about; undefined when they are about several things. */
  readonly home: string | undefined;
  /** Its owner has changed, and it was not asked anew yet. */
  readonly isStale: boolean;
}

export const NO_COUNTS: VerdictCounts = { stop: 0, warn: 0, note: 0, 'not-checked': 0, ok: 0 };

/** Where a thing belongs: the id of its network or enclosure, the same for all that is asked about either. */
export function homeOf(subject: Finding['subject']): string {
  if ('network' in subject) return subject.network;
  if ('enclosure' in subject) return subject.enclosure;
  return subject.id;
}

/** Puts a chunk together. */
export function chunkOf(owner: object, ground: Ground, asked: readonly Asked<unknown>[], findings: readonly Finding[], lookedAt: readonly LookedAt[]): Chunk {
  const counts = { ...NO_COUNTS };
  const [first] = findings;
  let home = first && homeOf(first.subject);
  for (const { verdict, subject } of findings) {
    counts[verdict] += 1;
    if (home !== undefined && homeOf(subject) !== home) home = undefined;
  }
  const farthest = lookedAt.includes('more') ? 'more' : lookedAt.includes('levels') ? 'levels' : 'nothing';
  return { owner, ground, asked, findings, lookedAt, farthest, counts, home, isStale: false };
}

/** Whether all that a chunk says holds for an owner on a ground. */
export const stillHolds = ({ owner, ground, farthest }: Chunk, now: object, { basis, levels, lengths }: Ground): boolean =>
  owner === now && ground.basis === basis && ground.lengths === lengths && (farthest === 'nothing' || (farthest === 'levels' && ground.levels === levels));
