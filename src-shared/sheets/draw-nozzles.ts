import { jetsOf } from '../derived/jets.ts';
import type { DerivedNozzle } from '../derived/derived.ts';
import { line, pen } from './marks.ts';
import type { NetworkContent } from './plan-content.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { dropText, heightText } from './sheet-text.ts';
import { NOZZLE_RADIUS_mm, NOZZLE_REACH_mm, arrowHead, nozzleSymbol } from './symbols.ts';
import { type LabelLine, addLabel } from './labels.ts';
import { type ViewDraft, addLine, onPaper, uprightBox } from './view-draft.ts';

/** Draws the rays of the holes to the first thing they hit. */
export function drawRays(view: ViewDraft, nozzles: readonly DerivedNozzle[]): void {
  const { frame, sizes } = view;
  for (const nozzle of nozzles) {
    for (const jet of jetsOf(nozzle)) {
      view.used.add('ray');
      const places = onPaper(frame, [jet.from, jet.to]);
      const stroke = pen(WEIGHT.hair, PRINT.quiet, [4 * sizes.factor, 1 * sizes.factor, 0.6 * sizes.factor, 1 * sizes.factor]);
      addLine(view, places, line(stroke, ...places), 2);
      view.lines.push(arrowHead(places[2] ?? 0, places[3] ?? 0, jet.azimuth_rad, 1.8 * sizes.factor, PRINT.quiet));
    }
  }
}

/** Draws the nozzles and keeps their paper free. */
export function drawNozzles(view: ViewDraft, nozzles: readonly DerivedNozzle[]): void {
  const { frame, sizes, placer } = view;
  for (const { at, holes_rad, ref } of nozzles) {
    if (!at) continue;
    view.used.add('nozzle');
    const [x = 0, y = 0] = onPaper(frame, [at]);
    view.lines.push(...nozzleSymbol(x, y, holes_rad, sizes.factor));
    const radius = NOZZLE_RADIUS_mm * sizes.factor;
    placer.block(uprightBox(x, y, radius, radius), ref.id);
    for (const hole of holes_rad) {
      const half = ((NOZZLE_REACH_mm - NOZZLE_RADIUS_mm) / 2) * sizes.factor;
      const middle = (NOZZLE_REACH_mm + NOZZLE_RADIUS_mm) * 0.5 * sizes.factor;
      placer.block({ x: x + Math.cos(hole) * middle, y: y - Math.sin(hole) * middle, halfWidth: half, halfHeight: 0.5 * sizes.factor, rotation_rad: hole }, ref.id);
    }
  }
}

/**
 * Writes a flag beside each nozzle: its name, the height of its orifice and its drop below the ceiling.
 * @param more further lines by nozzle id: distances from the datum that could not be drawn
 */
export function labelNozzles(view: ViewDraft, content: NetworkContent, more: ReadonlyMap<string, readonly string[]>): void {
  const { frame, lengths, sizes } = view;
  for (const nozzle of content.nozzles) {
    const { at, ref, localCeiling_m } = nozzle;
    if (!at) continue;
    const [x = 0, y = 0] = onPaper(frame, [at]);
    const words: LabelLine[] = [
      { text: nozzle.nozzle.name, font: 'bold', flag: true },
      { text: `orifice ${heightText(at.z, lengths)}`, font: 'bold' },
      { text: localCeiling_m === undefined ? 'ceiling not known' : dropText(localCeiling_m, at.z, nozzle.space?.kind, lengths) },
      ...(more.get(ref.id) ?? []).map((line) => ({ text: line })),
    ];
    addLabel(view, words, { x, y, clearance_mm: 2.4 * sizes.factor, owner: ref.id, toward_rad: Math.PI / 5 }, `nozzle ${nozzle.nozzle.name}`);
  }
}

/** Writes only the names of the nozzles. */
export function nameNozzles(view: ViewDraft, { nozzles }: NetworkContent): void {
  for (const { at, ref, nozzle } of nozzles) {
    if (!at) continue;
    const [x = 0, y = 0] = onPaper(view.frame, [at]);
    addLabel(view, [{ text: nozzle.name, font: 'bold', flag: true }], { x, y, clearance_mm: 2.4 * view.sizes.factor, owner: ref.id, toward_rad: Math.PI / 5 }, `nozzle ${nozzle.name}`);
  }
}
