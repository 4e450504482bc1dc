import { pipeZoneOf } from '../../derived/pipe-zone.ts';
import type { Derived, DerivedNetwork } from '../../derived/derived.ts';
import { assemblyLine } from '../../isometric/assembly-line.ts';
import type { Settings } from '../../model/plan.ts';
import { formatLength } from '../../units/length-text.ts';
import { assemblySymbol, manifoldSymbol } from '../assembly-symbols.ts';
import { assemblyPartWords } from '../schedules.ts';
import { arrowHead, cylinderSymbol, zoneColour } from '../symbols.ts';
import type { ViewDraft } from '../view-draft.ts';
import { uprightBox } from '../view-draft.ts';
import { type Detail, MOST_VARIANTS, alike, namesText, sourcesText } from './detail.ts';
import { detailPen } from './detail-pen.ts';

/** Paper for one part, and the height of the line that the pipe leaves on [mm]. */
const PITCH = 13;
const RIGHT = 74;
const LINE = 38;

function drawAssembly(view: ViewDraft, network: DerivedNetwork, lengths: Settings['lengths']): void {
  const pen = detailPen(view);
  const { factor } = pen;
  const { lines, spots, cylinders, flow_rad } = assemblyLine(network.network, { away_rad: Math.PI, row_rad: -Math.PI / 2 }, 2);
  const parts = network.network.assembly.length;
  const pitch = Math.min(PITCH, (RIGHT - 12) / (parts + 3));
  const place = ({ x, y }: { readonly x: number; readonly y: number }): [number, number] => [RIGHT + x * pitch, LINE + y * pitch * 1.2];
  const zone = pipeZoneOf(network.network);
  for (const { a, b, zone: side, isManifold } of lines) {
    if (isManifold) {
      view.lines.push(...manifoldSymbol(side, factor, ...pen.at(...place(a)), ...pen.at(...place(b))));
      const [mx, my] = place({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
      pen.note(mx + 1.3, my, String(network.network.assembly.findIndex(({ kind }) => kind === 'manifold') + 1), 0);
    } else pen.pipe(side, [...place(a), ...place(b)]);
  }
  pen.pipe(zone, [...place({ x: 0, y: 0 }), RIGHT + 10, LINE]);
  view.lines.push(arrowHead(...pen.at(RIGHT + 9, LINE), 0, 2.6 * factor, zoneColour(zone)));
  pen.note(RIGHT + 5, LINE, 'to the pipe', -Math.PI / 2);
  for (const { part, zone: side, ...at } of spots) {
    const [x, y] = pen.at(...place(at));
    view.lines.push(...assemblySymbol(x, y, part, flow_rad, side, factor));
    view.placer.block(uprightBox(x, y, 2.4 * factor, 2.4 * factor), 'part');
  }
  spots
    .filter(({ part }, i) => spots.findIndex((each) => each.part === part) === i)
    .forEach(({ part, ...at }, i) => {
      const [x, y] = place(at);
      pen.note(x, y + 1.8, [String(network.network.assembly.indexOf(part) + 1), ...(part.kind === 'regulator' ? [assemblyPartWords(part, lengths).replace(/^.* set to/, 'set to')] : [])], i % 2 === 0 ? Math.PI / 2 : Math.PI / 2.2);
    });
  cylinders.forEach((at, i) => {
    const [x, y] = pen.at(...place(at));
    view.lines.push(...cylinderSymbol(x, y, 2.8 * factor, Math.PI, factor));
    view.placer.block(uprightBox(x, y, 4 * factor, 3.4 * factor), 'cylinder');
    const names = Object.values(network.network.cylinders).map(({ name }) => name);
    const [px, py] = place(at);
    if (i === 0) pen.note(px, py + 2.6, names[0] ?? '', Math.PI / 2);
    else pen.note(px, py - 2.6, names.length > 2 ? `and so on to ${names.at(-1)}` : (names[1] ?? ''), -Math.PI / 2);
  });
}

/** Order of the discharge assembly, with arrows and set pressure, high and low pressure told apart. */
export function assemblyDetails({ networks, plan }: Derived): Detail[] {
  const { lengths } = plan.settings;
  const asked = networks.filter(({ network }) => network.assembly.length > 0);
  const keyOf = ({ network, profile }: DerivedNetwork): string =>
    JSON.stringify([network.assembly.map(({ kind, name, setPressure_Pa, arrowDownstream, length_m }) => [kind, name, setPressure_Pa, arrowDownstream, kind === 'hose' || kind === 'manifold' ? 0 : length_m]), Math.min(2, Object.keys(network.cylinders).length), profile?.id]);
  return alike(asked, keyOf)
    .slice(0, MOST_VARIANTS)
    .flatMap((group): Detail[] => {
      const [first] = group;
      if (!first) return [];
      const order = first.profile?.assemblyOrder;
      const split = first.network.assembly.findIndex(({ kind }) => kind === 'manifold');
      return [
        {
          title: 'Discharge assembly',
          where: namesText(group.map(({ network }) => network.name)),
          draw: (view) => drawAssembly(view, first, lengths),
          notes: [
            ...first.network.assembly.map((part, i) => `${i + 1} ${assemblyPartWords(part, lengths)}${part.length_m > 0 && part.kind !== 'manifold' ? `, ${formatLength(part.length_m, lengths)} long` : ''}${split > 0 && i < split ? ', one at each cylinder' : ''}.`),
            first.network.assembly.some(({ kind }) => kind === 'regulator') ? 'Double line: high pressure, that of the cylinder. Single line: behind the regulator.' : 'No regulator is entered: all of it, and all pipe, stands under the pressure of the cylinder.',
            order ? 'The order and the arrows must agree with the manual.' : 'The order of the manual is blank in the unit profile: take it from the manual.',
          ],
          source: sourcesText([first.profile?.limits.regulatorPressure_Pa?.source, 'assembly as entered in the plan']),
          caution: 'A valve built in backwards blocks the discharge: look at each arrow before tightening. Never open the cylinder valve before the pipe is complete and held.',
        },
      ];
    });
}
