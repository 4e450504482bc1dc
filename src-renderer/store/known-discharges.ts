import type { DischargeInput, DischargeResult } from '#shared/calculations/discharge/discharge';
import type { DischargeSource, KnownDischarge } from '#shared/calculations/discharge/discharge-source';

/** What a run came to, or why it came to nothing. */
export type RunAnswer = DischargeResult | string;

/** Kept beyond what the shown plan needs, so that undo and a slider pushed back find theirs again. */
const KEPT_BESIDE = 40;

interface Entry {
  readonly input: DischargeInput;
  readonly fresh: KnownDischarge | string;
  readonly stale: KnownDischarge | undefined;
}

const keys = new WeakMap<DischargeInput, string>();

/** Equal inputs have equal keys. */
export function keyOf(input: DischargeInput): string {
  const known = keys.get(input);
  if (known !== undefined) return known;
  const key = JSON.stringify(input);
  keys.set(input, key);
  return key;
}

/** Whether an older result can stand in for a newer one: the same nodes, nozzles, spaces and enclosures in the same order. */
function isAlike(a: DischargeInput, b: DischargeInput): boolean {
  const shape = ({ nodeCount, stretches, nozzles, spaces, enclosures }: DischargeInput): string =>
    JSON.stringify([nodeCount, stretches.map(({ from, to }) => [from, to]), nozzles.map(({ id, node, space }) => [id, node, space]), spaces.map(({ id, enclosure }) => [id, enclosure]), enclosures.map(({ id }) => id)]);
  return a === b || shape(a) === shape(b);
}

/** The discharges that were worked out in this window. */
export interface KnownDischarges {
  /** Answers from what is known; another function whenever something was learned. */
  readonly source: DischargeSource;
  has(input: DischargeInput): boolean;
  learn(input: DischargeInput, answer: RunAnswer): void;
  /** Makes `source` another function, so that evaluations ask again. */
  renew(): void;
  /** Lets go of what is oldest and not among the inputs that are needed. */
  trim(needed: readonly DischargeInput[]): void;
  readonly size: number;
}

/** Makes a window's keep of discharges. */
export function makeKnownDischarges(): KnownDischarges {
  const entries = new Map<string, Entry>();
  /** The last result of each network. */
  const last = new Map<string, Entry>();

  const answer = (network: string, input: DischargeInput): KnownDischarge | string | undefined => {
    const entry = entries.get(keyOf(input));
    if (entry) {
      if (entry.stale) last.set(network, entry);
      return entry.fresh;
    }
    const before = last.get(network);
    return before && isAlike(before.input, input) ? before.stale : undefined;
  };
  const freshSource = (): DischargeSource => (network, input) => answer(network, input);
  let source = freshSource();

  return {
    get source() {
      return source;
    },
    get size() {
      return entries.size;
    },
    has: (input) => entries.has(keyOf(input)),
    learn(input, result) {
      const isResult = typeof result !== 'string';
      entries.set(keyOf(input), { input, fresh: isResult ? { result, isStale: false } : result, stale: isResult ? { result, isStale: true } : undefined });
    },
    renew() {
      source = freshSource();
    },
    trim(needed) {
      const kept = new Set(needed.map(keyOf));
      for (const key of entries.keys()) {
        if (entries.size <= kept.size + KEPT_BESIDE) break;
        if (!kept.has(key)) entries.delete(key);
      }
      // A network that is not asked about any more has gone, or another plan was opened.
      if (last.size > 2 * (needed.length + KEPT_BESIDE)) last.clear();
    },
  };
}
