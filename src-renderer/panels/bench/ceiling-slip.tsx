import type { Enclosure } from '#shared/model/plan';
import { Choice, Tick, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { lowHeight_m, withSlope } from './slope-form.ts';
import { Slip } from './slip.tsx';
import { VoidFields } from './void-fields.tsx';

const MAKE = { unknown: 'Not yet known', hard: 'Closed and fixed', tiles: 'Tiles', open: 'Open: a grid, or none' } as const satisfies Record<Enclosure['ceiling']['make'], string>;

/** How high a room is, what its ceiling is made of, and the voids under and over it. */
export function CeilingSlip({ enclosure, change }: { readonly enclosure: Enclosure; change(part: Partial<Enclosure>): void }) {
  const { id, slope, ceiling } = enclosure;
  return (
    <Slip title="Ceiling and voids">
      <div className="fields">
        <LengthField
          label={slope ? 'Height at the low place' : 'Floor to ceiling'}
          value={lowHeight_m(enclosure)}
          least={0.1}
          blank={{ text: 'not known', commit: () => change({ height_m: null }) }}
          help={enclosure.height_m === null ? 'Without it, drop and volume are not checked.' : undefined}
          onCommit={(low_m) => change(slope ? withSlope(enclosure, { low_m }) : { height_m: low_m })}
        />
        <Choice label="Ceiling" value={ceiling.make} options={optionsOf(MAKE)} onCommit={(make) => change({ ceiling: { ...ceiling, make } })} />
        {ceiling.make === 'tiles' ? (
          <LengthField
            label="Tiles clipped within"
            value={ceiling.clipped_m}
            least={0}
            blank={{ text: 'not said', commit: () => change({ ceiling: { ...ceiling, clipped_m: null } }) }}
            onCommit={(clipped_m) => change({ ceiling: { ...ceiling, clipped_m } })}
            help="Of each nozzle, so that the discharge lifts none."
          />
        ) : null}
      </div>
      <Tick label="Sloped ceiling" value={slope !== null} onCommit={(has) => change(has ? withSlope(enclosure, {}) : { height_m: lowHeight_m(enclosure), slope: null })} />
      {slope ? (
        <div className="fields is-inset">
          <QuantityField kind="angle" label="Rises toward" value={slope.direction_rad} onCommit={(direction_rad) => change(withSlope(enclosure, { direction_rad }))} help="0° is east, 90° is north." />
          <QuantityField kind="ratio" label="Rise over run" value={slope.rise} onCommit={(rise) => change(withSlope(enclosure, { rise }))} />
        </div>
      ) : null}
      <VoidFields key={`${id} under`} label="Under-floor void" space={enclosure.underFloor} onCommit={(underFloor) => change({ underFloor })} />
      <VoidFields key={`${id} above`} label="Void above the ceiling" space={enclosure.ceilingVoid} onCommit={(ceilingVoid) => change({ ceilingVoid })} />
    </Slip>
  );
}
