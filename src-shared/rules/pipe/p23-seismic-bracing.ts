import { type BraceRun, braceRunsOf } from '../../derived/brace-runs.ts';
import type { DerivedNetwork } from '../../derived/derived.ts';
import { distance3_m } from '../../geometry/point.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../../geometry/tolerance.ts';
import { feet_m } from '../../units/convert.ts';
import { defineRule, notChecked } from '../rule.ts';
import { networksWithPipe } from '../subjects.ts';

/** Apart along a run [m]; from each end of it half as much. */
const LATERAL_m = feet_m(40);
const LONGITUDINAL_m = feet_m(80);
/** Shorter runs may be held by the braces of a run that they join [m]. */
const OWN_BRACE_m = feet_m(12);
const SOURCE = 'NFPA 13, memory';

/** Whether braces along a run stand near enough to each other and to both ends. */
function isHeld(places_m: readonly number[], length_m: number, apart_m: number): boolean {
  const [first, last] = [places_m[0], places_m.at(-1)];
  if (first === undefined || last === undefined) return false;
  const within = (gap_m: number, most_m: number): boolean => most_m - gap_m >= -LENGTH_SLACK_m;
  return within(first, apart_m / 2) && within(length_m - last, apart_m / 2) && places_m.slice(1).every((place_m, i) => within(place_m - (places_m[i] ?? 0), apart_m));
}

/** What a run lacks, in words; undefined when it is held. */
function lackOf(run: BraceRun, runs: readonly BraceRun[]): string | undefined {
  const isBraced = ({ lateral_m, longitudinal_m }: BraceRun): boolean => lateral_m.length + longitudinal_m.length > 0;
  if (run.length_m < OWN_BRACE_m - LENGTH_SLACK_m) {
    const joins = (other: BraceRun): boolean => [run.from, run.to].some((end) => other.pipes.some(({ from, to }) => distance3_m(from, end) <= SAME_PLACE_m || distance3_m(to, end) <= SAME_PLACE_m));
    return isBraced(run) || runs.some((other) => other !== run && joins(other) && isBraced(other)) ? undefined : 'a brace on it or on pipe that it joins';
  }
  const lacks = [
    !isHeld(run.lateral_m, run.length_m, LATERAL_m) && 'lateral braces',
    !isHeld(run.longitudinal_m, run.length_m, LONGITUDINAL_m) && 'longitudinal braces',
  ].filter((lack) => lack !== false);
  return lacks.length > 0 ? lacks.join(' and ') : undefined;
}

/**
 * P23: where earthquakes count, every straight run of pipe is braced across and along itself.
 * Measure: runs without enough braces. Limit: lateral braces at most 40 ft (12.19 m) apart and longitudinal ones at most
 * 80 ft (24.38 m), the first and the last within half of that from each end; a run shorter than 12 ft (3.66 m) may be
 * held by a brace of pipe that it joins.
 * Not checked: nobody has said whether bracing is required, or no support is drawn.
 */
export const p23SeismicBracing = defineRule<DerivedNetwork>({
  id: 'P23',
  title: 'Earthquake bracing',
  severity: 'warn',
  measure: 'count',
  basis: {
    formula: 'lateral braces ≤ 40 ft (12.19 m) and longitudinal ≤ 80 ft (24.38 m) apart on every straight run, the first and last within half of that of its ends; runs under 12 ft (3.66 m) by a brace of pipe that they join',
    source: SOURCE,
    caution: 'Whether and how pipe is braced, and what each brace bears, the structural engineer decides; these distances are only a first look.',
  },
  subjects: networksWithPipe,
  check(network, { basis }) {
    if (basis.seismic === 'unknown') return notChecked('nobody has said yet whether the pipe must be braced against earthquakes. Ask the authority or the structural engineer.');
    if (basis.seismic === 'not-required') return { kind: 'judged', isKept: true, text: 'No bracing against earthquakes is required, as the basis of design says.' };
    if (Object.keys(network.network.supports).length === 0) return notChecked('no support is drawn; place them by the table, then say which of them brace.');
    const runs = braceRunsOf(network).filter(({ length_m }) => length_m > SAME_PLACE_m);
    const lacking = runs.flatMap((run) => {
      const lack = lackOf(run, runs);
      return lack === undefined ? [] : [{ run, lack }];
    });
    const figures = { kind: 'judged', measured: lacking.length, limit: 0, limitSource: SOURCE, margin: 0 - lacking.length } as const;
    const [first] = lacking;
    if (!first) return { ...figures, isKept: true, text: 'Every straight run has braces across and along itself.' };
    const at = lacking.flatMap(({ run }) => [run.from, run.to]);
    return {
      ...figures,
      isKept: false,
      text: `${lacking.length} of ${runs.length} straight ${runs.length === 1 ? 'run' : 'runs'} ${lacking.length === 1 ? 'is' : 'are'} not braced against earthquakes: the first lacks ${first.lack}. Say at its supports which way they brace, or add some.`,
      place: { level: network.level.id, at, heights: at },
      cure: { kind: 'advice', text: 'Choose at a support which way it braces; the structural engineer says where.' },
    };
  },
});
