import { sequence } from '#shared/commands/command';
import { editCylinder } from '#shared/commands/edit-cylinder';
import { moveThings } from '#shared/commands/move-things';
import type { Cylinder, RefOf } from '#shared/model/plan';
import { Choice } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { AnchorsSlip } from './anchors-slip.tsx';
import { GaugeSlip } from './gauge-slip.tsx';
import { HeightRoom } from './height-room.tsx';
import { RestraintsSlip } from './restraints-slip.tsx';
import { Slip } from './slip.tsx';
import { StorageSlip } from './storage-slip.tsx';
import { useCommit, useShownPlan } from './use-plan.ts';
import { WallBehindSlip } from './wall-behind-slip.tsx';

/** Form of a cylinder. */
export function CylinderForm({ at }: { readonly at: RefOf<'cylinder'> }) {
  const commit = useCommit();
  const network = useShownPlan().networks[at.network];
  const cylinder = network?.cylinders[at.id];
  if (!cylinder) return null;
  const change = (part: Partial<Cylinder>): void => {
    commit(editCylinder(at, part));
  };
  const { x, y } = cylinder.at;
  const isHung = cylinder.mounting === 'wall';
  const others = Object.values(network.cylinders).filter(({ id, mounting }) => id !== cylinder.id && mounting === cylinder.mounting);
  return (
    <>
      <Slip title="Cylinder">
        <div className="fields">
          <TextField label="Name" value={cylinder.name} onCommit={(name) => change({ name })} wide />
          <Choice
            label="Stands"
            value={cylinder.mounting}
            options={[
              { value: 'wall', label: 'Clamped to a wall rail' },
              { value: 'floor', label: 'In a floor frame' },
            ]}
            onCommit={(mounting) => change({ mounting })}
            wide
          />
          <LengthField label="East of the origin" value={x} onCommit={(to) => commit(moveThings([at], to - x, 0))} />
          <LengthField label="North of the origin" value={y} onCommit={(to) => commit(moveThings([at], 0, to - y))} />
          <QuantityField kind="angle" label="Wall behind it lies toward" value={cylinder.back_rad} onCommit={(back_rad) => change({ back_rad })} help="0° is east, 90° is north." />
          {isHung ? <LengthField label="Rail above floor" value={cylinder.railHeight_m} least={0} blank={{ text: 'not known', commit: () => change({ railHeight_m: null }) }} onCommit={(railHeight_m) => change({ railHeight_m })} /> : null}
        </div>
        {isHung && cylinder.railHeight_m !== null ? <HeightRoom raised={at} label="Rail may hang at, all else as drawn" /> : null}
      </Slip>
      <RestraintsSlip key={`restraints ${cylinder.id}`} heights_m={cylinder.restraints_m} rail_m={isHung ? cylinder.railHeight_m : null} onCommit={(restraints_m) => change({ restraints_m })} />
      <GaugeSlip gauge={cylinder.gauge} back_rad={cylinder.back_rad} onCommit={(gauge) => change({ gauge })} />
      {isHung ? <WallBehindSlip at={at} /> : null}
      {isHung ? <AnchorsSlip key={cylinder.id} anchors={cylinder.anchors} onCommit={(anchors) => change({ anchors })} /> : null}
      <StorageSlip key={`storage ${cylinder.id}`} storage={cylinder.storage} exposedTo={cylinder.exposedTo} onCommit={change} />
      {others.length > 0 ? (
        <button type="button" className="button" onClick={() => commit(sequence('Hold all cylinders alike', others.map((other) => editCylinder({ ...at, id: other.id }, alikeFor(cylinder, other)))))}>
          {`Same ${isHung ? 'rail, anchors, ' : ''}restraints, gauge and place for the ${others.length === 1 ? 'other cylinder' : `${others.length} other cylinders`}`}
        </button>
      ) : null}
    </>
  );
}

/** How another cylinder is held, read and stored like this one; its gauge faces as this one's does against its wall. */
export function alikeFor({ back_rad, mounting, anchors, railHeight_m, restraints_m, gauge, storage, exposedTo }: Cylinder, other: Cylinder): Partial<Cylinder> {
  const turned_rad = other.back_rad - back_rad;
  return {
    ...(mounting === 'wall' ? { anchors, railHeight_m } : {}),
    restraints_m,
    gauge: gauge && { ...gauge, facing_rad: gauge.facing_rad + turned_rad },
    storage,
    exposedTo,
  };
}
