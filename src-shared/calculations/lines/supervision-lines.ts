import type { NetworkDesign, SupervisionSums } from '../design/design.ts';
import { expectedPressureBasis, pressureAfterLossBasis } from '../formulas/cylinder-gas.ts';
import { gaugeOf_Pa } from '../../units/convert.ts';
import type { Calculation } from './calculation.ts';
import { Draft, type LineContext, PLAN } from './draft.ts';
import { amount, gauge } from './line-text.ts';
import { limitSource } from './profile-source.ts';

/** What the gauge of a cylinder should read, and when the watch over it speaks up. */
export function supervisionLines(context: LineContext, network: NetworkDesign): Calculation {
  const { lengths } = context;
  const { ref, name, profile } = network;
  const draft = new Draft('supervision', 'Pressure supervision', ref, name);
  draft.with('gauge readings', network.supervision, (sums) => chartLines(draft, context, network, sums));
  const listed = profile?.limits.lowPressureSwitch_Pa;
  if (listed) draft.given("Switch of the unit turns over at", gauge(gaugeOf_Pa(listed.value), lengths), limitSource(context, ref.id, 'lowPressureSwitch_Pa'));
  const fitted = network.network.release?.pressureSwitch;
  if (fitted) {
    draft.given('Switch on the plan turns over at', gauge(gaugeOf_Pa(fitted.setPoint_Pa), lengths), PLAN);
    draft.given('Its contact on a charged cylinder', fitted.isClosedWhenCharged ? 'closed' : 'open', PLAN);
  } else draft.lacks('low-pressure switch', 'none is entered on the plan');
  return draft.done();
}

function chartLines(draft: Draft, context: LineContext, { ref }: NetworkDesign, { chart, fillPressure_Pa, fillTemperature_K }: SupervisionSums): void {
  const { lengths } = context;
  draft.given('Filled to, by the limits of the unit', gauge(gaugeOf_Pa(fillPressure_Pa), lengths), limitSource(context, ref.id, 'fillPressure_Pa'));
  draft.given('Temperature of that filling', amount(fillTemperature_K, 'temperature', lengths), 'filling practice of ISO 14520 and EN 15004');
  draft.step('Pressure of a full cylinder, by temperature', expectedPressureBasis, '', 'below');
  draft.step('Of one that has lost 5 %', pressureAfterLossBasis, '', 'of mass or of pressure, whichever shows first: below');
  for (const { temperature_K, full_Pa, reject_Pa } of chart) {
    const row = [`full ${gauge(full_Pa, lengths)}`, `take out of service at ${gauge(reject_Pa, lengths)} or less`].join('; ');
    draft.given(`Gauge at ${amount(temperature_K, 'temperature', lengths)}`, row, '');
  }
}
