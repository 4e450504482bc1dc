import { type LogEntry, type Network, type Plan, type Ref, type Release, refKey } from '#shared/model/plan';
import { HOLD_POINTS } from '#shared/model/hold-points';
import { absoluteOf_Pa, bar_Pa, celsius_K, psi_Pa } from '#shared/units/convert';
import { place3, planBuilder } from './plan-builder.ts';
import { withRelease } from './releasing-circuit.ts';

/** Keys of what the readings of the plan are about. */
export interface ArmedKeys {
  readonly network: string;
  readonly nozzle: string;
  readonly cylinder: string;
  readonly enclosure: string;
}

/** The releasing circuit of the plan, otherwise as told. */
export const withReleaseOf = (given: Partial<Release>): Network['release'] => Object.values(withRelease(given).networks)[0]?.release ?? null;

/** A room with a cylinder, pipe, a nozzle and a releasing circuit: solenoid of 1.5 A and at least 18 V, 30 m of solid 14 AWG. */
export function armedPlan(release: Network['release'] = withReleaseOf({})): { readonly plan: Plan; readonly keys: ArmedKeys } {
  const built = planBuilder()
    .room(6, 4, 2.7)
    .network({ release })
    .cylinder(0.2, 2, Math.PI)
    .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(3, 2, 2.5), place3(3, 2, 2.3)])
    .nozzle(3, 2, 2.3);
  const [network] = Object.values(built.plan.networks);
  if (!network) throw new Error('The plan has no network.');
  const key = (kind: 'nozzle' | 'cylinder', things: Readonly<Record<string, unknown>>): string => refKey({ kind, network: network.id, id: Object.keys(things)[0] ?? '' } as Ref);
  return {
    plan: built.plan,
    keys: {
      network: refKey({ kind: 'network', id: network.id }),
      nozzle: key('nozzle', network.nozzles),
      cylinder: key('cylinder', network.cylinders),
      enclosure: refKey(built.enclosure),
    },
  };
}

/** A log entry that says only what is told. */
export const entry = (kind: LogEntry['kind'], about: string, given: Partial<LogEntry> = {}): LogEntry => ({
  id: `log-${kind}`, kind, about, value: null, isGood: null, temperature_K: null, by: 'Fitter', at: '2026-03-04 10:00', instrument: 'Meter 7', note: '', ...given,
});

/** Every reading that the hold points of the plan stand on, all kept, in the order of the work. The sample unit is filled to 300 bar gauge at 15 °C. */
export const goodLog = ({ network, nozzle, cylinder }: ArmedKeys): LogEntry[] => [
  entry('pipe-test', network, { value: psi_Pa(3) }),
  entry('puff', nozzle, { isGood: true }),
  entry('insulation', network, { value: 20e6 }),
  entry('continuity', network, { value: 0.8 }),
  entry('supervision', network, { value: 0.004 }),
  entry('alarm', network, { value: 1.55 }),
  entry('live', network, { value: 19.2 }),
  entry('panel-clear', '', { isGood: true }),
  entry('dead', network, { value: 0 }),
  entry('pressure', cylinder, { value: absoluteOf_Pa(bar_Pa(300)), temperature_K: celsius_K(15) }),
];

/** The plan with a log and with hold points ticked up to one, itself included. */
export function armedWith(log: readonly LogEntry[], upTo: string | null = null, from = armedPlan()): Plan {
  const { plan } = from;
  plan.siteRecord.log = log.map((each, i) => ({ ...each, id: `log-${1000 + i}` }));
  const last = HOLD_POINTS.findIndex(({ id }) => id === upTo);
  for (const { id } of HOLD_POINTS.slice(0, last + 1)) plan.siteRecord.checks[id] = { done: true, by: 'Fitter', witness: 'Inspector', at: '2026-03-04 12:00' };
  return plan;
}
