import { refKey } from '#shared/model/plan';
import { formatAgainstLimit, formatLength } from '#shared/units/length-text';
import type { SectionLook } from './draw-section.ts';
import { type LabelWish, placeLabels } from './label-placer.ts';
import { textWidth_px, write } from './lettering.ts';
import { ceilingDrop_m } from './live-distances.ts';
import { type Pen, type Px, disc, line, setLine } from './pen.ts';
import type { SectionCut, SectionNozzle } from './section-cut.ts';
import { type SectionView, sectionPx } from './section-view.ts';
import { drawNozzleFromSide } from './symbols/nozzle-symbol.ts';
import { drawVerdict } from './symbols/verdict-mark.ts';

/** Half the width of the band in which an orifice may hang [px]. */
const BAND_HALF_px = 26;

interface NozzleDrop {
  readonly nozzle: SectionNozzle;
  readonly at: Px;
  readonly ceiling: Px | undefined;
  readonly text: string;
  readonly isKept: boolean | undefined;
}

/** Nozzles with the band in which the orifice may hang, and how far each hangs below its ceiling. */
export function drawSectionNozzles(pen: Pen, view: SectionView, cut: SectionCut, look: SectionLook): void {
  const drops = cut.nozzles.map((nozzle) => dropOf(view, nozzle, look));
  for (const drop of drops) drawBand(pen, view, drop, look);
  for (const { nozzle, at } of drops) {
    const isMarked = look.selection.has(refKey(nozzle.nozzle.ref));
    pen.globalAlpha = nozzle.isBeyond ? 0.8 : 1;
    if (isMarked) {
      pen.globalAlpha = 0.3;
      disc(pen, at, 14, look.ink.selection);
      pen.globalAlpha = 1;
    }
    drawNozzleFromSide(pen, at, { colour: isMarked ? look.ink.selection : look.ink.ink, paper: look.ink.paper });
    pen.globalAlpha = 1;
  }
  drawDropTexts(pen, drops, look);
}

function dropOf(view: SectionView, nozzle: SectionNozzle, { lengths }: SectionLook): NozzleDrop {
  const { nozzle: derived, at } = nozzle;
  const drop_m = ceilingDrop_m(derived);
  const limit_m = derived.profile?.limits.nozzleToCeiling_m?.value;
  const ceiling = derived.localCeiling_m === undefined ? undefined : sectionPx(view, { s: at.s, z: derived.localCeiling_m });
  const isKept = drop_m === undefined || limit_m === undefined ? undefined : drop_m >= -1e-9 && drop_m <= limit_m + 1e-9;
  const name = derived.nozzle.name ? `${derived.nozzle.name} ` : '';
  const shown =
    drop_m === undefined ? 'ceiling not known' : isKept === false && limit_m !== undefined && drop_m > 0 ? `${formatAgainstLimit(drop_m, limit_m, lengths).value} below ceiling` : `${formatLength(drop_m, lengths)} below ceiling`;
  return { nozzle, at: sectionPx(view, at), ceiling, text: `${name}at ${formatLength(at.z, lengths)}, ${shown}`, isKept };
}

/** The band from the ceiling down to the greatest drop, and the measured drop beside the nozzle. */
function drawBand(pen: Pen, view: SectionView, { nozzle, at, ceiling, isKept }: NozzleDrop, { ink }: SectionLook): void {
  const limit_m = nozzle.nozzle.profile?.limits.nozzleToCeiling_m?.value;
  if (!ceiling) return;
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
  const colour = isKept === false ? ink.verdict.stop : isKept ? ink.verdict.ok : ink.verdict['not-checked'];
  const x = at.x + 17;
  setLine(pen, { colour, width: 1.5 });
  line(pen, { x, y: at.y }, { x, y: ceiling.y });
  for (const y of [at.y, ceiling.y]) line(pen, { x: x - 3, y }, { x: x + 3, y });
}

/** Height and drop of every nozzle, below it or beside it where there is room. */
function drawDropTexts(pen: Pen, drops: readonly NozzleDrop[], { ink }: SectionLook): void {
  const wishes = drops.map(({ nozzle, at, text }): LabelWish => {
    const width = textWidth_px(pen, text, { bold: true }) + 18;
    return {
      key: refKey(nozzle.nozzle.ref),
      width,
      height: 16,
      must: true,
      spots: [
        { x: at.x - width / 2, y: at.y + 10 },
        { x: at.x + 26, y: at.y - 6 },
        { x: at.x - width - 26, y: at.y - 6 },
        { x: at.x - width / 2, y: at.y + 28 },
        { x: at.x - width / 2, y: at.y + 46 },
      ],
    };
  });
  const boxes = placeLabels(wishes, { boxes: drops.map(({ at }) => ({ x: at.x - 10, y: at.y - 10, width: 20, height: 18 })), lines: [] });
  for (const { nozzle, text, isKept } of drops) {
    const box = boxes.get(refKey(nozzle.nozzle.ref));
    if (!box) continue;
    const verdict = isKept === false ? 'stop' : isKept ? 'ok' : 'not-checked';
    drawVerdict(pen, { x: box.x + 7, y: box.y + 8 }, verdict, ink, 6);
    write(pen, text, { x: box.x + 17, y: box.y + 8 }, { colour: isKept === false ? ink.verdict.stop : ink.ink, halo: ink.paper, bold: true });
  }
}
