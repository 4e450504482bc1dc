import { editDimension } from '#shared/commands/edit-dimension';
import { editNote } from '#shared/commands/edit-note';
import { distance_m } from '#shared/geometry/point';
import type { RefOf } from '#shared/model/plan';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { NEW_NOTE } from '../../tools/note.ts';
import { LengthField } from '../fields/quantity-field.tsx';
import { LongTextField } from '../fields/text-field.tsx';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

/** Form of a printed dimension. */
export function DimensionForm({ at }: { readonly at: RefOf<'dimension'> }) {
  const commit = useCommit();
  const { length } = useFigures();
  const dimension = useShownPlan().levels[at.level]?.dimensions[at.id];
  if (!dimension) return null;
  return (
    <Slip title="Dimension">
      <Readings rows={[{ label: 'Measures', value: length(distance_m(dimension.a, dimension.b)) }]} />
      <div className="fields">
        <LengthField label="Line stands off by" value={dimension.offset_m} onCommit={(offset_m) => commit(editDimension(at, { offset_m }))} help="A minus puts it on the other side." />
      </div>
    </Slip>
  );
}

/** Whether setting a note down was the last thing done. */
const wasJustAdded = ({ history }: State): boolean => history.past.at(-1)?.label.startsWith('Add note') ?? false;

/** Form of a note on the plan. */
export function NoteForm({ at }: { readonly at: RefOf<'note'> }) {
  const commit = useCommit();
  const isNew = useStore(wasJustAdded);
  const note = useShownPlan().levels[at.level]?.notes[at.id];
  if (!note) return null;
  return (
    <Slip title="Note">
      {/* Who has just set a note down goes on to write it. */}
      <LongTextField label="Text" value={note.text} rows={4} takesKeyboard={isNew && note.text === NEW_NOTE} onCommit={(text) => commit(editNote(at, { text }))} />
    </Slip>
  );
}
