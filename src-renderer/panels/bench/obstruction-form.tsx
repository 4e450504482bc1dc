import { editObstruction } from '#shared/commands/edit-obstruction';
import { area_m2, boundsOf } from '#shared/geometry/outline';
import { isRectangle } from '#shared/geometry/rectangle';
import type { Obstruction, RefOf } from '#shared/model/plan';
import { OBSTRUCTION_WORDS } from '#shared/model/thing-name';
import { Choice, KnownChoice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { NOBODY_HAS_LOOKED } from './device-fields.tsx';
import { SizeFields } from './size-fields.tsx';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

/** Kinds on which things may lie that a jet would blow about, and kinds that may hold disk drives. */
const HOLDS_ITEMS: ReadonlySet<Obstruction['kind']> = new Set<Obstruction['kind']>(['rack', 'cabinet', 'tray', 'panel', 'work-place', 'other']);
const HOLDS_DRIVES: ReadonlySet<Obstruction['kind']> = new Set<Obstruction['kind']>(['rack', 'cabinet', 'work-place', 'other']);

/** Form of a beam, rack, duct or other thing in the way. */
export function ObstructionForm({ at }: { readonly at: RefOf<'obstruction'> }) {
  const commit = useCommit();
  const { length, quantity } = useFigures();
  const solid = useShownPlan().levels[at.level]?.obstructions[at.id];
  if (!solid) return null;
  const change = (part: Partial<Obstruction>): void => {
    commit(editObstruction(at, part));
  };
  const box = boundsOf(solid.footprint);
  const area = area_m2(solid.footprint);
  return (
    <Slip title="Obstacle">
      <div className="fields">
        <Choice label="Kind" value={solid.kind} options={optionsOf(OBSTRUCTION_WORDS)} onCommit={(kind) => change({ kind, ...(kind === 'panel' ? {} : { front_rad: null }), ...(kind === 'live-part' ? {} : { voltage_V: null }) })} />
        <TextField label="Name" value={solid.name} onCommit={(name) => change({ name })} />
        <LengthField label="Bottom above floor" value={solid.bottom_m} onCommit={(bottom_m) => change({ bottom_m })} />
        <LengthField label="Top above floor" value={solid.top_m} onCommit={(top_m) => change({ top_m })} />
        <SizeFields ring={solid.footprint} onCommit={(footprint) => change({ footprint })} />
        {solid.kind === 'panel' ? (
          <QuantityField
            kind="angle"
            label="Front faces"
            value={solid.front_rad}
            blank={{ text: 'not known', commit: () => change({ front_rad: null }) }}
            onCommit={(front_rad) => change({ front_rad })}
            help="Where its door opens to: 0° is east, 90° is north. The working space before it is kept free."
          />
        ) : null}
        {solid.kind === 'live-part' ? (
          <QuantityField
            kind="voltage"
            label="Highest voltage to earth"
            value={solid.voltage_V}
            least={0}
            most={1e6}
            blank={{ text: 'not known', commit: () => change({ voltage_V: null }) }}
            onCommit={(voltage_V) => change({ voltage_V })}
            help="Of a bare part that can be reached."
          />
        ) : null}
        {HOLDS_ITEMS.has(solid.kind) ? <KnownChoice label="Loose or light things on it" value={solid.hasLooseItems} unknown={NOBODY_HAS_LOOKED} onCommit={(hasLooseItems) => change({ hasLooseItems })} wide /> : null}
        {HOLDS_DRIVES.has(solid.kind) ? <KnownChoice label="Running disk drives in it" value={solid.hasDrives} unknown={NOBODY_HAS_LOOKED} onCommit={(hasDrives) => change({ hasDrives })} wide /> : null}
        <Choice
          label="Gas"
          value={solid.isPermeable ? 'through' : 'solid'}
          options={[
            { value: 'through', label: 'Passes through it: stays in the volume' },
            { value: 'solid', label: 'Cannot enter: taken off the volume' },
          ]}
          onCommit={(chosen) => change({ isPermeable: chosen === 'through' })}
          wide
        />
      </div>
      <Readings
        rows={[
          ...(isRectangle(solid.footprint) ? [] : [{ label: 'Size on plan', value: `${length(box.maxX - box.minX)} × ${length(box.maxY - box.minY)}` }]),
          { label: 'Takes up', value: quantity(area * Math.max(0, solid.top_m - solid.bottom_m), 'volume') },
        ]}
      />
    </Slip>
  );
}
