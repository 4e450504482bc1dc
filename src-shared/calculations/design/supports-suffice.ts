import type { PipeWeb, PlaceOnPipe } from './pipe-web.ts';

/** So much under a limit counts as kept [m]: whoever measures the same stretch another way comes to the same answer. */
const SLACK_m = 0.0005;

interface Piece {
  readonly to: string;
  readonly length_m: number;
  readonly span_m: number;
}

/** Pipe cut at its supports: pieces at every node and support. A node goes by its id, a support by its number. */
function piecesOf({ pipes }: PipeWeb, places: readonly PlaceOnPipe[]): ReadonlyMap<string, readonly Piece[]> {
  const pieces = new Map<string, Piece[]>();
  const join = (from: string, piece: Piece): void => {
    pieces.set(from, [...(pieces.get(from) ?? []), piece]);
  };
  for (const pipe of pipes.values()) {
    const stops = places.flatMap(({ pipe: id, along_m }, i) => (id === pipe.id ? [{ key: `#${i}`, along_m }] : [])).sort((a, b) => a.along_m - b.along_m);
    let last = { key: pipe.from, along_m: 0 };
    for (const stop of [...stops, { key: pipe.to, along_m: pipe.length_m }]) {
      const piece = { length_m: stop.along_m - last.along_m, span_m: pipe.span_m };
      join(last.key, { ...piece, to: stop.key });
      join(stop.key, { ...piece, to: last.key });
      last = stop;
    }
  }
  return pieces;
}

/**
 * Whether supports do all that a network asks of them: no free stretch between two of them, or from one to an end of
 * pipe, is longer than the shortest span of the pipe in it; and each turn and nozzle has one near enough.
 */
export function supportsSuffice(web: PipeWeb, places: readonly PlaceOnPipe[]): boolean {
  const pieces = piecesOf(web, places);
  const isSupport = (key: string): boolean => key.startsWith('#');
  const stops = [...pieces].flatMap(([key, at]) => (isSupport(key) || at.length === 1 ? [key] : []));

  const isFree = (key: string, from: string, length_m: number, span_m: number, seen: ReadonlySet<string>): boolean =>
    (pieces.get(key) ?? []).every((piece) => {
      if (piece.to === from || seen.has(piece.to)) return true;
      const [length, span] = [length_m + piece.length_m, Math.min(span_m, piece.span_m)];
      if (length > span - SLACK_m) return false;
      return isSupport(piece.to) || isFree(piece.to, key, length, span, new Set([...seen, key]));
    });
  const hasOneWithin = (key: string, from: string, left_m: number): boolean =>
    left_m >= 0 && (isSupport(key) || (pieces.get(key) ?? []).some((piece) => piece.to !== from && hasOneWithin(piece.to, key, left_m - piece.length_m)));

  return stops.every((key) => isFree(key, '', 0, Number.POSITIVE_INFINITY, new Set())) && [...web.wants_m].every(([node, within_m]) => !pieces.has(node) || hasOneWithin(node, '', within_m - SLACK_m));
}
