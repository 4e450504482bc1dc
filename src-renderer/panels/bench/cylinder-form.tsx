import { sequence } from '#shared/commands/command';
import { editCylinder } from '#shared/commands/edit-cylinder';
import { moveThings } from '#shared/commands/move-things';
import type { Cylinder, RefOf } from '#shared/model/plan';
import { Choice } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { AnchorsSlip } from './anchors-slip.tsx';
import { Slip } from './slip.tsx';
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
  const others = Object.values(network.cylinders).filter(({ id, mounting }) => id !== cylinder.id && mounting === 'wall');
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
          <LengthField label="Rail above floor" value={cylinder.railHeight_m} least={0} blank={{ text: 'not known', commit: () => change({ railHeight_m: null }) }} onCommit={(railHeight_m) => change({ railHeight_m })} />
        </div>
      </Slip>
      {cylinder.mounting === 'wall' ? <WallBehindSlip at={at} /> : null}
      {cylinder.mounting === 'wall' ? <AnchorsSlip key={cylinder.id} anchors={cylinder.anchors} onCommit={(anchors) => change({ anchors })} /> : null}
      {cylinder.mounting === 'wall' && others.length > 0 && (cylinder.anchors !== null || cylinder.railHeight_m !== null) ? (
        <button type="button" className="button" onClick={() => commit(sequence('Hold all cylinders alike', others.map(({ id }) => editCylinder({ ...at, id }, { anchors: cylinder.anchors, railHeight_m: cylinder.railHeight_m }))))}>
          {others.length === 1 ? 'Same rail and anchors for the other cylinder' : `Same rail and anchors for the ${others.length} other cylinders`}
        </button>
      ) : null}
    </>
  );
}
