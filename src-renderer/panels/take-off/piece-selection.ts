import type { Ref } from '#shared/model/plan';
import type { Piece } from '#shared/take-off/pieces-of';
import type { State, Store } from '../../store/state.ts';

/** The pipes of the plan that a piece is part of. */
export const pipesOfPiece = ({ network, pipes }: Pick<Piece, 'network' | 'pipes'>): Ref[] => pipes.map((id) => ({ kind: 'pipe', network, id }));

/** Whether any pipe of a piece is among what is selected. */
export const isPieceSelected = ({ network, pipes }: Pick<Piece, 'network' | 'pipes'>, selection: State['session']['selection']): boolean =>
  selection.some((ref) => ref.kind === 'pipe' && ref.network === network && pipes.includes(ref.id));

/** Selects the pipes of a piece on the plan, on their level. Pressing a piece that is selected lets go of it. */
export function selectPiece(store: Store, piece: Piece): void {
  const { history, session } = store.get();
  const refs = pipesOfPiece(piece);
  const isAlready = session.selection.length === refs.length && isPieceSelected(piece, session.selection);
  const level = history.present.networks[piece.network]?.level ?? session.level;
  store.session({ selection: isAlready ? [] : refs, level });
}

/** The one pipe of the plan that a piece is; undefined where it is drawn as several, or is one of several that a pipe is cut into. */
export const onlyPipeOf = ({ pipes, from, to }: Pick<Piece, 'pipes' | 'from' | 'to'>): string | undefined => (pipes.length === 1 && from.node !== null && to.node !== null ? pipes[0] : undefined);
