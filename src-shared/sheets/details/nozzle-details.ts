import { supportsOf } from '../../calculations/design/supports.ts';
import { nozzleSupportBasis } from '../../calculations/formulas/support-spans.ts';
import type { Derived, DerivedNozzle } from '../../derived/derived.ts';
import { lineEndsOf } from '../../derived/line-ends.ts';
import { pipeZoneOf } from '../../derived/pipe-zone.ts';
import { distance3_m } from '../../geometry/point.ts';
import type { Settings } from '../../model/plan.ts';
import { formatLength } from '../../units/length-text.ts';
import { PRINT, WEIGHT } from '../print-ink.ts';
import { nozzleName } from '../../derived/nozzle-name.ts';
import { degreesText, sizeText } from '../sheet-text.ts';
import { arrowHead, nozzleSymbol, supportSymbol } from '../symbols.ts';
import { type ViewDraft, uprightBox } from '../view-draft.ts';
import { type Detail, MOST_VARIANTS, alike, namesText, sourcesText } from './detail.ts';
import { detailPen } from './detail-pen.ts';

/** A nozzle with the lengths that a fitter builds its drop by. */
interface Drop {
  readonly nozzle: DerivedNozzle;
  readonly name: string;
  /** Last straight pipe to the orifice [m] and its size in words. */
  readonly last_m: number;
  readonly size: string;
  readonly isUpright: boolean;
  readonly hasTrap: boolean;
  readonly support_m: number | undefined;
  readonly allowed_m: number | undefined;
}

function dropsOf(derived: Derived): Drop[] {
  const { lengths } = derived.plan.settings;
  return derived.networks.flatMap((network) => {
    const supports = supportsOf(network, derived.plan.basis);
    const ends = new Map(lineEndsOf(network).map((end) => [end.nozzle.nozzle.id, end]));
    return network.nozzles.flatMap((nozzle): Drop[] => {
      const path = network.paths.find((each) => each.nozzle === nozzle.nozzle.id);
      const pipe = network.pipes.find((each) => each.pipe.id === path?.pipes.at(-1));
      if (!pipe || !nozzle.at) return [];
      const held = supports.isKnown ? supports.sums.nozzles.find(({ ref }) => ref.id === nozzle.nozzle.id) : undefined;
      const isUpright = pipe.upright !== null && Math.hypot(pipe.to.x - pipe.from.x, pipe.to.y - pipe.from.y) < 0.01;
      return [{ nozzle, name: nozzleName(derived, nozzle), last_m: distance3_m(pipe.from, pipe.to), size: sizeText(pipe.pipe.size, lengths), isUpright, hasTrap: (ends.get(nozzle.nozzle.id)?.trap.length ?? 0) > 0, support_m: held?.distance_m, allowed_m: held?.allowed_m }];
    });
  });
}

const CEILING = 52;
const PIPE = 40;
const ORIFICE = 16;
const MIDDLE = 40;

function drawDrop(view: ViewDraft, drop: Drop, lengths: Settings['lengths']): void {
  const pen = detailPen(view);
  const { factor } = pen;
  const zone = pipeZoneOf(drop.nozzle.network.network);
  const { localCeiling_m, at } = drop.nozzle;
  const below_m = localCeiling_m === undefined || !at ? undefined : localCeiling_m - at.z;
  const top = below_m === undefined || below_m >= drop.last_m ? PIPE : CEILING + 3;
  if (localCeiling_m !== undefined) {
    pen.box(4, CEILING, 80, 4, true);
    pen.note(10, CEILING, drop.nozzle.space?.kind === 'under-floor' ? 'floor above the void' : 'ceiling at this place', -0.6);
  }
  pen.pipe(zone, [8, top, drop.hasTrap ? 62 : MIDDLE, top]);
  pen.pipe(zone, [MIDDLE, top, MIDDLE, ORIFICE + 1.3]);
  if (drop.hasTrap) pen.note(62, top, 'dirt trap', 0.6);
  const [x, y] = pen.at(MIDDLE, ORIFICE);
  view.lines.push(...nozzleSymbol(x, y, [0, Math.PI], factor));
  view.placer.block(uprightBox(x, y, 4 * factor, 1.6 * factor), 'nozzle');
  pen.note(MIDDLE + 3, ORIFICE, 'final direction of the holes: mark it on the pipe', -0.9);
  if (drop.support_m !== undefined) {
    const held = Math.min(top - 6, ORIFICE + 8);
    const [sx, sy] = pen.at(MIDDLE, held);
    view.lines.push(...supportSymbol(sx, sy, 'rigid', { pipe_rad: Math.PI / 2 }, factor));
    view.placer.block(uprightBox(sx, sy, 2.4 * factor, 1.6 * factor), 'support');
    pen.dimension(MIDDLE - 12, ORIFICE, MIDDLE - 12, held, formatLength(drop.support_m, lengths));
    pen.note(MIDDLE - 2, held, 'rigid support', Math.PI * 0.9);
  }
  pen.dimension(MIDDLE + 14, ORIFICE, MIDDLE + 14, top, formatLength(drop.last_m, lengths));
  if (below_m !== undefined) pen.dimension(MIDDLE + 28, ORIFICE, MIDDLE + 28, CEILING, formatLength(below_m, lengths));
  pen.line(WEIGHT.hair, [MIDDLE + 4, ORIFICE, MIDDLE + 30, ORIFICE]);
  const [ax, ay] = pen.at(MIDDLE, (top + ORIFICE) / 2 - 2);
  view.lines.push(arrowHead(ax, ay, -Math.PI / 2, 2.6 * factor, zone === 'high' ? PRINT.warm : PRINT.cool));
}

/** Nozzle drops: pipe to the orifice, distance to the ceiling and to the last support, where holes end up. */
export function nozzleDetails(derived: Derived): Detail[] {
  const { lengths } = derived.plan.settings;
  const keyOf = ({ nozzle: { at, localCeiling_m, space }, last_m, size, isUpright, hasTrap, support_m }: Drop): string =>
    [formatLength(last_m, lengths), size, isUpright, hasTrap, at && localCeiling_m !== undefined ? formatLength(localCeiling_m - at.z, lengths) : '', support_m === undefined ? '' : formatLength(support_m, lengths), space?.kind].join('|');
  return alike(dropsOf(derived).filter(({ isUpright }) => isUpright), keyOf)
    .sort((a, b) => b.length - a.length)
    .slice(0, MOST_VARIANTS)
    .flatMap((group): Detail[] => {
      const [first] = group;
      if (!first) return [];
      const limits = first.nozzle.profile?.limits;
      const tilt = limits?.nozzleTilt_rad;
      return [
        {
          title: 'Nozzle drop',
          where: namesText(group.map(({ name }) => name)),
          draw: (view) => drawDrop(view, first, lengths),
          notes: [
            `Pipe ${first.size}, ${formatLength(first.last_m, lengths)} from the centre of the fitting to the orifice; the nipple is cut from the take-off.`,
            first.support_m === undefined ? 'No support is drawn on this pipe.' : `Last support ${formatLength(first.support_m, lengths)} from the orifice along the pipe; at most ${formatLength(first.allowed_m ?? Number.NaN, lengths)}.`,
            tilt ? `Straight down within ${degreesText(tilt.value)}.` : '',
            `Holes as drawn: ${group.slice(0, 6).map(({ name, nozzle }) => `${name} ${nozzle.holes_rad.map(degreesText).join(' ') || 'none drawn'}`).join('; ')}. 0° is plan east, 90° plan north.`,
          ].filter(Boolean),
          source: sourcesText([limits?.nozzleToCeiling_m?.source, nozzleSupportBasis.source]),
          caution: 'A tapered thread stops where it is tight: check the direction of the holes after tightening, never turn back to reach it. The last support takes the thrust.',
        },
      ];
    });
}
