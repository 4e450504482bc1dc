import { placeView } from '#shared/commands/place-view';
import { resetDimensionText } from '#shared/commands/reset-dimension-text';
import { resetView } from '#shared/commands/reset-view';
import { ordinaryScales, scaleName } from '#shared/paper/scales';
import type { Sheet, SheetDimension, SheetView } from '#shared/sheets/sheet';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';

interface PaperBarProps {
  readonly sheet: Sheet;
  readonly sheets: readonly Sheet[];
  readonly view: SheetView | undefined;
  readonly dimension: SheetDimension | undefined;
  show(number: string | null): void;
  fit(): void;
  addNote(): void;
}

/** Above the paper: which sheet, what can be done with the chosen view, and the way back to the plan. */
export function PaperBar({ sheet, sheets, view, dimension, show, fit, addNote }: PaperBarProps) {
  const commit = useCommit();
  const { lengths, sheets: own } = useShownPlan().settings;
  const at = sheets.indexOf(sheet);
  const scales = view?.scale ? [...new Set([view.scale, ...ordinaryScales(lengths)])].sort((a, b) => a - b) : [];
  const homes = sheets.filter(({ views }) => views.length > 0);
  return (
    <div className="paper-bar" role="toolbar" aria-label="Sheet">
      <button type="button" className="button is-slim" aria-label="Sheet before" disabled={at <= 0} onClick={() => show(sheets[at - 1]?.number ?? sheet.number)}>
        ‹
      </button>
      <button type="button" className="button is-slim" aria-label="Next sheet" disabled={at < 0 || at >= sheets.length - 1} onClick={() => show(sheets[at + 1]?.number ?? sheet.number)}>
        ›
      </button>
      <span className="paper-title" title={sheet.title}>
        <strong>{sheet.number}</strong> {sheet.title}
      </span>
      {view ? (
        <>
          {view.scale === null ? null : (
            <select aria-label={`Scale of ${view.title}`} value={String(view.scale)} onChange={(event) => commit(placeView(view.key, { scale: Number(event.target.value), at: view.corner }))}>
              {scales.map((scale) => (
                <option key={scale} value={String(scale)}>
                  {scaleName(scale, lengths)}
                </option>
              ))}
            </select>
          )}
          <select aria-label={`Sheet of ${view.title}`} value={sheet.home} onChange={(event) => commit(placeView(view.key, { sheet: event.target.value, at: null }))}>
            {homes.map((each) => (
              <option key={each.number} value={each.home}>
                {each.number} {each.home}
              </option>
            ))}
          </select>
          <button type="button" className="button is-slim" disabled={!(view.key in own.views)} onClick={() => commit(resetView(view.key))}>
            Reset view
          </button>
        </>
      ) : null}
      {dimension ? (
        <>
          <span className="quiet" role="status">
            Dimension {dimension.words}
          </span>
          <button type="button" className="button is-slim" disabled={!dimension.isByHand} onClick={() => commit(resetDimensionText(dimension.key))} title="The program puts the text where it disturbs least. A double press on the text does the same.">
            Reset text
          </button>
        </>
      ) : null}
      <button type="button" className="button is-slim" onClick={addNote}>
        Add note
      </button>
      <button type="button" className="button is-slim" onClick={fit}>
        Whole sheet
      </button>
      <button type="button" className="button is-slim" onClick={() => show(null)}>
        Back to the plan
      </button>
    </div>
  );
}
