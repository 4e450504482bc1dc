import { editAdjoining } from '#shared/commands/edit-adjoining';
import { area_m2 } from '#shared/geometry/outline';
import type { Adjoining, RefOf } from '#shared/model/plan';
import { ADJOINING_WORDS, GAS_WORDS } from '#shared/model/surroundings-words';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { LongTextField, TextField } from '../fields/text-field.tsx';
import { SizeFields } from './size-fields.tsx';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

/** Form of a space beside, under or over the enclosures. */
export function AdjoiningForm({ at }: { readonly at: RefOf<'adjoining'> }) {
  const commit = useCommit();
  const { quantity } = useFigures();
  const space = useShownPlan().levels[at.level]?.adjoining[at.id];
  if (!space) return null;
  const change = (part: Partial<Adjoining>): void => {
    commit(editAdjoining(at, part));
  };
  return (
    <Slip title="Adjoining space">
      <div className="fields">
        <TextField label="Name" value={space.name} required="A space needs a name." onCommit={(name) => change({ name })} />
        <Choice label="What it is" value={space.kind} options={optionsOf(ADJOINING_WORDS)} onCommit={(kind) => change({ kind })} />
        <LengthField label="Its floor above ours" value={space.floor_m} onCommit={(floor_m) => change({ floor_m })} help="A minus where it lies lower, as a pit does." />
        <SizeFields ring={space.outline} onCommit={(outline) => change({ outline })} />
        <Choice label="Gas that drifts in" value={space.gas} options={optionsOf(GAS_WORDS)} onCommit={(gas) => change({ gas })} wide />
      </div>
      <LongTextField label="Note" value={space.note} rows={2} onCommit={(note) => change({ note })} />
      <Readings rows={[{ label: 'Area', value: quantity(area_m2(space.outline), 'area') }]} />
    </Slip>
  );
}
