import { type DeviceChange, editDevice } from '#shared/commands/edit-device';
import type { DeviceKind, RefOf } from '#shared/model/plan';
import { DEVICE_WORDS } from '#shared/model/thing-name';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { DeviceFields } from './device-fields.tsx';
import { Slip } from './slip.tsx';
import { useCommit, useShownPlan } from './use-plan.ts';

/** What the height of a kind is measured to, where it is not its middle that matters. */
const HEIGHT_HELP: Partial<Record<DeviceKind, string>> = {
  detector: 'Finished floor to the detector; below the floor with a minus.',
  'manual-release': 'Finished floor to the middle of its handle.',
  sign: 'Finished floor to the middle of the sign.',
};

/** Form of a detector, alarm, sign, switch, panel or air outlet. */
export function DeviceForm({ at }: { readonly at: RefOf<'device'> }) {
  const commit = useCommit();
  const device = useShownPlan().levels[at.level]?.devices[at.id];
  if (!device) return null;
  const change = (part: DeviceChange & { readonly kind?: DeviceKind }): void => {
    commit(editDevice(at, part));
  };
  return (
    <Slip title={DEVICE_WORDS[device.kind]}>
      <div className="fields">
        <Choice label="Kind" value={device.kind} options={optionsOf(DEVICE_WORDS)} onCommit={(kind) => change({ kind })} />
        <TextField label="Name" value={device.name} required="A device needs a name." onCommit={(name) => change({ name })} />
        <LengthField
          label="Height above floor"
          value={device.height_m}
          blank={{ text: 'not known', commit: () => change({ height_m: null }) }}
          onCommit={(height_m) => change({ height_m })}
          help={HEIGHT_HELP[device.kind]}
        />
        <QuantityField
          kind="angle"
          label="Faces"
          value={device.facing_rad}
          blank={{ text: device.kind === 'detector' ? 'every way' : 'not known', commit: () => change({ facing_rad: null }) }}
          onCommit={(facing_rad) => change({ facing_rad })}
          help="0° is east, 90° is north."
        />
        <DeviceFields device={device} change={change} />
      </div>
    </Slip>
  );
}
