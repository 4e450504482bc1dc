import { editCeilingZone } from '#shared/commands/edit-ceiling-zone';
import { editOpening } from '#shared/commands/edit-opening';
import { area_m2 } from '#shared/geometry/outline';
import type { CeilingZone, Opening, RefOf } from '#shared/model/plan';
import { OPENING_WORDS } from '#shared/model/thing-name';
import { Choice, KnownChoice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { CrossingFields } from './crossing-fields.tsx';
import { NeededVent } from './needed-vent.tsx';
import { SizeFields } from './size-fields.tsx';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';
import { VentWayFields } from './vent-way-fields.tsx';

const SWING = { none: 'Does not swing', in: 'Into the room', out: 'Out of the room' } as const;
const HINGE = { start: 'At this end', end: 'At the far end' } as const;
const LEADS = { unknown: 'Not yet known', outdoors: 'Outdoors', corridor: 'Corridor', room: 'Another room', exit: 'Exit way' } as const;

/** Form of an opening in a wall. */
export function OpeningForm({ at }: { readonly at: RefOf<'opening'> }) {
  const commit = useCommit();
  const opening = useShownPlan().levels[at.level]?.enclosures[at.enclosure]?.openings[at.id];
  if (!opening) return null;
  const change = (part: Partial<Opening>): void => {
    commit(editOpening(at, part));
  };
  const isDoor = opening.kind === 'door';
  return (
    <Slip title="Opening">
      <div className="fields">
        <Choice label="Kind" value={opening.kind} options={optionsOf(OPENING_WORDS)} onCommit={(kind) => change({ kind })} />
        <TextField label="Name" value={opening.name} onCommit={(name) => change({ name })} />
        <LengthField label="From corner to middle" value={opening.along_m} least={0} onCommit={(along_m) => change({ along_m })} />
        <LengthField label="Width" value={opening.width_m} least={0} onCommit={(width_m) => change({ width_m })} />
        <LengthField label="Lower edge above floor" value={opening.bottom_m} onCommit={(bottom_m) => change({ bottom_m })} />
        <LengthField label="Height" value={opening.height_m} least={0} onCommit={(height_m) => change({ height_m })} />
        {isDoor ? (
          <>
            <Choice label="Swings" value={opening.swing} options={optionsOf(SWING)} onCommit={(swing) => change({ swing })} />
            <Choice label="Hinge" value={opening.hinge} options={optionsOf(HINGE)} onCommit={(hinge) => change({ hinge })} />
            <LengthField label="Gap under the leaf" value={opening.undercut_m} least={0} blank={{ text: 'not known', commit: () => change({ undercut_m: null }) }} onCommit={(undercut_m) => change({ undercut_m })} />
          </>
        ) : (
          <QuantityField kind="area" label="Free area" value={opening.freeArea_m2} least={0} blank={{ text: 'not known', commit: () => change({ freeArea_m2: null }) }} onCommit={(freeArea_m2) => change({ freeArea_m2 })} />
        )}
        <Choice label="Leads to" value={opening.leadsTo} options={optionsOf(LEADS)} onCommit={(leadsTo) => change({ leadsTo })} />
        {opening.kind === 'relief-vent' ? null : <KnownChoice label="Closes before discharge" value={opening.closes} onCommit={(closes) => change({ closes })} />}
      </div>
      {opening.kind === 'penetration' ? <CrossingFields crossing={opening.crossing} onCommit={(crossing) => change({ crossing })} /> : null}
      {opening.kind === 'relief-vent' ? <VentWayFields key={`${at.id} way`} steps={opening.ventPath} onCommit={(ventPath) => change({ ventPath })} /> : null}
      {opening.kind === 'relief-vent' ? <NeededVent at={at} onTake={(freeArea_m2) => change({ freeArea_m2 })} /> : null}
    </Slip>
  );
}

/** Form of a part of the ceiling with its own height. */
export function CeilingZoneForm({ at }: { readonly at: RefOf<'ceiling-zone'> }) {
  const commit = useCommit();
  const { quantity } = useFigures();
  const zone = useShownPlan().levels[at.level]?.enclosures[at.enclosure]?.ceilingZones[at.id];
  if (!zone) return null;
  const change = (part: Partial<CeilingZone>): void => {
    commit(editCeilingZone(at, part));
  };
  return (
    <Slip title="Ceiling zone">
      <div className="fields">
        <TextField label="Name" value={zone.name} onCommit={(name) => change({ name })} />
        <LengthField label="Floor to ceiling here" value={zone.height_m} least={0} onCommit={(height_m) => change({ height_m })} />
        <SizeFields ring={zone.outline} onCommit={(outline) => change({ outline })} />
      </div>
      <Readings rows={[{ label: 'Area', value: quantity(area_m2(zone.outline), 'area') }]} />
    </Slip>
  );
}
