import { type AssemblyLine, assemblyLine, clearestWays } from '../isometric/assembly-line.ts';
import type { Isometric } from '../isometric/layout-isometric.ts';
import type { IsoPlace } from '../isometric/project.ts';
import { PART_REACH_mm, assemblySymbol, manifoldSymbol, partSymbolName } from './assembly-symbols.ts';
import { type LabelLine, addLabelWays } from './labels.ts';
import { assemblyPartWords } from './schedules.ts';
import { cylinderSymbol, pipeLine } from './symbols.ts';
import { type ViewDraft, addLine, inRoom, uprightBox } from './view-draft.ts';

/** Paper for one part of the assembly along its line [mm at factor 1]. */
const PITCH_mm = 6;
const CYLINDER_mm = 2.6;
/** So many cylinders are drawn one by one where the paper has room. */
const MOST_CYLINDERS = 12;

/** Draws cylinders and discharge assembly where the pipe begins: double before the regulator, single behind it. */
export function drawIsometricAssembly(view: ViewDraft, iso: Isometric): void {
  const { frame, sizes, placer } = view;
  const { factor } = sizes;
  const { network } = iso.network;
  const source = iso.nodes.find(({ isSource }) => isSource);
  const cylinders = Object.values(network.cylinders);
  if (!source || (cylinders.length === 0 && network.assembly.length === 0)) return;
  const pitch = PITCH_mm * factor;
  const [startX, startY] = [frame.x(source.place.x), frame.y(source.place.y)];
  const at = ({ x, y }: IsoPlace): [number, number] => [startX + x * pitch, startY - y * pitch];
  const about = ({ x, y }: IsoPlace): IsoPlace => ({ x: (frame.x(x) - startX) / pitch, y: (startY - frame.y(y)) / pitch });
  const isInside = (place: IsoPlace): boolean => inRoom(view, ...at(place));
  const runs = iso.runs.map(({ a, b, from, to }) => ({ a: about(a), b: about(b), isHere: from === source.id || to === source.id }));
  const laid = (most: number): AssemblyLine => assemblyLine(network, clearestWays(network, runs, isInside, most), most);
  const all = laid(MOST_CYLINDERS);
  const hasRoom = cylinders.length <= MOST_CYLINDERS && all.lines.every(({ a, b }) => isInside(a) && isInside(b));
  const { lines, spots, cylinders: stands, flow_rad } = hasRoom ? all : laid(1);

  for (const { a, b, zone, isManifold } of lines) {
    const places = [...at(a), ...at(b)];
    if (zone === 'high') view.used.add('high-pressure');
    if (isManifold) view.used.add('manifold');
    addLine(view, places, isManifold ? manifoldSymbol(zone, factor, ...places) : pipeLine(zone, factor, ...places), 24);
  }
  for (const { part, zone, ...place } of spots) {
    const [x, y] = at(place);
    view.used.add(partSymbolName(part));
    view.lines.push(...assemblySymbol(x, y, part, flow_rad, zone, factor));
    placer.block(uprightBox(x, y, PART_REACH_mm * factor, PART_REACH_mm * factor), 'assembly');
  }
  for (const stand of stands) {
    const [x, y] = at(stand);
    view.used.add('cylinder');
    view.lines.push(...cylinderSymbol(x, y, CYLINDER_mm * factor, flow_rad + Math.PI, factor));
    placer.block(uprightBox(x, y, 3.4 * factor, 3.4 * factor), 'assembly');
  }
  labelAssembly(view, iso, at(stands[0] ?? lines.at(-1)?.b ?? { x: 0, y: 0 }), flow_rad + Math.PI);
}

/** Writes the cylinders, the parts in flow order and where high pressure ends. */
function labelAssembly(view: ViewDraft, iso: Isometric, [x, y]: readonly [number, number], toward_rad: number): void {
  const { network } = iso.network;
  const names = Object.values(network.cylinders).map(({ name }) => name);
  const count = names.length === 0 ? 'no cylinder' : names.length === 1 ? `cylinder ${names[0]}` : `${names.length} cylinders, ${names[0]} to ${names.at(-1)}`;
  const words: LabelLine[] = [
    { text: count, font: 'bold' },
    ...network.assembly.map((part) => ({ text: assemblyPartWords(part, view.lengths) })),
    { text: iso.zone === 'high' ? 'no regulator drawn: all high pressure' : 'high pressure before the regulator' },
  ];
  const wish = { x, y, clearance_mm: 3.6 * view.sizes.factor, owner: 'assembly', toward_rad };
  addLabelWays(view, [words, [...words.slice(0, 1), ...words.slice(-1)], words.slice(0, 1)].map((lines) => ({ lines, wish })), 'the discharge assembly');
}
