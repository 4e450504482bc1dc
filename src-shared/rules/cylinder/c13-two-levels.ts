import { defineRule, notChecked } from '../rule.ts';
import { type NetworkCylinder, cylinderSubjects, placeOfCylinder } from './cylinders.ts';

/** Restraints nearer to each other than this hold at one level [m]: 12 in, common practice. */
const APART_m = 0.3048;
/** A cylinder is held at so many levels at least: common practice. */
const LEVELS = 2;
/** Float noise on a height [m]. */
const NOISE_m = 1e-9;

const CAP = 'The outlet cap stays on until the outlet is piped (hold point H8).';

/** How many levels some heights make, counted from below. */
function levelsOf(heights_m: readonly number[]): number {
  let count = 0;
  let last = -Infinity;
  for (const height of heights_m.toSorted((a, b) => a - b)) {
    if (height - last < APART_m - NOISE_m) continue;
    count += 1;
    last = height;
  }
  return count;
}

/**
 * C13: a cylinder is held at two levels at least: rail and one restraint on a wall, two restraints in a floor frame.
 * Measure: number of levels, heights less than 12 in apart counted once.
 * Limit: two.
 * Not checked: the height of its rail is not known and one further restraint is enough to decide it.
 */
export const c13TwoLevels = defineRule<NetworkCylinder>({
  id: 'C13',
  title: 'Held at two levels',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'levels of rail and restraints, 12 in apart at least ≥ 2',
    source: 'common practice',
    caution: 'An unpiped cylinder without its outlet cap can fly. Where earthquakes are designed for, the engineer’s restraint governs.',
  },
  subjects: cylinderSubjects(() => ({})),
  check(subject, { say }) {
    const { mounting, railHeight_m, restraints_m } = subject.cylinder;
    const place = placeOfCylinder(subject);
    const isHung = mounting === 'wall';
    if (isHung && railHeight_m === null && restraints_m.length > 0) return notChecked('the height of its rail is not known.', place);
    const heights = [...(isHung && railHeight_m !== null ? [railHeight_m] : []), ...restraints_m];
    const measured = isHung && railHeight_m === null ? 1 : levelsOf(heights);
    const isKept = measured >= LEVELS;
    const held = heights.length === 0 ? '' : `, at ${heights.toSorted((a, b) => a - b).map(say.length).join(' and ')}`;
    const wanted = isHung ? 'a rail and one further restraint' : 'two restraints';
    return {
      kind: 'judged',
      isKept,
      measured,
      limit: LEVELS,
      limitSource: 'common practice',
      margin: measured - LEVELS,
      text: isKept
        ? `Held at ${measured} levels${held}. ${CAP}`
        : `Held at ${measured === 0 ? 'no level' : 'one level only'}${held}: ${wanted}, ${say.length(APART_m)} apart or more, keep it from tipping. Add a restraint. ${CAP}`,
      place,
      cure: isKept ? undefined : { kind: 'advice', text: 'Add a strap, chain or second rail.' },
    };
  },
});
