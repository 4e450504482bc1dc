import { editDimension } from '#shared/commands/edit-dimension';
import { editNote } from '#shared/commands/edit-note';
import { distance_m } from '#shared/geometry/point';
import type { RefOf } from '#shared/model/plan';
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

/** Form of a note on the plan. */
export function NoteForm({ at }: { readonly at: RefOf<'note'> }) {
  const commit = useCommit();
  const note = useShownPlan().levels[at.level]?.notes[at.id];
  if (!note) return null;
  return (
    <Slip title="Note">
      <LongTextField label="Text" value={note.text} rows={4} onCommit={(text) => commit(editNote(at, { text }))} />
    </Slip>
  );
}
