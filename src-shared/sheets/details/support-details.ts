import { TURN_SUPPORT_m, nozzleSupportBasis, nozzleSupport_m, supportSpanBasis, supportSpan_m, turnSupportBasis } from '../../calculations/formulas/support-spans.ts';
import type { Derived } from '../../derived/derived.ts';
import { pipeZoneOf } from '../../derived/pipe-zone.ts';
import { PIPE_SIZES } from '../../profile/pipe-table.ts';
import { formatLength } from '../../units/length-text.ts';
import { sizeText } from '../sheet-text.ts';
import { fittingSymbol, nozzleSymbol, supportSymbol, zoneColour } from '../symbols.ts';
import { type ViewDraft, uprightBox } from '../view-draft.ts';
import { type Detail, sourcesText } from './detail.ts';
import { detailPen } from './detail-pen.ts';

const LINE = 40;
const TURN = 66;
const ORIFICE = 14;
const BEFORE_TURN = 52;
const BEFORE_THAT = 14;

function drawSupports(view: ViewDraft, derived: Derived, words: { readonly span: string; readonly turn: string; readonly nozzle: string }): void {
  const pen = detailPen(view);
  const { factor } = pen;
  const zone = derived.networks.some(({ network }) => pipeZoneOf(network) === 'low') ? 'low' : 'high';
  pen.pipe(zone, [4, LINE, TURN, LINE, TURN, ORIFICE + 1.3]);
  view.lines.push(...fittingSymbol(...pen.at(TURN, LINE), 'fitting', [Math.PI, -Math.PI / 2], zoneColour(zone), factor));
  const hold = (x: number, y: number, pipe_rad: number): void => {
    const [px, py] = pen.at(x, y);
    view.lines.push(...supportSymbol(px, py, 'rigid', { pipe_rad }, factor));
    view.placer.block(uprightBox(px, py, 2 * factor, 2.6 * factor), 'support');
  };
  hold(BEFORE_THAT, LINE, 0);
  hold(BEFORE_TURN, LINE, 0);
  hold(TURN, ORIFICE + 9, Math.PI / 2);
  const [x, y] = pen.at(TURN, ORIFICE);
  view.lines.push(...nozzleSymbol(x, y, [0, Math.PI], factor));
  view.placer.block(uprightBox(x, y, 4 * factor, 1.6 * factor), 'nozzle');
  pen.dimension(BEFORE_THAT, LINE + 9, BEFORE_TURN, LINE + 9, words.span);
  pen.dimension(BEFORE_TURN, LINE - 8, TURN, LINE - 8, words.turn);
  pen.dimension(TURN + 8, ORIFICE, TURN + 8, ORIFICE + 9, words.nozzle);
  pen.note(TURN, LINE, 'elbow or tee', 0.7);
  pen.note(TURN - 3, ORIFICE, 'nozzle', Math.PI);
}

/** Pipe supports: how far apart, near a turn and near a nozzle, by the basis of design. */
export function supportDetails(derived: Derived): Detail[] {
  const { basis, settings } = derived.plan;
  const { lengths } = settings;
  const used = new Set(derived.networks.flatMap(({ pipes }) => pipes.map(({ pipe }) => pipe.size)));
  const sizes = PIPE_SIZES.filter((size) => used.has(size));
  if (sizes.length === 0) return [];
  const lasts = [...new Set(sizes.map((size) => formatLength(nozzleSupport_m(basis.lastSupport, size), lengths)))];
  const spans = sizes.map((size) => {
    const span_m = supportSpan_m(basis.supportTable, size);
    return `${sizeText(size, lengths)} ${span_m === undefined ? 'not in the table' : formatLength(span_m, lengths)}`;
  });
  return [
    {
      title: 'Pipe supports',
      where: '',
      draw: (view) => drawSupports(view, derived, { span: 'span by size', turn: `at most ${formatLength(TURN_SUPPORT_m, lengths)}`, nozzle: lasts.length === 1 ? `at most ${lasts[0]}` : 'by size' }),
      notes: [
        `Greatest span: ${spans.join('; ')}.`,
        ...(lasts.length > 1 ? [`Last support to a nozzle: ${sizes.map((size) => `${sizeText(size, lengths)} ${formatLength(nozzleSupport_m(basis.lastSupport, size), lengths)}`).join('; ')}.`] : []),
        'Rigid where thrust acts: at nozzles, turns and tees. Slings and loose hangers only carry.',
      ],
      source: sourcesText([supportSpanBasis.source, nozzleSupportBasis.source, turnSupportBasis.source]),
      caution: supportSpanBasis.caution ?? '',
    },
  ];
}
