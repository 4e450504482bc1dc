import { boughtFittingsOf, fittingSizesOf } from '#shared/derived/bought-fittings';
import type { DerivedNetwork } from '#shared/derived/derived';
import { boughtWords } from '#shared/derived/fitting-words';
import type { PipeNode } from '#shared/model/plan';

/** What can be built in at a place besides what its pipes demand. */
export type NodePart = PipeNode['part'];

const PART_WORDS = {
  union: 'Union',
  coupling: 'Coupling',
  'street-elbow': 'Street elbow',
  'dirt-trap': 'Dirt trap',
  drain: 'Drain',
  cap: 'Cap',
  plug: 'Plug',
} as const satisfies Record<Exclude<NodePart, null>, string>;

/** What stands at a place: its fittings in words, and which parts may be built in. */
export interface NodeStanding {
  /** "90° elbow, NPS 1"; empty where the pipe runs through or a nozzle ends it. */
  readonly fittings: readonly string[];
  readonly kind: 'end' | 'nozzle' | 'straight' | 'turn' | 'branch' | 'source' | 'free';
  /** What can be chosen; `none` says what it means to build nothing in. */
  readonly parts: readonly { readonly value: Exclude<NodePart, null> | 'none'; readonly label: string }[];
  /** A square turn, at which a dirt trap can be put. */
  readonly takesTrap: boolean;
}

const choices = (none: string, parts: readonly Exclude<NodePart, null>[]): NodeStanding['parts'] => [
  { value: 'none', label: none },
  ...parts.map((value) => ({ value, label: PART_WORDS[value] })),
];

/** What stands at a place of a network. */
export function standingAt(derived: DerivedNetwork, node: string): NodeStanding {
  const { network, profile } = derived;
  const legs = Object.values(network.pipes).filter(({ from, to }) => from === node || to === node).length;
  const rating = profile?.fittingClass ? `, Class ${profile.fittingClass}` : '';
  const fittings = boughtFittingsOf(derived)
    .filter((fitting) => fitting.node === node)
    .map((fitting) => {
      const words = boughtWords(fitting);
      const turn = fitting.kind === 'odd-bend' ? ` (${Number(((fitting.turn_rad * 180) / Math.PI).toFixed(1))}°)` : '';
      return `${words.charAt(0).toUpperCase()}${words.slice(1)}${turn}, NPS ${fittingSizesOf(fitting).join(' × ')}${rating}`;
    });
  const turns = derived.fittings.some((fitting) => fitting.node === node && (fitting.kind === 'elbow-90' || fitting.kind === 'elbow-45' || fitting.kind === 'odd-bend'));
  const base = { fittings, takesTrap: legs === 2 && derived.fittings.some((fitting) => fitting.node === node && fitting.kind === 'elbow-90') };
  if (legs === 0) return { ...base, kind: 'free', parts: [] };
  if (Object.values(network.nozzles).some((nozzle) => nozzle.node === node)) return { ...base, kind: 'nozzle', parts: [] };
  if (network.source === node) return { ...base, kind: 'source', parts: [] };
  if (legs === 1) return { ...base, kind: 'end', parts: choices('Nothing yet: pipe goes on', ['cap', 'plug', 'drain', 'dirt-trap']) };
  if (legs > 2) return { ...base, kind: 'branch', parts: [] };
  if (turns) return { ...base, kind: 'turn', parts: choices('Plain elbow', ['street-elbow']) };
  return { ...base, kind: 'straight', parts: choices('Nothing: one length of pipe', ['union', 'coupling']) };
}

/** Heading of a place by what it is. */
export const STANDING_WORDS: Readonly<Record<NodeStanding['kind'], string>> = {
  end: 'End of pipe',
  nozzle: 'Pipe end with nozzle',
  straight: 'Joint in the pipe',
  turn: 'Turn of the pipe',
  branch: 'Branch',
  source: 'Where the pipe begins',
  free: 'Place without pipe',
};
