import type { Solid, Space } from '../../derived/derived.ts';
import { OPEN_GAP_m } from '../../derived/dividing-solid.ts';
import { partitionGapOf } from '../../derived/partition-gap.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { FindingInput, Place } from '../finding.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { perSpace } from '../subjects.ts';

/** A partition in a space that it may divide. */
interface Asked {
  readonly space: Space;
  readonly partition: Solid;
}

/** What coverage, too, takes as open over and under a partition. */
const OPEN = { value: OPEN_GAP_m, source: 'common practice' };

/**
 * N13: a partition that leaves too little under the ceiling makes two rooms of one.
 * Measure: top of the partition to the lowest ceiling over it [m]; one that leaves as much under it as it would have to
 * over it divides nothing.
 * Limit: 18 in (common practice).
 * Not checked: the ceiling over it is unknown.
 */
export const n13PartialPartition = defineRule<Asked>({
  id: 'N13',
  title: 'Partial partition',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: 'lowest ceiling over a partition − its top ≥ 18 in (457 mm), else each side is a room of its own',
    source: 'common practice',
    caution: 'The manual of the unit governs what counts as one space.',
  },
  subjects: perSpace((space) =>
    space.isProtected
      ? space.solids
          .filter(({ obstruction }) => obstruction.kind === 'partition')
          .map((partition) => ({ subject: { space, partition }, ref: partition.ref, name: space.kind === 'room' ? partition.obstruction.name : `${partition.obstruction.name}, ${space.name}` }))
      : [],
  ),
  check({ space, partition }, { say }) {
    const { under_m, over_m, at, ceiling_m } = partitionGapOf(space, partition);
    const place: Place = { level: space.level.id, at: partition.footprint, areas: [[partition.footprint]], heights: [{ ...at, z: partition.top_m }, { ...at, z: ceiling_m ?? partition.top_m }] };
    if (under_m >= OPEN.value - LENGTH_SLACK_m) return { kind: 'judged', isKept: true, text: `Leaves ${say.length(under_m)} open under it.`, place };
    if (over_m === undefined) return notChecked(`the height of the ceiling over it is unknown. Enter the height of ${space.name}.`, place);
    const figures = atLeast(over_m, OPEN, LENGTH_SLACK_m);
    const { value: gap, limit: wanted } = say.against(Math.max(0, over_m), OPEN.value);
    const inputs: FindingInput[] = [
      { label: 'Top of the partition', value: say.length(partition.top_m) },
      { label: 'Lowest ceiling over it', value: say.length(ceiling_m ?? 0) },
    ];
    return {
      ...figures,
      text: figures.isKept
        ? `Leaves ${gap} under the ceiling; ${wanted} is enough.`
        : `Leaves ${over_m <= LENGTH_SLACK_m ? 'nothing' : gap} under the ceiling, and ${wanted} is wanted: treat each side of it as a room of its own.`,
      inputs,
      place,
      cure: figures.isKept ? undefined : { kind: 'advice', text: `Put a nozzle on each side and draw each side as a room of its own, or lower it to ${say.length((ceiling_m ?? 0) - OPEN.value)}.` },
    };
  },
});
