import { type PlanPoint, bearing_rad, distance_m } from '../geometry/point.ts';
import { assemblyRunOf } from '../derived/assembly-run.ts';
import type { Cylinder } from '../model/plan.ts';
import { PIECES_mm_m, drawAssemblyRun } from './draw-assembly-run.ts';
import { doubleLine } from './marks.ts';
import type { NetworkContent } from './plan-content.ts';
import { PRINT } from './print-ink.ts';
import { checkValveSymbol, cylinderSymbol, regulatorSymbol } from './symbols.ts';
import { addLabel } from './labels.ts';
import { type ViewDraft, addLine, onPaper, uprightBox } from './view-draft.ts';

/** Drawn diameter while the profile gives none [m]: a symbol only, and too small to be mistaken for a measure. */
const UNKNOWN_DIAMETER_m = 0.2;

const radiusOf = ({ network: { profile } }: NetworkContent): number => (profile?.limits.cylinderDiameter_m?.value ?? UNKNOWN_DIAMETER_m) / 2;

/** Cylinders from the one farthest from the pipe's begin to the nearest. */
function inFlowOrder({ network }: NetworkContent): { readonly cylinders: readonly Cylinder[]; readonly source: PlanPoint | undefined } {
  const source = network.network.source ? network.network.nodes[network.network.source]?.at : undefined;
  const cylinders = Object.values(network.network.cylinders);
  return { cylinders: source ? cylinders.sort((a, b) => distance_m(b.at, source) - distance_m(a.at, source)) : cylinders, source };
}

/** Draws cylinders and, as a double line, the discharge assembly from them to where the pipe begins. */
export function drawCylinders(view: ViewDraft, content: NetworkContent): void {
  if (!content.hasCylinders) return;
  const { frame, sizes, placer } = view;
  const { cylinders, source } = inFlowOrder(content);
  const radius = Math.max(frame.mm(radiusOf(content)), 1.4 * sizes.factor);
  const last = cylinders.at(-1);
  const run = assemblyRunOf(content.network);
  const isBuilt = run.isPlaced && frame.mm(1) >= PIECES_mm_m * sizes.factor;
  if (!isBuilt && source && last) {
    const chain = onPaper(frame, [...cylinders.map(({ at }) => at), source]);
    const isShown = frame.mm(distance_m(cylinders[0]?.at ?? source, source)) > radius;
    if (isShown) {
      view.used.add('high-pressure');
      addLine(view, chain, doubleLine(PRINT.warm, sizes.factor, chain), 12);
      drawAssembly(view, content, last.at, source, radius);
    }
  }
  for (const cylinder of cylinders) {
    view.used.add('cylinder');
    const [x = 0, y = 0] = onPaper(frame, [cylinder.at]);
    view.lines.push(...cylinderSymbol(x, y, radius, cylinder.back_rad, sizes.factor));
    placer.block(uprightBox(x, y, radius, radius), cylinder.id);
  }
  if (isBuilt) drawAssemblyRun(view, run.pieces.filter(({ cylinder }) => cylinder === null || cylinders.some(({ id }) => id === cylinder)).map((piece) => ({ piece, places: onPaper(frame, piece.curve) })));
}

/** Valves of the assembly on its last stretch, as many as it has room for, nearest to the pipe last. */
function drawAssembly(view: ViewDraft, { network }: NetworkContent, from: PlanPoint, source: PlanPoint, radius: number): void {
  const { frame, sizes } = view;
  const free = frame.mm(distance_m(from, source)) - radius;
  const valves = network.network.assembly.filter(({ kind }) => kind === 'regulator' || kind === 'check-valve');
  const pitch = 5 * sizes.factor;
  const shown = valves.slice(-Math.max(0, Math.floor((free - 1.5 * sizes.factor) / pitch)) || valves.length);
  if (shown.length * pitch > free) return;
  const flow_rad = bearing_rad(from, source);
  shown.forEach((part, i) => {
    const back = (shown.length - i - 0.5) * (free / shown.length);
    const x = frame.x(source.x) - Math.cos(flow_rad) * back;
    const y = frame.y(source.y) + Math.sin(flow_rad) * back;
    const arrow_rad = part.arrowDownstream ? flow_rad : flow_rad + Math.PI;
    const isRegulator = part.kind === 'regulator';
    view.used.add(isRegulator ? 'regulator' : 'check-valve');
    view.lines.push(...(isRegulator ? regulatorSymbol : checkValveSymbol)(x, y, arrow_rad, sizes.factor));
    view.placer.block(uprightBox(x, y, 2.2 * sizes.factor, 2.2 * sizes.factor), part.id);
  });
}

/** Writes each cylinder's name into its circle, or beside it where it does not fit. */
export function labelCylinders(view: ViewDraft, content: NetworkContent): void {
  if (!content.hasCylinders) return;
  const radius = Math.max(view.frame.mm(radiusOf(content)), 1.4 * view.sizes.factor);
  for (const cylinder of Object.values(content.network.network.cylinders)) {
    const [x = 0, y = 0] = onPaper(view.frame, [cylinder.at]);
    addLabel(
      view,
      [{ text: cylinder.name, font: 'bold' }],
      { x, y, clearance_mm: radius, owner: cylinder.id, toward_rad: cylinder.back_rad + Math.PI, ...(radius > 4 * view.sizes.factor ? { spots: [x, y] } : {}) },
      `cylinder ${cylinder.name}`,
    );
  }
}
