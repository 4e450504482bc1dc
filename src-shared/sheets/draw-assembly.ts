import { distanceToSegment_m } from '../geometry/segment.ts';
import type { Isometric } from '../isometric/layout-isometric.ts';
import { type LabelLine, addLabelWays } from './labels.ts';
import { doubleLine, line, pen } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import { assemblyPartWords } from './schedules.ts';
import { checkValveSymbol, cylinderSymbol, regulatorSymbol } from './symbols.ts';
import { type ViewDraft, addLine, inRoom, uprightBox } from './view-draft.ts';

/** Directions of the three axes on paper, both ways [rad]. */
const AXES_rad = [7, 11, 5, 1, 9, 3].map((twelfths) => (twelfths * Math.PI) / 6);
/** Paper for one valve, and before and behind them [mm at factor 1]. */
const PITCH_mm = 6;
const ENDS_mm = 11;

type Place = readonly [x: number, y: number];

/** The direction from the pipe's begin in which the assembly keeps clearest of the pipe. */
function clearestWay(view: ViewDraft, { runs }: Isometric, [x, y]: Place, reach: number, source: string): number {
  const { frame } = view;
  const rated = AXES_rad.map((angle) => {
    const end: Place = [x + Math.cos(angle) * reach, y - Math.sin(angle) * reach];
    const places = [0.25, 0.5, 0.75, 1].map((share) => ({ x: x + (end[0] - x) * share, y: y + (end[1] - y) * share, share }));
    const clear = runs.map((run) => {
      const segment = { a: { x: frame.x(run.a.x), y: frame.y(run.a.y) }, b: { x: frame.x(run.b.x), y: frame.y(run.b.y) } };
      const isHere = run.from === source || run.to === source;
      return Math.min(...places.map((place) => distanceToSegment_m(place, segment) / (isHere ? place.share : 1)));
    });
    return { angle, clear: Math.min(reach, ...clear) - (inRoom(view, ...end) ? 0 : 1000) };
  });
  return rated.reduce((best, each) => (each.clear > best.clear + 1e-6 ? each : best)).angle;
}

/** Draws cylinders and discharge assembly where the pipe begins: double before the regulator, single behind it. */
export function drawIsometricAssembly(view: ViewDraft, iso: Isometric): void {
  const { frame, sizes, placer } = view;
  const { factor } = sizes;
  const { network } = iso.network;
  const source = iso.nodes.find(({ isSource }) => isSource);
  const cylinders = Object.values(network.cylinders);
  if (!source || (cylinders.length === 0 && network.assembly.length === 0)) return;
  const valves = network.assembly.filter(({ kind }) => kind === 'regulator' || kind === 'check-valve');
  const start: Place = [frame.x(source.place.x), frame.y(source.place.y)];
  const reach = (ENDS_mm + valves.length * PITCH_mm) * factor;
  const away = clearestWay(view, iso, start, reach, source.id);
  const at = (mm: number): [number, number] => [start[0] + Math.cos(away) * mm, start[1] - Math.sin(away) * mm];
  const placeOf = (i: number): number => (5 + (valves.length - i - 0.5) * PITCH_mm) * factor;
  const lastRegulator = valves.findLastIndex(({ kind }) => kind === 'regulator');
  const high = lastRegulator < 0 ? 0 : placeOf(lastRegulator);

  if (high > 0) addLine(view, [...start, ...at(high)], line(pen(WEIGHT.heavy * factor, PRINT.cool), ...start, ...at(high)), 24);
  view.used.add('high-pressure');
  const doubled = [...at(reach), ...at(high)];
  addLine(view, doubled, doubleLine(PRINT.warm, factor, doubled), 24);
  const flow_rad = away + Math.PI;
  valves.forEach((valve, i) => {
    const [x, y] = at(placeOf(i));
    const isRegulator = valve.kind === 'regulator';
    view.used.add(isRegulator ? 'regulator' : 'check-valve');
    view.lines.push(...(isRegulator ? regulatorSymbol : checkValveSymbol)(x, y, valve.arrowDownstream ? flow_rad : away, factor));
    placer.block(uprightBox(x, y, 2.3 * factor, 2.3 * factor), 'assembly');
  });
  const [x, y] = at(reach);
  if (cylinders.length > 0) {
    view.used.add('cylinder');
    view.lines.push(...cylinderSymbol(x, y, 2.6 * factor, away, factor));
  }
  placer.block(uprightBox(x, y, 3.4 * factor, 3.4 * factor), 'assembly');
  const names = cylinders.map(({ name }) => name);
  const count = names.length === 0 ? 'no cylinder' : names.length === 1 ? `cylinder ${names[0]}` : `${names.length} cylinders, ${names[0]} to ${names.at(-1)}`;
  const words: LabelLine[] = [
    { text: count, font: 'bold' },
    ...network.assembly.map((part) => ({ text: assemblyPartWords(part, view.lengths) })),
    { text: lastRegulator < 0 ? 'no regulator drawn: all high pressure' : 'high pressure before the regulator' },
  ];
  const wish = { x, y, clearance_mm: 3.6 * factor, owner: 'assembly', toward_rad: away };
  addLabelWays(view, [words, [...words.slice(0, 1), ...words.slice(-1)], words.slice(0, 1)].map((lines) => ({ lines, wish })), 'the discharge assembly');
}
