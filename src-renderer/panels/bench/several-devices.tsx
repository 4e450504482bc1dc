import { sequence } from '#shared/commands/command';
import { type DeviceChange, editDevice } from '#shared/commands/edit-device';
import type { Device, RefOf } from '#shared/model/plan';
import { LengthField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { Slip } from './slip.tsx';
import { useCommit, useShownPlan } from './use-plan.ts';

/** The one value of things that are all alike; undefined where they differ. */
export function commonOf<T>(values: readonly T[]): T | undefined {
  const [first] = values;
  return values.every((value) => value === first) ? first : undefined;
}

/** What several devices share: their height, and the zone of detectors. */
export function SeveralDevices({ refs }: { readonly refs: readonly RefOf<'device'>[] }) {
  const commit = useCommit();
  const { levels } = useShownPlan();
  const devices = refs.flatMap((ref): Device[] => {
    const device = levels[ref.level]?.devices[ref.id];
    return device ? [device] : [];
  });
  const detectors = devices.filter((device) => device.kind === 'detector');
  const height_m = commonOf(devices.map((device) => device.height_m));
  const zone = commonOf(detectors.map((device) => device.zone));
  const change = (part: DeviceChange, of = refs): void => {
    commit(sequence(`Edit ${of.length} devices`, of.map((ref) => editDevice(ref, part))));
  };
  const ofDetectors = refs.filter(({ level, id }) => levels[level]?.devices[id]?.kind === 'detector');
  return (
    <Slip title="These devices">
      <div className="fields">
        <LengthField
          label="Height above floor"
          value={height_m ?? null}
          blank={{ text: height_m === undefined ? 'not all alike' : 'not known', commit: () => change({ height_m: null }) }}
          onCommit={(typed_m) => change({ height_m: typed_m })}
        />
        {detectors.length > 0 ? <TextField label="Zone of the detectors" value={zone ?? ''} placeholder={zone === undefined ? 'not all alike' : 'not known'} onCommit={(typed) => change({ zone: typed }, ofDetectors)} /> : null}
      </div>
    </Slip>
  );
}
