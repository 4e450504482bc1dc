import { editWall } from '#shared/commands/edit-wall';
import { moveCorner } from '#shared/commands/move-corner';
import { moveWall } from '#shared/commands/move-wall';
import { removeCorner } from '#shared/commands/remove-corner';
import { distance_m } from '#shared/geometry/point';
import { type PlacedCorner, findCorner, findThing } from '#shared/model/find-thing';
import type { Plan, RefOf, Wall } from '#shared/model/plan';
import { useStoreItself } from '../../store/use-store.ts';
import { DoWithLength } from '../fields/action-fields.tsx';
import { Choice, KnownChoice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';
import { CONSTRUCTION, REACHES, wallSide } from './wall-words.ts';

/** A wall or corner with the corner after it, in whichever ring it stands. */
function findPlacedCorner(plan: Plan, at: RefOf<'wall'> | RefOf<'corner'>): PlacedCorner | undefined {
  const found = findThing(plan, at);
  return found && findCorner(found.enclosure, at.id);
}

/** Whether a wall carries loads, and what it bears where a cylinder's rail is fixed to it. */
export function WallStrengthFields({ at }: { readonly at: RefOf<'wall'> }) {
  const plan = useShownPlan();
  const commit = useCommit();
  const found = findPlacedCorner(plan, at);
  if (!found) return null;
  const { loadBearing, capacity_N } = found.corner.wall;
  return (
    <>
      <KnownChoice label="Load-bearing" value={loadBearing} onCommit={(chosen) => commit(editWall(at, { loadBearing: chosen }))} />
      <QuantityField
        kind="force"
        label="Weight it bears at a rail"
        value={capacity_N}
        least={0}
        most={1e6}
        blank={{ text: 'not declared', commit: () => commit(editWall(at, { capacity_N: null })) }}
        onCommit={(weight_N) => commit(editWall(at, { capacity_N: weight_N }))}
        help={capacity_N === null ? 'Declared by a structural engineer. Until it is, a cylinder on this wall is not checked.' : 'Declared by a structural engineer, for one cylinder.'}
      />
    </>
  );
}

/** Form of a wall: what it is made of, and moving it square to itself. */
export function WallForm({ at }: { readonly at: RefOf<'wall'> }) {
  const plan = useShownPlan();
  const commit = useCommit();
  const { length } = useFigures();
  const found = findPlacedCorner(plan, at);
  if (!found) return null;
  const { wall } = found.corner;
  const enclosure = plan.levels[at.level]?.enclosures[at.enclosure];
  const side = enclosure && wallSide(enclosure, at.id);
  const change = (part: Partial<Wall>): void => {
    commit(editWall(at, part));
  };
  return (
    <Slip title="Wall">
      <Readings
        rows={[
          ...(side ? [{ label: 'Side of the room', value: side }] : []),
          { label: 'Length of the face', value: length(distance_m(found.corner, found.next)) },
        ]}
      />
      <div className="fields">
        <Choice label="Made of" value={wall.construction} options={optionsOf(CONSTRUCTION)} onCommit={(construction) => change({ construction })} />
        <QuantityField
          kind="pressureDifference"
          label="Pressure it stands"
          value={wall.allowablePressure_Pa}
          least={0}
          blank={{ text: 'not known', commit: () => change({ allowablePressure_Pa: null }) }}
          onCommit={(allowablePressure_Pa) => change({ allowablePressure_Pa })}
          help={wall.allowablePressure_Pa === null ? 'From the structural engineer. Until it is known, the relief vent is not worked out.' : 'From the structural engineer.'}
        />
        <WallStrengthFields at={at} />
        <Choice label="Goes up to" value={wall.reaches} options={optionsOf(REACHES)} onCommit={(reaches) => change({ reaches })} />
      </div>
      <DoWithLength label="Move the face into the room by" action="Move" run={(offset_m) => commit(moveWall(at, offset_m))} />
      <p className="field-help">A minus moves it outward.</p>
    </Slip>
  );
}

/** Form of a corner: its place. */
export function CornerForm({ at }: { readonly at: RefOf<'corner'> }) {
  const plan = useShownPlan();
  const commit = useCommit();
  const store = useStoreItself();
  const found = findPlacedCorner(plan, at);
  if (!found) return null;
  const { x, y } = found.corner;
  return (
    <Slip title="Corner">
      <div className="fields">
        <LengthField label="East of the origin" value={x} onCommit={(to) => commit(moveCorner(at, { x: to, y }))} />
        <LengthField label="North of the origin" value={y} onCommit={(to) => commit(moveCorner(at, { x, y: to }))} />
      </div>
      <button
        type="button"
        className="button"
        onClick={() => {
          if (commit(removeCorner(at))) store.session({ selection: [] });
        }}
      >
        Remove this corner
      </button>
    </Slip>
  );
}
