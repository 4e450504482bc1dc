import type { ReleaseSums } from '#shared/calculations/design/design';
import type { Worked } from '#shared/calculations/design/worked';
import { WIRING_WORDS } from '#shared/model/circuit-words';
import type { ReleaseDevice } from '#shared/model/plan';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { useFigures } from '../bench/use-plan.ts';
import { capitalised } from '../fields/capitalised.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { changedAt, freeId, without } from './list-edits.ts';
import { RowButtons } from './row-buttons.tsx';

const KINDS = { solenoid: 'Release solenoid', other: 'Something else' } as const satisfies Record<ReleaseDevice['kind'], string>;
/** How a device is wired, as it is asked. */
const WIRING = optionsOf(WIRING_WORDS).map(({ value, label }) => ({ value, label: capitalised(label) }));
const MOST_DEVICES = 200;

interface ReleaseDevicesProps {
  readonly devices: readonly ReleaseDevice[];
  readonly limits: UnitProfile['limits'] | undefined;
  readonly sums: Worked<ReleaseSums> | undefined;
  onCommit(devices: ReleaseDevice[]): void;
}

/** The devices on the releasing circuit, each at its place along the wire, with the voltage that reaches it. */
export function ReleaseDevices({ devices, limits, sums, onCommit }: ReleaseDevicesProps) {
  const { quantity } = useFigures();
  return (
    <>
      {devices.map((device, i) => {
        const change = (part: Partial<ReleaseDevice>): void => onCommit(changedAt(devices, i, part));
        /** What an empty field means: the solenoid's figure of the unit profile, where it has one. */
        const ofProfile = (typed: number | null, value: number | undefined, kind: 'current' | 'voltage') =>
          device.kind === 'solenoid' && value !== undefined
            ? { blank: quantity(value, kind), help: typed === null ? 'From the unit profile.' : undefined }
            : { blank: 'not known', help: undefined };
        const current = ofProfile(device.current_A, limits?.solenoidCurrent_A?.value, 'current');
        const voltage = ofProfile(device.leastVoltage_V, limits?.solenoidLeastVoltage_V?.value, 'voltage');
        const there = sums?.isKnown ? sums.sums.devices.find(({ id }) => id === device.id) : undefined;
        return (
          <fieldset className="part-fields" key={device.id}>
            <legend>{device.name || `Device ${i + 1}`}</legend>
            <div className="fields">
              <Choice label="What it is" value={device.kind} options={optionsOf(KINDS)} onCommit={(kind) => change({ kind })} wide />
              <TextField label="Name" value={device.name} onCommit={(name) => change({ name })} wide />
              <LengthField label="Wire from the panel" value={device.distance_m} least={0} blank={{ text: 'not known', commit: () => change({ distance_m: null }) }} onCommit={(distance_m) => change({ distance_m })} help="One way." />
              <QuantityField
                kind="current"
                label="Current"
                value={device.current_A}
                least={0}
                most={1000}
                blank={{ text: current.blank, commit: () => change({ current_A: null }) }}
                onCommit={(current_A) => change({ current_A })}
                help={current.help}
              />
              <QuantityField
                kind="voltage"
                label="Least voltage"
                value={device.leastVoltage_V}
                least={0}
                most={1000}
                blank={{ text: voltage.blank, commit: () => change({ leastVoltage_V: null }) }}
                onCommit={(leastVoltage_V) => change({ leastVoltage_V })}
                help={voltage.help}
              />
              <Choice
                label="Wired"
                value={device.wiring}
                options={WIRING}
                onCommit={(wiring) => change({ wiring })}
                help={device.wiring === 'tapped' ? 'The panel does not notice when a branch is cut off.' : undefined}
                wide
              />
            </div>
            <div className="row">
              <span className="quiet">{there ? `${quantity(there.voltage_V, 'voltage')} reach it.` : ''}</span>
              <RowButtons what={device.name || `device ${i + 1}`} onTakeOut={() => onCommit(without(devices, i))} />
            </div>
          </fieldset>
        );
      })}
      {sums && !sums.isKnown ? <p className="quiet">The voltage at each device is not worked out: {sums.because}</p> : null}
      {devices.length < MOST_DEVICES ? (
        <button
          type="button"
          className="button is-slim"
          onClick={() => onCommit([...devices, { id: freeId(devices, 'device'), name: `Device ${devices.length + 1}`, kind: 'other', distance_m: null, current_A: null, leastVoltage_V: null, wiring: 'unknown' }])}
        >
          Add a device
        </button>
      ) : null}
    </>
  );
}
