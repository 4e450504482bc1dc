import { editNetwork } from '#shared/commands/edit-network';
import type { Network, RefOf, Release } from '#shared/model/plan';
import { WIRE_GAUGES } from '#shared/model/schema';
import { goToForm } from '../../actions/go-to-form.ts';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useFigures, useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { useActionContext } from '../window-context.ts';
import { ConduitFields } from './conduit-fields.tsx';
import { ReleaseDevices } from './release-devices.tsx';
import { ReleasePanel } from './release-panel.tsx';
import { ReleaseWatch } from './release-watch.tsx';
import { END_OF_BATTERY_V, startingCircuit } from './start-circuit.ts';

const GREATEST_V = 1000;

/** The low-pressure switch: its set point and how its contact stands. */
function SwitchFields({ release, listed_Pa, change }: { readonly release: Release; /** Set point of the unit profile. */ readonly listed_Pa: number | undefined; change(part: Partial<Release>): void }) {
  const { quantity } = useFigures();
  const { pressureSwitch } = release;
  const take = (setPoint_Pa: number): void => change({ pressureSwitch: { setPoint_Pa, isClosedWhenCharged: pressureSwitch?.isClosedWhenCharged ?? true } });
  return (
    <div className="fields">
      <QuantityField
        kind="pressure"
        label="Low-pressure switch turns at (absolute)"
        value={pressureSwitch?.setPoint_Pa ?? null}
        least={0}
        most={1e8}
        blank={{ text: 'no switch entered', commit: () => change({ pressureSwitch: null }) }}
        onCommit={take}
        help={
          listed_Pa === undefined || pressureSwitch?.setPoint_Pa === listed_Pa ? (
            'On falling pressure.'
          ) : (
            <button type="button" className="link" onClick={() => take(listed_Pa)}>
              Take that of the unit, on falling pressure: {quantity(listed_Pa, 'pressure')}
            </button>
          )
        }
        wide
      />
      {pressureSwitch ? (
        <Choice
          label="Its contact while the cylinder is full"
          value={pressureSwitch.isClosedWhenCharged ? 'closed' : 'open'}
          options={[
            { value: 'closed', label: 'Closed' },
            { value: 'open', label: 'Open' },
          ]}
          onCommit={(stands) => change({ pressureSwitch: { ...pressureSwitch, isClosedWhenCharged: stands === 'closed' } })}
        />
      ) : null}
    </div>
  );
}

/** The releasing circuit of a network: supply, wire, devices, conduit and the switch that watches the cylinder. */
export function ReleaseSlip({ at, network }: { readonly at: RefOf<'network'>; readonly network: Network }) {
  const commit = useCommit();
  const context = useActionContext();
  const plan = useShownPlan();
  const { design } = useStore(selectEvaluation);
  const profile = plan.profiles[network.profile];
  const { release } = network;
  const sums = design.networks.find(({ ref }) => ref.id === at.id);
  if (!release) {
    return (
      <Slip title="Releasing circuit" part="release">
        <p className="quiet">Not drawn up: whether enough voltage reaches the solenoid is not checked.</p>
        <button
          type="button"
          className="button"
          onClick={() => {
            // The button goes: the keyboard goes on to what only the designer knows.
            if (commit(editNetwork(at, { release: startingCircuit() }))) goToForm(context, at, 'Wire from the panel');
          }}
        >
          Draw up the circuit
        </button>
      </Slip>
    );
  }
  const change = (part: Partial<Release>): void => {
    commit(editNetwork(at, { release: { ...release, ...part } }));
  };
  return (
    <Slip
      title="Releasing circuit"
      part="release"
      aside={
        <button type="button" className="button is-slim" onClick={() => commit(editNetwork(at, { release: null }))}>
          Take it away
        </button>
      }
    >
      <p className="field-help">The listing of panel and unit, and the electrical code, stand above these sums. Test it on a dummy load with the actuator off.</p>
      <div className="fields">
        <QuantityField
          kind="voltage"
          label="Supply at the end of battery"
          value={release.supply_V}
          least={0}
          most={GREATEST_V}
          onCommit={(supply_V) => change({ supply_V })}
          wide
          help={release.supply_V === END_OF_BATTERY_V ? '85 % of 24 V: UL 864 and NFPA 72 practice, memory. Enter what your panel’s manual states.' : 'As the panel’s manual states it.'}
        />
        <Choice label="Wire" value={release.wireGauge} options={WIRE_GAUGES.map((gauge) => ({ value: gauge, label: `${gauge} AWG copper` }))} onCommit={(wireGauge) => change({ wireGauge })} />
        <Choice
          label="Made of"
          value={release.stranding}
          options={[
            { value: 'solid', label: 'One solid wire' },
            { value: 'stranded', label: 'Strands' },
          ]}
          onCommit={(stranding) => change({ stranding })}
        />
      </div>
      <h4>On the circuit</h4>
      <ReleaseDevices devices={release.devices} limits={profile?.limits} sums={sums?.release} onCommit={(devices) => change({ devices })} />
      <ReleaseWatch release={release} onCommit={change} />
      <h4>Releasing output of the panel</h4>
      <div className="fields">
        <QuantityField kind="current" label="Current it gives" value={release.panelCurrent_A} least={0} most={1000} blank={{ text: 'not known', commit: () => change({ panelCurrent_A: null }) }} onCommit={(panelCurrent_A) => change({ panelCurrent_A })} />
        <QuantityField kind="time" label="For how long" value={release.panelPulse_s} least={0} most={3600} blank={{ text: 'not known', commit: () => change({ panelPulse_s: null }) }} onCommit={(panelPulse_s) => change({ panelPulse_s })} />
      </div>
      <ReleasePanel release={release} battery={sums?.battery} onCommit={change} />
      <h4>Conduit</h4>
      <ConduitFields release={release} fill={sums?.conduit} onCommit={change} />
      <h4>Watching over the cylinder</h4>
      <SwitchFields release={release} listed_Pa={profile?.limits.lowPressureSwitch_Pa?.value} change={change} />
    </Slip>
  );
}
