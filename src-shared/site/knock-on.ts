import type { Evaluation } from '../evaluate.ts';
import type { Plan } from '../model/plan.ts';
import type { Worked } from '../calculations/design/worked.ts';
import type { FittingKind } from '../derived/derived.ts';
import { FITTING_WORDS } from '../derived/fitting-words.ts';
import { billOfMaterials } from '../take-off/bill-of-materials.ts';
import type { Piece } from '../take-off/pieces-of.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';

/** Changes of less are noise [m], [m³], [vol %]. */
const LEAST_m = 0.0005;
const LEAST_m3 = 0.005;
const LEAST_pct = 0.005;

type Figured = Pick<Evaluation, 'derived' | 'design'>;

const known = <T>(worked: Worked<T> | undefined): T | undefined => (worked?.isKnown ? worked.sums : undefined);

/** Ways to nozzles that are longer or shorter, the same change of several nozzles in one sentence. */
function runChanges(before: Figured, after: Figured, length: (length_m: number) => string): string[] {
  return before.derived.networks.flatMap((network) => {
    const now = after.derived.networks.find(({ ref }) => ref.id === network.ref.id);
    const changes = new Map<string, { by_m: number; names: string[]; ends: string }>();
    for (const path of network.paths) {
      const path_m = now?.paths.find(({ nozzle }) => nozzle === path.nozzle)?.length_m;
      const by_m = (path_m ?? path.length_m) - path.length_m;
      if (Math.abs(by_m) < LEAST_m) continue;
      const key = by_m.toFixed(4);
      const change = changes.get(key) ?? { by_m, names: [], ends: `${length(path.length_m)} becomes ${length(path_m ?? path.length_m)}` };
      change.names.push(network.network.nozzles[path.nozzle]?.name ?? path.nozzle);
      changes.set(key, change);
    }
    return [...changes.values()].map(({ by_m, names, ends }) => `Run to ${names.join(', ')} ${by_m > 0 ? 'longer' : 'shorter'} by ${length(Math.abs(by_m))}${names.length === 1 ? `: ${ends}` : ''}.`);
  });
}

const pieceKey = ({ network, pipes, from, to }: Piece): string => `${network}/${pipes.join('+')}/${from.node ?? from.label}/${to.node ?? to.label}`;
const pieceName = ({ from, to }: Piece): string => `${from.label}–${to.label}`;

/** Pieces of pipe whose cut length becomes another, are new, or fall away. */
function pieceChanges(was: readonly Piece[], is: readonly Piece[], length: (length_m: number) => string): string[] {
  const before = new Map(was.map((piece) => [pieceKey(piece), piece]));
  const after = new Map(is.map((piece) => [pieceKey(piece), piece]));
  const cut = (piece: Piece): string => (piece.cut_m === null ? 'length not known' : length(piece.cut_m));
  return [
    ...[...after].flatMap(([key, piece]) => {
      const old = before.get(key);
      if (!old) return [`New piece ${pieceName(piece)}: ${cut(piece)}.`];
      const isSame = old.cut_m === null || piece.cut_m === null ? old.cut_m === piece.cut_m : Math.abs(old.cut_m - piece.cut_m) < LEAST_m;
      return isSame ? [] : [`Cut piece ${pieceName(piece)} anew: ${cut(piece)} instead of ${cut(old)}.`];
    }),
    ...[...before].flatMap(([key, piece]) => (after.has(key) ? [] : [`Piece ${pieceName(piece)} falls away.`])),
  ];
}

/** Volume, oxygen and cylinders of the rooms. */
function roomChanges(before: Figured, after: Figured, lengths: Plan['settings']['lengths']): string[] {
  return before.design.enclosures.flatMap((was) => {
    const is = after.design.enclosures.find(({ ref }) => ref.id === was.ref.id && ref.level === was.ref.level);
    const [oldVolume_m3, volume_m3] = [known(was.volume)?.net_m3, known(is?.volume)?.net_m3];
    const [oldOxygen, oxygen] = [known(was.people)?.hot.oxygen_pct, known(is?.people)?.hot.oxygen_pct];
    const [oldCount, count] = [known(was.cylindersNeeded), known(is?.cylindersNeeded)];
    const volume = (value_m3: number): string => formatQuantity(value_m3, 'volume', lengths);
    return [
      ...(oldVolume_m3 !== undefined && volume_m3 !== undefined && Math.abs(volume_m3 - oldVolume_m3) >= LEAST_m3 ? [`Net volume of ${was.name}: ${volume(volume_m3)} instead of ${volume(oldVolume_m3)}.`] : []),
      ...(oldOxygen !== undefined && oxygen !== undefined && Math.abs(oxygen - oldOxygen) >= LEAST_pct ? [`Least oxygen at discharge: ${oxygen.toFixed(2)} % instead of ${oldOxygen.toFixed(2)} %.`] : []),
      ...(oldCount !== undefined && count !== undefined && oldCount !== count ? [`${was.name} needs ${count} cylinders instead of ${oldCount}.`] : []),
    ];
  });
}

function fittingChanges(before: Figured, after: Figured): string[] {
  const countsOf = ({ derived }: Figured): Map<FittingKind, number> => {
    const counts = new Map<FittingKind, number>();
    for (const { fittings } of derived.networks) for (const { kind } of fittings) counts.set(kind, (counts.get(kind) ?? 0) + 1);
    return counts;
  };
  const [was, is] = [countsOf(before), countsOf(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((kind) => {
    const more = (is.get(kind) ?? 0) - (was.get(kind) ?? 0);
    return more === 0 ? [] : [`${more > 0 ? `${more} more` : `${-more} fewer`}: ${FITTING_WORDS[kind]}.`];
  });
}

/** What a plan as built changes beside what was measured: runs, pieces to cut anew, fittings, volume, oxygen, cylinders; each a sentence. Empty: nothing. */
export function knockOnOf(before: Figured, after: Figured): string[] {
  const { lengths } = before.derived.plan.settings;
  const length = (length_m: number): string => formatLength(length_m, lengths);
  return [
    ...runChanges(before, after, length),
    ...pieceChanges(billOfMaterials(before.derived).pieces, billOfMaterials(after.derived).pieces, length),
    ...fittingChanges(before, after),
    ...roomChanges(before, after, lengths),
  ];
}
