import { type CutBar, barWords } from '#shared/sheets/take-off-bars';
import { pieceLabel } from '#shared/sheets/take-off-words';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { useFigures } from '../bench/use-plan.ts';
import { useWidth } from '../charts/use-width.ts';
import { isPieceSelected, selectPiece } from './piece-selection.ts';

const selectionOf = (state: State) => state.session.selection;
/** Width of a letter on a bar, and of the air around a label [px]. */
const LETTER_px = 7;
const AIR_px = 8;

/** One stock length, drawn to scale with its pieces and what is left of it; the pieces in words below. */
export function CutBarDrawing({ bar, stock_m, networkName }: { readonly bar: CutBar; readonly stock_m: number; readonly networkName: ((id: string) => string) | undefined }) {
  const store = useStoreItself();
  const selection = useStore(selectionOf);
  const { length } = useFigures();
  const { ref, width_px } = useWidth<HTMLDivElement>(300);
  const { number, pieces, offcut_m } = bar;
  const share = (length_m: number): string => `${(100 * length_m) / stock_m}%`;
  return (
    <li className="cut-bar">
      <div className="cut-bar-line" ref={ref}>
        {pieces.map(({ piece, start_m, length_m }, i) => {
          const label = pieceLabel(piece);
          const fits = (length_m / stock_m) * width_px >= label.length * LETTER_px + AIR_px;
          return (
            <button
              // biome-ignore lint/suspicious/noArrayIndexKey: two networks may have pieces of one name; their places on the bar are theirs
              key={i}
              type="button"
              className="cut-piece"
              data-selected={isPieceSelected(piece, selection) || undefined}
              style={{ left: share(start_m), width: share(length_m) }}
              title={`${label}: ${length(length_m)}`}
              aria-label={`Piece ${label}, ${length(length_m)}`}
              onClick={() => selectPiece(store, piece)}
            >
              {fits ? label : ''}
            </button>
          );
        })}
      </div>
      <p className="cut-bar-words">
        <span>{number}.</span> {barWords(bar, networkName)} <span className="quiet">· left over {length(offcut_m)}</span>
      </p>
    </li>
  );
}
