import { boundsOf, isInside } from '../geometry/outline.ts';
import type { Adjoining } from '../model/plan.ts';
import { ADJOINING_WORDS, GAS_WORDS } from '../model/surroundings-words.ts';
import { formatLength } from '../units/length-text.ts';
import { addLabelWays } from './labels.ts';
import { pen, segments } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { type ViewDraft, addLine, onPaper } from './view-draft.ts';

/** Distance of the slanted strokes and their length [mm at factor 1]. */
const EVERY_mm = 7;
const STROKE_mm = 3.2;

/** Draws spaces beside, under and over the enclosures: a thin broken outline with sparse slanted strokes. */
export function drawAdjoining(view: ViewDraft, spaces: readonly Adjoining[]): void {
  const { frame, sizes } = view;
  const { factor } = sizes;
  for (const { outline } of spaces) {
    view.used.add('adjoining');
    const places = onPaper(frame, outline);
    addLine(view, places, { kind: 'line', places, closed: true, stroke: pen(WEIGHT.thin * factor, PRINT.quiet, [4 * factor, factor, 0.8 * factor, factor]) }, 6, true);
    const { minX, minY, maxX, maxY } = boundsOf(outline);
    const step_m = (EVERY_mm * factor) / frame.mm(1);
    const run_m = (STROKE_mm * factor) / frame.mm(1);
    const strokes: number[] = [];
    let row = 0;
    for (let y = minY + step_m / 2; y < maxY; y += step_m, row += 1) {
      for (let x = minX + step_m * (row % 2 === 0 ? 0.25 : 0.75); x < maxX; x += step_m) {
        const ends = [{ x, y }, { x: x + run_m * 0.5, y: y + run_m * 0.87 }];
        if (ends.every((p) => isInside(p, outline))) strokes.push(...onPaper(frame, ends));
      }
    }
    view.under.push(segments(pen(WEIGHT.hair, PRINT.faint), strokes));
  }
}

/** What an adjoining space is and what was found of gas in it; its floor where it is not level with ours. */
export function labelAdjoining(view: ViewDraft, spaces: readonly Adjoining[], isBrief = false): void {
  const { frame, lengths } = view;
  for (const { name, kind, gas, floor_m, outline } of spaces) {
    const { minX, minY, maxX, maxY } = boundsOf(outline);
    const word = kind === 'unknown' ? 'kind not known' : ADJOINING_WORDS[kind].toLowerCase();
    const title = { text: name.toLowerCase().includes(word) ? name : `${name}, ${word}`, font: 'bold' as const };
    const floor = floor_m === 0 ? [] : [{ text: `floor ${formatLength(Math.abs(floor_m), lengths)} ${floor_m < 0 ? 'lower' : 'higher'}` }];
    const found = { text: gas === 'not-assessed' ? 'gas: NOBODY HAS LOOKED' : `gas: ${GAS_WORDS[gas].charAt(0).toLowerCase()}${GAS_WORDS[gas].slice(1)}` };
    const spots = [0, 1, -1, 2, -2].flatMap((i) => [0, 1, -1].flatMap((j) => [frame.x((minX + maxX) / 2 + (i * (maxX - minX)) / 6), frame.y((minY + maxY) / 2 + (j * (maxY - minY)) / 5)]));
    const [x = 0, y = 0] = spots;
    const wish = { x, y, clearance_mm: 0.6, spots, isLoose: true };
    addLabelWays(view, [...(isBrief ? [] : [{ lines: [title, ...floor, found], wish }]), { lines: [title], wish }], name);
  }
}
