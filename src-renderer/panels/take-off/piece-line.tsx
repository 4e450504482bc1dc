import { editPipe } from '#shared/commands/edit-pipe';
import { sizeText } from '#shared/sheets/sheet-text';
import { BASIS_WORDS, cutText, endWords, otherSystem, pieceLabel, remainderWords, whyWords } from '#shared/sheets/take-off-words';
import type { Piece, PieceEnd } from '#shared/take-off/pieces-of';
import { formatLength } from '#shared/units/length-text';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Readings } from '../bench/slip.tsx';
import { useCommit, useFigures, useShownPlan } from '../bench/use-plan.ts';
import { LengthField } from '../fields/quantity-field.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { isPieceSelected, onlyPipeOf, selectPiece } from './piece-selection.ts';

const selectionOf = (state: State) => state.session.selection;

/** Nobody measures pipe longer [m]. */
const MOST_MEASURED_m = 100;

function MeasuredField({ piece }: { readonly piece: Piece }) {
  const commit = useCommit();
  const { length } = useFigures();
  const { network } = piece;
  const id = onlyPipeOf(piece);
  const pipe = useShownPlan().networks[network]?.pipes[id ?? ''];
  if (!pipe) return <p className="field-help">{piece.pipes.length > 1 ? 'It is drawn as several pipes: what was measured is entered for one drawn pipe.' : 'Its pipe is cut into several pieces: what was measured is entered for a whole pipe.'}</p>;
  const take = (measured_m: number | null): void => {
    commit(editPipe({ kind: 'pipe', network, id: pipe.id }, { measured_m }));
  };
  return (
    <div className="fields is-single">
      <LengthField
        label="Measured centre to centre"
        value={pipe.measured_m}
        least={0.001}
        most={MOST_MEASURED_m}
        blank={{ text: 'not measured', commit: () => take(null) }}
        onCommit={take}
        help={pipe.measured_m === null ? `As it is built; taken in place of ${length(piece.centreToCentre_m)}.` : 'The piece is cut by this. Empty the field to go back to what is drawn.'}
      />
    </div>
  );
}

function endRow(where: string, end: PieceEnd, figures: ReturnType<typeof useFigures>): { readonly label: string; readonly value: string; readonly note?: string } {
  const { system } = figures;
  const { takeOff } = end;
  const label = `${where} ${endWords(end)}`;
  if (!takeOff.isKnown) return { label, value: 'not known' };
  return { label, value: takeOff.takeOff_m === 0 ? 'takes nothing off' : `takes off ${formatLength(takeOff.takeOff_m, system, { precision: 'fine' })}` };
}

/** Take-offs at both ends, what rounding leaves over, and what was measured. */
function PieceDetail({ piece }: { readonly piece: Piece }) {
  const figures = useFigures();
  const { system, length } = figures;
  const { from, to, cut_m, threads, centreToCentre_m } = piece;
  return (
    <div className="piece-detail">
      <Readings
        rows={[
          { label: 'Centre to centre', value: `${length(centreToCentre_m)} (${formatLength(centreToCentre_m, otherSystem(system))})` },
          endRow('At', from, figures),
          endRow('To', to, figures),
          ...(cut_m === null ? [] : [{ label: 'Rounding', value: remainderWords(cut_m, system) }]),
          { label: 'Threads', value: threads === 0 ? 'none' : String(threads) },
        ]}
      />
      <MeasuredField piece={piece} />
    </div>
  );
}

/** One piece: what it is, where it lies and how long it is cut, or why that is not known. */
export function PieceLine({ piece }: { readonly piece: Piece }) {
  const store = useStoreItself();
  const selection = useStore(selectionOf);
  const { system, length } = useFigures();
  const { from, to, cut_m, size, isTooShort, centreToCentre_m, basis, nipple, hasPipe } = piece;
  const isSelected = isPieceSelected(piece, selection);
  const why = whyWords(piece);
  return (
    <li className="piece" data-selected={isSelected || undefined}>
      <button type="button" className="piece-head" aria-expanded={isSelected} onClick={() => selectPiece(store, piece)}>
        <span className="piece-line">
          <strong>{pieceLabel(piece)}</strong>
          {basis === 'drawn' ? null : <span className="piece-mark">{basis}</span>}
          {nipple ? <span className="piece-mark">{nipple} nipple</span> : null}
          <span className="piece-cut">
            {!hasPipe && !isTooShort ? (
              'no pipe'
            ) : cut_m === null ? (
              <>
                <VerdictMark verdict={isTooShort ? 'stop' : 'not-checked'} silent /> no cut length
              </>
            ) : (
              <>
                {isTooShort ? <VerdictMark verdict="stop" silent /> : null} cut <strong>{cutText(cut_m, system)}</strong> <span className="quiet">({cutText(cut_m, otherSystem(system))})</span>
              </>
            )}
          </span>
        </span>
        <span className="quiet piece-where">
          {sizeText(size, system)} pipe, {endWords(from)} to {endWords(to)}, {length(centreToCentre_m)} {BASIS_WORDS[basis]}
        </span>
        {why === '' ? null : <span className={isTooShort ? 'piece-why is-stop' : 'piece-why'}>{why}</span>}
      </button>
      {isSelected ? <PieceDetail piece={piece} /> : null}
    </li>
  );
}
