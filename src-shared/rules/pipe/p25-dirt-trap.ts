import type { DerivedNetwork } from '../../derived/derived.ts';
import { type LineEnd, lineEndsOf } from '../../derived/line-ends.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { usualPiecesOf } from '../../take-off/pieces-of.ts';
import { inches_m } from '../../units/convert.ts';
import type { Cure } from '../finding.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { perNetwork } from '../subjects.ts';

/** Least pipe of a dirt trap [m]. */
const LEAST_m = inches_m(2);
const SOURCE = 'NFPA 2001:2018; 46 CFR 95.16-10 (a)(4)(i)';
/** No made tee takes up more than this of the pipe, measured in its outside diameters. */
const TEE_TAKES = 2;

/** A nozzle with the end of its line; undefined while no pipe leads to it. */
interface Asked {
  readonly network: DerivedNetwork;
  readonly nozzle: DerivedNetwork['nozzles'][number];
  readonly end: LineEnd | undefined;
}

/** Length of the capped nipple: as it is cut where that is known, else at least and at most. */
function nippleOf(network: DerivedNetwork, trap: readonly string[]): { readonly least_m: number; readonly most_m: number } {
  const inTrap = network.pipes.filter(({ ref }) => trap.includes(ref.id));
  const centre_m = inTrap.reduce((sum, { length_m }) => sum + length_m, 0);
  const piece = usualPiecesOf(network).filter(({ pipes }) => pipes.some((id) => trap.includes(id)));
  if (piece.length > 0 && piece.every(({ cut_m }) => cut_m !== null)) {
    const cut_m = piece.reduce((sum, { cut_m: each }) => sum + (each ?? 0), 0);
    return { least_m: cut_m, most_m: cut_m };
  }
  return { least_m: centre_m - TEE_TAKES * Math.max(0, ...inTrap.map(({ outside_m }) => outside_m)), most_m: centre_m };
}

/**
 * P25: each distribution line ends in a dirt trap, so that what the pipe carries does not stop an orifice.
 * Measure: pipe of the trap beyond the last nozzle of the line, as it is cut [m]. Limit: 2 in (51 mm).
 * The trap is the leg of the last tee that ends in a cap; the nozzle hangs on another leg. Nozzles that hang before the
 * end of their line are not asked.
 * Not checked: no pipe leads to the nozzle, or the tee takes up so much that nobody can say what is left.
 */
export const p25DirtTrap = defineRule<Asked>({
  id: 'P25',
  title: 'Dirt trap',
  severity: 'stop',
  measure: 'length',
  basis: { formula: 'last nozzle of each distribution line on a tee whose other leg is a capped nipple ≥ 2 in (51 mm)', source: SOURCE },
  subjects: perNetwork((network) => {
    const ends = new Map(lineEndsOf(network).map((end) => [end.nozzle.nozzle.id, end]));
    const joined = new Set(network.paths.map(({ nozzle }) => nozzle));
    return network.nozzles.flatMap((nozzle) => {
      const end = ends.get(nozzle.nozzle.id);
      const isJoined = joined.has(nozzle.nozzle.id);
      return end || !isJoined ? [{ subject: { network, nozzle, end }, ref: nozzle.ref, name: nozzle.nozzle.name }] : [];
    });
  }),
  check({ network, nozzle, end }, { say }) {
    const level = network.level.id;
    const at = [end?.fitting?.at, nozzle.at].flatMap((each) => each ?? []).slice(0, 1);
    const place = at.length > 0 ? { level, at, heights: at } : undefined;
    if (!end) return notChecked('no pipe leads to it from the cylinder.', place);
    const { fitting, trap } = end;
    if (trap.length === 0) {
      const canTurn = fitting?.kind === 'elbow-90';
      const cure: Cure = canTurn
        ? { kind: 'add-dirt-trap', text: 'Put a dirt trap at the last elbow', network: network.ref.id, node: fitting.node }
        : { kind: 'advice', text: 'Let a square elbow lead to the nozzle, and put the dirt trap there.' };
      const where = fitting ? 'Its line ends without a dirt trap' : 'Its pipe runs straight to it, without a dirt trap';
      return { kind: 'judged', isKept: false, limit: LEAST_m, limitSource: SOURCE, text: `${where}: dirt in the pipe goes to its orifice. Let the line go on at least ${say.length(LEAST_m)} to a cap.`, place, cure };
    }
    const { least_m, most_m } = nippleOf(network, trap);
    const isKept = least_m - LEAST_m >= -LENGTH_SLACK_m;
    if (!isKept && most_m - LEAST_m >= -LENGTH_SLACK_m && least_m < most_m) return notChecked(`how much of its dirt trap the tee takes up is not known, and ${say.length(LEAST_m)} of pipe must be left.`, place);
    const shown_m = isKept ? least_m : most_m;
    const { value: left, limit: least } = say.against(shown_m, LEAST_m);
    return {
      ...atLeast(shown_m, { value: LEAST_m, source: SOURCE }, LENGTH_SLACK_m),
      text: isKept ? `Its line ends in a dirt trap with ${left} of pipe; ${least} is the least.` : `The dirt trap at the end of its line has only ${left} of pipe; ${least} is the least. Lengthen it.`,
      place,
      cure: isKept ? undefined : { kind: 'advice', text: 'Move the cap farther from the tee.' },
    };
  },
});
