import { angleBetween_rad } from '#shared/geometry/angle';
import type { Cylinder } from '#shared/model/plan';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { Slip } from './slip.tsx';

/** Directions nearer than this are the same [rad]. */
const SAME_rad = 1e-6;

/** Where the gauge of a cylinder is and which way it faces; a new one faces away from the wall. */
export function GaugeSlip({ gauge, back_rad, onCommit }: Pick<Cylinder, 'gauge' | 'back_rad'> & { onCommit(gauge: Cylinder['gauge']): void }) {
  const away_rad = back_rad + Math.PI;
  return (
    <Slip title="Pressure gauge" part="gauge">
      <div className="fields">
        <LengthField label="Gauge above floor" value={gauge?.height_m ?? null} least={0} blank={{ text: 'not known', commit: () => onCommit(null) }} onCommit={(height_m) => onCommit({ height_m, facing_rad: gauge?.facing_rad ?? away_rad })} />
        {gauge ? <QuantityField kind="angle" label="Gauge faces" value={gauge.facing_rad} onCommit={(facing_rad) => onCommit({ ...gauge, facing_rad })} help="0° is east, 90° is north." /> : null}
      </div>
      {gauge && angleBetween_rad(gauge.facing_rad, away_rad) > SAME_rad ? (
        <button type="button" className="button" onClick={() => onCommit({ ...gauge, facing_rad: away_rad })}>
          Face it away from the wall
        </button>
      ) : null}
    </Slip>
  );
}
