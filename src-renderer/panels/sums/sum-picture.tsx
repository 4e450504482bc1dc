import type { Evaluation } from '#shared/evaluate';
import type { Calculation } from '#shared/calculations/lines/calculation';
import { isSameRef } from '#shared/model/plan';
import { CylinderChart } from '../charts/cylinder-chart.tsx';
import { DischargeCharts } from '../charts/discharge-charts.tsx';
import { FillBands } from '../charts/fill-bands.tsx';

/** The picture that belongs to a calculation, where there is one. */
export function SumPicture({ calculation: { topic, subject }, evaluation }: { readonly calculation: Calculation; readonly evaluation: Evaluation }) {
  const { design, derived } = evaluation;
  if (topic === 'agent') {
    const fill = design.enclosures.find(({ ref }) => isSameRef(ref, subject))?.fill;
    return fill?.isKnown ? <FillBands sums={fill.sums} /> : null;
  }
  const network = design.networks.find(({ ref }) => isSameRef(ref, subject));
  if (topic === 'supervision' && network?.supervision.isKnown && network.supervision.sums.chart.length > 1) return <CylinderChart key={network.ref.id} sums={network.supervision.sums} />;
  if (topic !== 'discharge' || !network?.discharge.isKnown) return null;
  const { sums } = network.discharge;
  const names = sums.input.spaces.map(({ id }) => derived.spaces.find(({ key }) => key === id)?.name ?? 'Room');
  return <DischargeCharts key={network.ref.id} sums={sums} enclosures={design.enclosures} spaceNames={names} oxygenBase_pct={derived.plan.basis.oxygenBase_pct} />;
}
