import { normalAngle_rad } from '../geometry/angle.ts';

/** A range of directions [rad], counter-clockwise from `from_rad` to `to_rad`, which is larger and may pass 2π. */
export interface Arc {
  readonly from_rad: number;
  readonly to_rad: number;
}

const TURN = 2 * Math.PI;

/** The arcs cut at 0 and joined where they overlap or touch, in order within [0, 2π]. */
function cut(arcs: readonly Arc[]): Arc[] {
  const pieces = arcs
    .filter(({ from_rad, to_rad }) => to_rad > from_rad)
    .flatMap(({ from_rad, to_rad }): Arc[] => {
      if (to_rad - from_rad >= TURN) return [{ from_rad: 0, to_rad: TURN }];
      const from = normalAngle_rad(from_rad);
      const to = from + (to_rad - from_rad);
      return to <= TURN
        ? [{ from_rad: from, to_rad: to }]
        : [
            { from_rad: from, to_rad: TURN },
            { from_rad: 0, to_rad: to - TURN },
          ];
    })
    .sort((a, b) => a.from_rad - b.from_rad);
  const joined: Arc[] = [];
  for (const piece of pieces) {
    const last = joined.at(-1);
    if (last && piece.from_rad <= last.to_rad) joined[joined.length - 1] = { from_rad: last.from_rad, to_rad: Math.max(last.to_rad, piece.to_rad) };
    else joined.push(piece);
  }
  return joined;
}

/**
 * What of a full turn lies in none of the arcs, each gap narrowed by `margin_rad` on both sides; gaps that have no
 * width left are dropped. No arcs leave one full turn, from 0 to 2π.
 */
export function gapsBetween(arcs: readonly Arc[], margin_rad: number): Arc[] {
  const taken = cut(arcs);
  const first = taken[0];
  if (!first) return [{ from_rad: 0, to_rad: TURN }];
  const gaps = taken.map(({ to_rad }, i) => {
    const next = taken[i + 1];
    return { from_rad: to_rad, to_rad: next ? next.from_rad : first.from_rad + TURN };
  });
  return gaps
    .map(({ from_rad, to_rad }) => ({ from_rad: from_rad + margin_rad, to_rad: to_rad - margin_rad }))
    .filter(({ from_rad, to_rad }) => to_rad > from_rad)
    .map(({ from_rad, to_rad }) => (from_rad >= TURN ? { from_rad: from_rad - TURN, to_rad: to_rad - TURN } : { from_rad, to_rad }))
    .sort((a, b) => a.from_rad - b.from_rad);
}

/** The arcs turned by an angle. */
export const turned = (arcs: readonly Arc[], by_rad: number): Arc[] => arcs.map(({ from_rad, to_rad }) => ({ from_rad: from_rad + by_rad, to_rad: to_rad + by_rad }));
