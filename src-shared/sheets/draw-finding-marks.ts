import type { SpaceKind } from '../model/plan.ts';
import { textWidth_mm } from './font-widths.ts';
import { line, pen, text } from './marks.ts';
import type { NumberedFinding } from './findings-table.ts';
import type { PlanContent } from './plan-content.ts';
import { WEIGHT } from './print-ink.ts';
import { verdictMark } from './symbols.ts';
import { type ViewDraft, inRoom } from './view-draft.ts';

/** Marks stops and warnings where they are, with their number in the findings table. */
export function drawFindingMarks(view: ViewDraft, findings: readonly NumberedFinding[], content: PlanContent): void {
  const { frame, sizes } = view;
  const size = 3.4 * sizes.factor;
  const height = sizes.text_mm;
  for (const { number, finding } of findings) {
    const at = finding.place?.at[0];
    if (!at || finding.place?.level !== content.level.id || (finding.verdict !== 'stop' && finding.verdict !== 'warn')) continue;
    if (layerOfFinding(finding, content) !== content.layer) continue;
    const [x, y] = [frame.x(at.x), frame.y(at.y)];
    if (!inRoom(view, x, y)) continue;
    const words = String(number);
    const gap = 0.7 * sizes.factor;
    const width = size + gap + textWidth_mm(words, height, 'bold');
    const placed = view.placer.place({
      width_mm: width + 0.8 * sizes.factor,
      height_mm: size + 0.8 * sizes.factor,
      x,
      y,
      clearance_mm: 2.6 * sizes.factor,
      leaderAt_mm: size / 2,
      toward_rad: Math.PI * 0.75,
    });
    if (!placed) {
      view.unplaced.push(`the mark of finding ${number}`);
      continue;
    }
    if (placed.leader) view.lines.push(line(pen(WEIGHT.hair), ...placed.leader));
    const left = placed.box.x - width / 2;
    view.lines.push(...verdictMark(left + size / 2, placed.box.y, size, finding.verdict));
    view.texts.push(text(left + size + gap, placed.box.y + height / 2, words, { height_mm: height, font: 'bold', halo: true }));
  }
}

/** The layer in which the subject of a finding is drawn. */
function layerOfFinding(finding: NumberedFinding['finding'], content: PlanContent): SpaceKind {
  const { subject } = finding;
  if (subject.kind !== 'nozzle') return 'room';
  const network = content.networks.find((entry) => entry.network.ref.id === subject.network);
  return network?.network.nozzles.find(({ ref }) => ref.id === subject.id)?.space?.kind ?? 'room';
}
