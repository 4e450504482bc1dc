import { boughtFittingsOf } from '../../derived/bought-fittings.ts';
import type { DerivedNetwork } from '../../derived/derived.ts';
import { distance3_m } from '../../geometry/point.ts';
import { runTreeOf } from '../../isometric/straight-runs.ts';
import { fittingCountsOf } from '../../take-off/fitting-counts.ts';
import { usualPiecesOf } from '../../take-off/pieces-of.ts';
import { defineRule, notChecked } from '../rule.ts';
import { perNetwork } from '../subjects.ts';

/** Sums of lengths may differ by float noise only [m]. */
const NOISE_m = 1e-6;

/** One thing as several parts of the set count it. */
interface Count {
  readonly what: string;
  readonly isLength: boolean;
  readonly by: readonly { readonly who: string; readonly value: number }[];
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

/** Pipe, nozzles and fittings of a network as plan, schedule, isometric and cut list each count them. */
function countsOf(derived: DerivedNetwork): Count[] {
  const { network } = derived;
  const drawn = Object.values(network.pipes).map(({ from, to }) => {
    const [a, b] = [network.nodes[from]?.at, network.nodes[to]?.at];
    return a && b ? distance3_m(a, b) : Number.NaN;
  });
  const pieces = usualPiecesOf(derived);
  const tree = runTreeOf(derived);
  const ends = new Set(tree.nodes);
  const bought = boughtFittingsOf(derived);
  return [
    {
      what: 'Pipe',
      isLength: true,
      by: [
        { who: 'plan', value: sum(drawn) },
        { who: 'schedule', value: derived.totalLength_m },
        { who: 'isometric', value: sum(tree.runs.map(({ length_m }) => length_m)) },
        // Pieces that were measured are as long as they are built.
        ...(pieces.every(({ basis }) => basis === 'drawn') ? [{ who: 'cut list', value: sum(pieces.map(({ centreToCentre_m }) => centreToCentre_m)) }] : []),
      ],
    },
    {
      what: 'Nozzles',
      isLength: false,
      by: [
        { who: 'plan', value: Object.keys(network.nozzles).length },
        { who: 'schedule', value: derived.paths.length },
        { who: 'isometric', value: Object.values(network.nozzles).filter(({ node }) => ends.has(node)).length },
      ],
    },
    {
      what: 'Fittings',
      isLength: false,
      by: [
        { who: 'isometric', value: bought.length },
        { who: 'bill', value: sum(fittingCountsOf([{ network: derived, pieces }]).map(({ place, count }) => (place === 'node' ? count : 0))) },
      ],
    },
  ];
}

/**
 * D6: plan, schedule, isometric and bill count the same: pipe, nozzles and fittings are counted by each from what it holds.
 * Measure: counts that differ. Limit: none.
 * Not checked: pipe that is not one tree, which no isometric can show.
 */
export const d06OneCount = defineRule<DerivedNetwork>({
  id: 'D6',
  title: 'Sheets agree',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'pipe, nozzles and fittings: plan = schedule = isometric = bill', source: 'common practice' },
  subjects: perNetwork((network) => (network.pipes.length > 0 ? [{ subject: network, ref: network.ref, name: network.network.name }] : [])),
  check(network, { say }) {
    if (network.faults.some(({ kind }) => kind !== 'unbuildable')) return notChecked('its pipe is not one tree from its source yet.');
    const counts = countsOf(network);
    const shown = ({ isLength }: Count, value: number): string => (isLength ? say.length(value) : String(value));
    const inputs = counts.flatMap((count) => count.by.map(({ who, value }) => ({ label: `${count.what}, ${who}`, value: shown(count, value) })));
    const differing = counts.filter(({ isLength, by }) => by.some(({ value }) => !(Math.abs(value - (by[0]?.value ?? Number.NaN)) <= (isLength ? NOISE_m : 0))));
    const [first] = differing;
    return {
      kind: 'judged',
      isKept: first === undefined,
      measured: differing.length,
      limit: 0,
      limitSource: 'common practice',
      margin: 0 - differing.length,
      inputs,
      text: first
        ? `${first.what}: ${first.by.map(({ who, value }) => `${who} ${shown(first, value)}`).join(', ')}. The sheets do not agree: draw the pipe there anew.`
        : 'Plan, schedule, isometric and bill count the same.',
    };
  },
});
