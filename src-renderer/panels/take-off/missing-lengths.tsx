import type { BillOfMaterials } from '#shared/take-off/bill-of-materials';
import { sentence } from '#shared/sheets/sheet-text';
import { pieceLabel } from '#shared/sheets/take-off-words';
import { focusWhenThere } from '../../actions/go-to-form.ts';
import { Slip } from '../bench/slip.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { useActionContext } from '../window-context.ts';

/** More pieces are not named one by one. */
const MOST_NAMED = 6;

/** Why pieces have no cut length, each reason with its pieces. */
export function reasonsIn({ pieces }: Pick<BillOfMaterials, 'pieces'>): { readonly reason: string; readonly pieces: readonly string[] }[] {
  const reasons = new Map<string, string[]>();
  for (const piece of pieces) {
    if (piece.cut_m !== null || !piece.hasPipe) continue;
    for (const reason of piece.because) reasons.set(reason, [...(reasons.get(reason) ?? []), pieceLabel(piece)]);
  }
  return [...reasons].map(([reason, of]) => ({ reason, pieces: of }));
}

/** A length that the maker gives is entered in the unit profile, and so is the fitting class. */
export const isEnteredInProfile = (reason: string): boolean => /maker|unit profile|Class \d/.test(reason);

const named = (pieces: readonly string[]): string => (pieces.length > MOST_NAMED ? `${pieces.slice(0, MOST_NAMED).join(', ')} and ${pieces.length - MOST_NAMED} more` : pieces.join(', '));

/** What keeps pieces from being cut, and the way to enter it. */
export function MissingLengths({ bill }: { readonly bill: BillOfMaterials }) {
  const { store } = useActionContext();
  const reasons = reasonsIn(bill);
  if (reasons.length === 0) return null;
  const toProfile = (): void => {
    store.session({ dialog: 'profile' });
    focusWhenThere(() => document.querySelector<HTMLElement>('[data-part="made-fittings"] select'));
  };
  return (
    <Slip title="Without a cut length" part="missing-lengths">
      <div className="sum-missing">
        {reasons.map(({ reason, pieces }) => (
          <p key={reason}>
            <VerdictMark verdict="not-checked" silent />
            <span>
              {sentence(reason)}. <span className="quiet">Pieces {named(pieces)}.</span>
            </span>
          </p>
        ))}
        {reasons.some(({ reason }) => isEnteredInProfile(reason)) ? (
          <button type="button" className="button is-slim" onClick={toProfile}>
            Enter fittings in the unit profile…
          </button>
        ) : null}
      </div>
    </Slip>
  );
}
