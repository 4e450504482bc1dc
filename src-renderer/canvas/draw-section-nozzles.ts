import { refKey } from '#shared/model/plan';
import type { SectionLook } from './draw-section.ts';
import { textWidth_px, write } from './lettering.ts';
import { type Pen, disc, line, setLine } from './pen.ts';
import type { SectionCut } from './section-cut.ts';
import type { SectionNozzle } from './section-things.ts';
import { isDropKept, sectionTexts } from './section-texts.ts';
import { type SectionView, sectionPx } from './section-view.ts';
import { drawNozzleFromSide } from './symbols/nozzle-symbol.ts';
import { drawVerdict } from './symbols/verdict-mark.ts';

/** Half the width of the band in which an orifice may hang [px]. */
const BAND_HALF_px = 26;

/** Nozzles with the band in which the orifice may hang, and how far each hangs below its ceiling. */
export function drawSectionNozzles(pen: Pen, view: SectionView, cut: SectionCut, look: SectionLook): void {
  for (const nozzle of cut.nozzles) drawBand(pen, view, nozzle, look);
  for (const { nozzle, at, isBeyond } of cut.nozzles) {
    const p = sectionPx(view, at);
    const isMarked = look.selection.has(refKey(nozzle.ref));
    if (isMarked) {
      pen.globalAlpha = 0.3;
      disc(pen, p, 14, look.ink.selection);
    }
    pen.globalAlpha = isBeyond ? 0.8 : 1;
    drawNozzleFromSide(pen, p, { colour: isMarked ? look.ink.selection : look.ink.ink, paper: look.ink.paper });
    pen.globalAlpha = 1;
  }
}

/** The band from the ceiling down to the greatest drop, and the measured drop beside the nozzle. */
function drawBand(pen: Pen, view: SectionView, nozzle: SectionNozzle, { ink }: SectionLook): void {
  const { localCeiling_m, profile } = nozzle.nozzle;
  if (localCeiling_m === undefined) return;
  const at = sectionPx(view, nozzle.at);
  const ceiling = sectionPx(view, { s: nozzle.at.s, z: localCeiling_m });
  const limit_m = profile?.limits.nozzleToCeiling_m?.value;
  if (limit_m !== undefined) {
    const low = ceiling.y + limit_m * view.scale_px_m;
    pen.globalAlpha = 0.12;
    pen.fillStyle = ink.verdict.ok;
    pen.fillRect(at.x - BAND_HALF_px, ceiling.y, 2 * BAND_HALF_px, low - ceiling.y);
    pen.globalAlpha = 1;
    setLine(pen, { colour: ink.verdict.ok, width: 1.25 });
    line(pen, { x: at.x - BAND_HALF_px, y: low }, { x: at.x + BAND_HALF_px, y: low });
    for (const side of [-1, 1]) line(pen, { x: at.x + side * BAND_HALF_px, y: low }, { x: at.x + side * BAND_HALF_px, y: low - 4 });
  }
  const kept = isDropKept(nozzle);
  const x = at.x + 17;
  setLine(pen, { colour: kept === false ? ink.verdict.stop : kept ? ink.verdict.ok : ink.verdict['not-checked'], width: 1.5 });
  line(pen, { x, y: at.y }, { x, y: ceiling.y });
  for (const y of [at.y, ceiling.y]) line(pen, { x: x - 3, y }, { x: x + 3, y });
}

/** Every text inside the section. */
export function drawSectionTexts(pen: Pen, view: SectionView, cut: SectionCut, { ink, lengths, selection }: SectionLook): void {
  const measure = (text: string, bold: boolean): number => textWidth_px(pen, text, { bold });
  for (const { text, colour, bold, verdict, box } of sectionTexts(cut, { view, ink, lengths, selection, measure })) {
    const y = box.y + box.height / 2;
    if (verdict) drawVerdict(pen, { x: box.x + 7, y }, verdict, ink, 6);
    write(pen, text, { x: box.x + (verdict ? 17 : 1), y }, { colour, bold, halo: ink.paper });
  }
}
