import { editSheetNote } from '#shared/commands/edit-sheet-note';
import { forgetPlaces } from '#shared/commands/forget-places';
import { removeSheetNote } from '#shared/commands/remove-sheet-note';
import type { Sheet } from '#shared/sheets/sheet';
import { sheetLayout } from '#shared/sheets/frame';
import { useCommit } from '../bench/use-plan.ts';
import { useDesk } from '../window-context.ts';

const countOf = (count: number, one: string, many: string): string => (count === 1 ? `1 ${one}` : `${count} ${many}`);

/** Notes whose sheet is gone, to be put on the sheet on the board or deleted, and places of things that no sheet shows any more. */
export function AstrayList({ sheet }: { readonly sheet: Sheet }) {
  const { notes, views, dimensions } = useDesk((desk) => desk.astray);
  const commit = useCommit();
  const { area } = sheetLayout(sheet.paper);
  const places = [...(views.length > 0 ? [countOf(views.length, 'placed view', 'placed views')] : []), ...(dimensions.length > 0 ? [countOf(dimensions.length, 'moved dimension text', 'moved dimension texts')] : [])];
  if (notes.length === 0 && places.length === 0) return null;
  return (
    <ul className="paper-remarks" aria-label="What found no sheet">
      {notes.map(({ id, sheet: home, text, x_mm, y_mm }) => (
        <li key={id}>
          The note “{text.length > 60 ? `${text.slice(0, 59)}…` : text}” stood on the sheet “{home}”, which is no longer in the set.{' '}
          <button type="button" className="button is-slim" onClick={() => commit(editSheetNote(id, { sheet: sheet.home, x_mm: Math.min(Math.max(x_mm, area.left + 2), area.right - 60), y_mm: Math.min(Math.max(y_mm, area.top + 2), area.bottom - 20) }))}>
            Put on this sheet
          </button>{' '}
          <button type="button" className="button is-slim" onClick={() => commit(removeSheetNote(id))}>
            Delete note
          </button>
        </li>
      ))}
      {places.length > 0 ? (
        <li>
          No sheet shows {places.join(' or ')} any more: what they belong to is gone or drawn elsewhere.{' '}
          <button type="button" className="button is-slim" onClick={() => commit(forgetPlaces(views, dimensions))}>
            Forget their places
          </button>
        </li>
      ) : null}
    </ul>
  );
}
