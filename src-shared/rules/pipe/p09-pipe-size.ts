import type { DerivedNetwork } from '../../derived/derived.ts';
import { flowOrderOf } from '../../derived/flow-order.ts';
import { pipeSizeRank } from '../../profile/pipe-table.ts';
import { defineRule, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';

/**
 * P9: pipe is of a size that the manual allows, and never grows on its way to the nozzles.
 * Measure: pipes that are of another size or larger than the one that feeds them. Limit: 0.
 * Not checked: no pipe is drawn yet, or the profile names no sizes. Pipe that grows is reported even then.
 */
export const p09PipeSize = defineRule<DerivedNetwork>({
  id: 'P9',
  title: 'Pipe size',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'size of every pipe is among those of the unit, and none is larger than the one that feeds it', source: 'unit profile; sizes that never grow: common practice' },
  subjects: networkSubjects,
  check(network) {
    const { pipes, profile, level } = network;
    if (pipes.length === 0) return notChecked('no pipe is drawn yet.');
    const grown = flowOrderOf(network).feeds.filter(({ inlet, pipe }) => pipeSizeRank(pipe.pipe.size) > pipeSizeRank(inlet.pipe.size));
    const allowed = profile?.pipeSizes ?? [];
    const odd = allowed.length === 0 ? [] : pipes.filter(({ pipe }) => !allowed.includes(pipe.size));
    const at = [...grown.map((feed) => feed.at), ...odd.flatMap(({ from, to }) => [from, to])];
    const oddSizes = [...new Set(odd.map(({ pipe }) => pipe.size))].join(', ');
    const [first] = grown;
    const faults = [
      first && `${grown.length === 1 ? 'A pipe is' : `${grown.length} pipes are`} larger than the one that feeds ${grown.length === 1 ? 'it' : 'them'}: ${first.inlet.pipe.size} in leads to ${first.pipe.pipe.size} in.`,
      odd.length > 0 && `${odd.length} of ${pipes.length} pipes ${odd.length === 1 ? 'is' : 'are'} of a size that the unit does not use: ${oddSizes} in.`,
    ].filter((fault) => typeof fault === 'string');
    const count = new Set([...grown.map(({ pipe }) => pipe), ...odd]).size;
    const figures = { kind: 'judged', measured: count, limit: 0, limitSource: 'unit profile', margin: count === 0 ? 0 : -count } as const;
    if (faults.length > 0) return { ...figures, isKept: false, text: `${faults.join(' ')} Choose another size.`, place: { level: level.id, at, heights: at } };
    if (allowed.length === 0) return notChecked(profile ? `the unit profile “${profile.name}” names no pipe sizes.` : 'the network has no unit profile.');
    const all = pipes.flatMap(({ from, to }) => [from, to]);
    return { ...figures, isKept: true, text: 'All pipe is of a size that the unit uses, and none grows on its way.', place: { level: level.id, at: all } };
  },
});
