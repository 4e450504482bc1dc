import { type PipeTree, wayUp } from '../../derived/pipe-tree.ts';
import type { PipeWeb, PlaceOnPipe, WebPipe } from './pipe-web.ts';

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

/** From an end of a pipe to the nearest support on it [m]; Infinity when it has none. */
const onPipe_m = ({ id, from, length_m }: WebPipe, end: string, places: readonly PlaceOnPipe[]): number =>
  Math.min(...places.flatMap(({ pipe, along_m }) => (pipe === id ? [from === end ? along_m : length_m - along_m] : [])));

/** From a node to the nearest support on the pipe that feeds it [m]. */
function upward_m({ pipes }: PipeWeb, tree: PipeTree, node: string, places: readonly PlaceOnPipe[]): number {
  const way = wayUp(tree, node);
  let passed_m = 0;
  for (const [i, id] of way.pipes.entries()) {
    const pipe = pipes.get(id);
    const there_m = pipe ? onPipe_m(pipe, way.nodes[i] ?? '', places) : 0;
    if (Number.isFinite(there_m)) return passed_m + there_m;
    passed_m += pipe?.length_m ?? 0;
  }
  return Number.POSITIVE_INFINITY;
}

/** From a node to the nearest support on any pipe that it feeds [m]. */
function downward_m(web: PipeWeb, tree: PipeTree, node: string, places: readonly PlaceOnPipe[]): number {
  const inlet = tree.inlets.get(node)?.pipe.id;
  return Math.min(
    ...(tree.legs.get(node) ?? []).map(({ pipe: { id }, other }) => {
      const pipe = web.pipes.get(id);
      if (!pipe || id === inlet) return Number.POSITIVE_INFINITY;
      const there_m = onPipe_m(pipe, node, places);
      if (Number.isFinite(there_m) || tree.inlets.get(other)?.pipe.id !== id) return there_m;
      return pipe.length_m + downward_m(web, tree, other, places);
    }),
  );
}

/**
 * Whether supports do all that a network asks of them: no free stretch between two of them, or from one to an end of
 * pipe, is longer than the shortest span of the pipe in it; each turn has one near enough before or after it in the flow, each nozzle on the pipe that feeds it.
 */
export function supportsSuffice(web: PipeWeb, tree: PipeTree, places: readonly PlaceOnPipe[]): boolean {
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

  return (
    [...web.nozzles_m].every(([node, within_m]) => upward_m(web, tree, node, places) <= within_m - SLACK_m) &&
    [...web.turns_m].every(([node, within_m]) => Math.min(upward_m(web, tree, node, places), downward_m(web, tree, node, places)) <= within_m - SLACK_m) &&
    stops.every((key) => isFree(key, '', 0, Number.POSITIVE_INFINITY, new Set()))
  );
}
