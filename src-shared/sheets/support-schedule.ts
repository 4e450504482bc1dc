import type { Derived, DerivedNetwork, DerivedPipe } from '../derived/derived.ts';
import { FITTING_WORDS } from '../derived/fitting-words.ts';
import { type PlacedSupport, placedSupportsOf } from '../derived/placed-supports.ts';
import { distance3_m } from '../geometry/point.ts';
import type { Support } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { nozzleName } from '../derived/nozzle-name.ts';
import { heightText, sizeText } from './sheet-text.ts';
import type { Table } from './tables.ts';

/** A support this near to a nozzle is placed from it: there its distance counts [m]. */
const NEAR_NOZZLE_m = 0.305;

const KIND_WORDS: Readonly<Record<Support['kind'], string>> = { rigid: 'Rigid', guide: 'Guide', hanger: 'Hanger', sling: 'Sling' };

/** What stands at an end of a pipe, in words: a nozzle, the beginning of the pipe, a fitting. */
function endWords(derived: Derived, network: DerivedNetwork, node: string): string {
  const nozzle = network.nozzles.find((each) => each.nozzle.node === node);
  if (nozzle) return `nozzle ${nozzleName(derived, nozzle)}`;
  if (network.network.source === node) return 'where the pipe begins';
  const fitting = network.fittings.find((each) => each.node === node && each.kind !== 'reducer');
  return fitting ? `the ${FITTING_WORDS[fitting.kind]}` : 'the end of the pipe';
}

/** Nozzles that a pipe leads to, in words; nothing where one of them is named already. */
function wayWords(derived: Derived, network: DerivedNetwork, { pipe }: DerivedPipe): string {
  const fed = network.paths.filter(({ pipes }) => pipes.includes(pipe.id)).map(({ nozzle }) => nozzle);
  const names = network.nozzles.filter(({ ref }) => fed.includes(ref.id)).map((nozzle) => nozzleName(derived, nozzle));
  if (names.length === 0) return '';
  return names.length > 3 ? `, to ${names[0]} and ${names.length - 1} more` : `, to ${names.join(', ')}`;
}

/** Where a support stands: how far along the pipe from a nozzle near by, else from the nearer end of the pipe, and on the way to which nozzles. */
export function supportWhere(derived: Derived, network: DerivedNetwork, { support, pipe }: PlacedSupport): string {
  if (!pipe) return 'holds no pipe';
  const { lengths } = derived.plan.settings;
  const nodes = network.network.nodes;
  const fromOf = (node: string): number => {
    const at = nodes[node]?.at;
    return at ? distance3_m(at, support.at) : Number.POSITIVE_INFINITY;
  };
  const { from, to } = pipe.pipe;
  const atNozzle = [from, to].find((node) => fromOf(node) <= NEAR_NOZZLE_m && network.nozzles.some(({ nozzle }) => nozzle.node === node));
  const node = atNozzle ?? (fromOf(from) <= fromOf(to) ? from : to);
  const end = endWords(derived, network, node);
  return `${formatLength(fromOf(node), lengths)} from ${end}${end.startsWith('nozzle') ? '' : wayWords(derived, network, pipe)}`;
}

/** Supports with all that a fitter needs to place them, in the order of the flow. */
export function supportSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  return {
    title: 'Pipe supports',
    note: 'Measured along the pipe, from centre to centre. Heights are above the finished floor.',
    columns: [
      { head: 'Kind', font: 'bold' },
      { head: 'Pipe', least_mm: 11 },
      { head: 'Height', align: 'right', least_mm: 20 },
      { head: 'Where', isWide: true },
      { head: 'Bears', align: 'right', least_mm: 17 },
    ],
    rows: derived.networks.flatMap((network) => {
      const inFlow = [...new Set(network.paths.flatMap(({ pipes }) => pipes))];
      const order = new Map(inFlow.map((id, i) => [id, i]));
      const rank = ({ pipe }: PlacedSupport): number => order.get(pipe?.pipe.id ?? '') ?? inFlow.length;
      const along = ({ pipe, support }: PlacedSupport): number => (pipe ? distance3_m(pipe.from, support.at) : 0);
      return [...placedSupportsOf(network)]
        .sort((a, b) => (rank(a) === rank(b) ? along(a) - along(b) : rank(a) - rank(b)))
        .map((placed) => [
          KIND_WORDS[placed.support.kind],
          placed.pipe ? sizeText(placed.pipe.pipe.size, lengths) : '',
          heightText(placed.support.at.z, lengths),
          supportWhere(derived, network, placed),
          placed.support.capacity_N === null ? 'not known' : formatQuantity(placed.support.capacity_N, 'force', lengths),
        ]);
    }),
  };
}
