import type { SpaceKind } from '../model/plan.ts';
import type { NumberedFinding } from './findings-table.ts';
import { addLabel } from './labels.ts';
import { placeName } from './place-name.ts';
import type { PlanContent } from './plan-content.ts';
import { type ViewDraft, inRoom } from './view-draft.ts';

/** Marks stops and warnings that nobody accepted where they are, with their number in the findings table. */
export function labelFindings(view: ViewDraft, findings: readonly NumberedFinding[], content: PlanContent): void {
  const { frame, sizes } = view;
  for (const { number, finding } of findings) {
    const at = finding.place?.at[0];
    if (!at || finding.waiver || finding.place?.level !== content.level.id || (finding.verdict !== 'stop' && finding.verdict !== 'warn')) continue;
    if (layerOfFinding(finding, content) !== content.layer) continue;
    const [x, y] = [frame.x(at.x), frame.y(at.y)];
    if (!inRoom(view, x, y)) continue;
    view.used.add(finding.verdict);
    addLabel(view, [{ text: String(number), font: 'bold', verdict: finding.verdict, place: placeName('finding', number), goesTo: placeName('finding-row', number) }], { x, y, clearance_mm: 2.6 * sizes.factor, toward_rad: Math.PI * 0.75 }, `the mark of finding ${number}`);
  }
}

/** The layer in which the subject of a finding is drawn. */
function layerOfFinding({ subject }: NumberedFinding['finding'], content: PlanContent): SpaceKind {
  if (subject.kind !== 'nozzle') return 'room';
  const network = content.networks.find((entry) => entry.network.ref.id === subject.network);
  return network?.network.nozzles.find(({ ref }) => ref.id === subject.id)?.space?.kind ?? 'room';
}
