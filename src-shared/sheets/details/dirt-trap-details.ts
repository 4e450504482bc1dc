import type { Derived, DerivedNetwork } from '../../derived/derived.ts';
import { lineEndsOf } from '../../derived/line-ends.ts';
import { pipeZoneOf } from '../../derived/pipe-zone.ts';
import { inches_m } from '../../units/convert.ts';
import { formatLength } from '../../units/length-text.ts';
import { nozzleName } from '../../derived/nozzle-name.ts';
import { sizeText } from '../sheet-text.ts';
import { arrowHead, fittingSymbol, nozzleSymbol, zoneColour } from '../symbols.ts';
import { type ViewDraft, uprightBox } from '../view-draft.ts';
import { type Detail, MOST_VARIANTS, alike, namesText } from './detail.ts';
import { detailPen } from './detail-pen.ts';

/** Least pipe of a dirt trap [m]. Source: NFPA 2001:2018, 50 mm. */
const LEAST_m = inches_m(2);
const LINE = 38;
const TEE = 38;
const CAP = 70;
const ORIFICE = 14;

interface Trap {
  readonly network: DerivedNetwork;
  readonly name: string;
  readonly length_m: number;
  readonly size: string;
}

function drawTrap(view: ViewDraft, { network, length_m, size }: Trap, length: string): void {
  const pen = detailPen(view);
  const { factor } = pen;
  const zone = pipeZoneOf(network.network);
  const colour = zoneColour(zone);
  pen.pipe(zone, [6, LINE, CAP, LINE]);
  pen.pipe(zone, [TEE, LINE, TEE, ORIFICE + 1.3]);
  view.lines.push(
    ...fittingSymbol(...pen.at(TEE, LINE), 'fitting', [Math.PI, 0, -Math.PI / 2], colour, factor),
    ...fittingSymbol(...pen.at(CAP, LINE), 'dirt-trap', [Math.PI], colour, factor),
    arrowHead(...pen.at(22, LINE), 0, 2.8 * factor, colour),
    ...nozzleSymbol(...pen.at(TEE, ORIFICE), [0, Math.PI], factor),
  );
  const [x, y] = pen.at(TEE, ORIFICE);
  view.placer.block(uprightBox(x, y, 4 * factor, 1.6 * factor), 'nozzle');
  pen.note(TEE, LINE + 1, 'tee', Math.PI / 2);
  pen.note(CAP, LINE + 2, 'cap, to be taken off for cleaning', Math.PI / 2);
  pen.note(TEE + 4, ORIFICE, 'last nozzle of the line', -0.7);
  pen.note((TEE + CAP) / 2, LINE, `nipple ${size}`, Math.PI / 2);
  pen.dimension(TEE, LINE - 9, CAP, LINE - 9, length_m > 0 ? length : '');
}

/** Dirt traps: the capped nipple beyond the tee of the last nozzle of each line. */
export function dirtTrapDetails(derived: Derived): Detail[] {
  const { lengths } = derived.plan.settings;
  const traps = derived.networks.flatMap((network) =>
    lineEndsOf(network).flatMap(({ nozzle, trap }): Trap[] => {
      const pipes = network.pipes.filter(({ ref }) => trap.includes(ref.id));
      const [first] = pipes;
      return first ? [{ network, name: nozzleName(derived, nozzle), length_m: pipes.reduce((sum, each) => sum + each.length_m, 0), size: sizeText(first.pipe.size, lengths) }] : [];
    }),
  );
  return alike(traps, ({ length_m, size }) => `${formatLength(length_m, lengths)} ${size}`)
    .slice(0, MOST_VARIANTS)
    .flatMap((group): Detail[] => {
      const [first] = group;
      if (!first) return [];
      const length = formatLength(first.length_m, lengths);
      return [
        {
          title: 'Dirt trap',
          where: `beyond ${namesText([...new Set(group.map(({ name }) => name))])}`,
          draw: (view) => drawTrap(view, first, length),
          notes: [`${length} from the centre of the tee to the end. The nipple itself is at least ${formatLength(LEAST_m, lengths)} long.`, 'Blow the pipe out before the caps are put on and the nozzles are screwed in.'],
          source: 'NFPA 2001:2018: a tee with a capped nipple at the end of each line, at least 2 in (50 mm)',
          caution: 'Cuttings that are left in the pipe stop an orifice. Take the cap off only with the unit locked out and no pressure in the pipe.',
        },
      ];
    });
}
