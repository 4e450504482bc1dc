import type { DerivedNetwork } from '../../derived/derived.ts';
import { FITTING_WORDS } from '../../derived/fitting-words.ts';
import type { PlanPoint3 } from '../../geometry/point.ts';
import { type Piece, type PieceEnd, usualPiecesOf } from '../../take-off/pieces-of.ts';
import { networksWithPipe } from '../subjects.ts';
import { defineRule, notChecked } from '../rule.ts';

const between = ({ from, to }: Piece): string => `between ${from.label} and ${to.label}`;
const wordOf = ({ kind }: PieceEnd): string => FITTING_WORDS[kind as keyof typeof FITTING_WORDS] ?? 'end';

/**
 * P16: every piece of pipe is long enough to be threaded at both ends.
 * Measure: pieces shorter than a close nipple, or with no room at all between their fittings. Limit: none.
 * Not checked: no pipe is drawn, or a fitting's length is not known, so that its pieces have no cut length.
 */
export const p16ThreadRoom = defineRule<DerivedNetwork>({
  id: 'P16',
  title: 'Room for threads',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'centre to centre less what both fittings take up ≥ two effective threads (a close nipple), and more than is screwed in at both ends',
    source: 'effective thread: ASME B1.20.1 (NPT); fittings: as the take-off',
    caution: 'A piece that fits on paper may still leave no room for the wrench.',
  },
  subjects: networksWithPipe,
  check(network, { say }) {
    const all = usualPiecesOf(network);
    const placeOf = (some: readonly Piece[]) => {
      const at = some.flatMap(({ from, to, pipes }): PlanPoint3[] => {
        const ends = [from.node, to.node].flatMap((node) => (node === null ? [] : (network.network.nodes[node]?.at ?? [])));
        return ends.length > 0 ? ends : network.pipes.filter(({ ref }) => pipes.includes(ref.id)).flatMap((pipe) => [pipe.from, pipe.to]);
      });
      return at.length > 0 ? { level: network.level.id, at, heights: at } : undefined;
    };
    const short = all.filter(({ isTooShort }) => isTooShort);
    const [first] = short;
    if (first) {
      const more = short.length > 1 ? `, and ${short.length - 1} more like it` : '';
      const named = `${wordOf(first.from)} to ${wordOf(first.to)}`;
      return {
        kind: 'judged',
        isKept: false,
        measured: short.length,
        limit: 0,
        limitSource: 'ASME B1.20.1',
        margin: -short.length,
        text: `The ${first.size} in piece ${between(first)} (${named}, ${say.length(first.centreToCentre_m)} centre to centre) is too short to be threaded at both ends${more}. Move a fitting, or join it another way.`,
        place: placeOf(short),
        cure: { kind: 'advice', text: 'Move the fittings farther apart.' },
      };
    }
    const open = all.filter(({ cut_m }) => cut_m === null);
    const [unknown] = open;
    if (unknown) {
      const end = [unknown.from, unknown.to].find(({ takeOff }) => !takeOff.isKnown);
      const where = end ? `the ${wordOf(end)} at ${end.label}` : `the piece ${between(unknown)}`;
      const more = open.length > 1 ? ` (${open.length} pieces wait for such a length)` : '';
      return notChecked(`how much ${where} takes up is not known: ${unknown.because[0] ?? 'it has no cut length'}${more}.`, placeOf(open));
    }
    return { kind: 'judged', isKept: true, measured: 0, limit: 0, limitSource: 'ASME B1.20.1', margin: 0, text: 'Every piece of pipe is long enough for its threads.' };
  },
});
