import { placedSupportsOf } from '../derived/placed-supports.ts';
import type { Support } from '../model/plan.ts';
import type { NetworkContent } from './plan-content.ts';
import { type SectionCut, alongCut_m } from './section-cuts.ts';
import { type SupportLie, besideMiddle, supportLie, supportLieOnPlan } from './support-shape.ts';
import { supportSymbol } from './symbols.ts';
import { type ViewDraft, onPaper, uprightBox } from './view-draft.ts';

/** Two signs of one kind this near on paper are one [mm]. */
const SAME_SIGN_mm = 0.3;

/** Draws signs, those that lie over each other once, and keeps their paper free. */
function drawSigns(view: ViewDraft, signs: readonly { readonly x: number; readonly y: number; readonly kind: Support['kind']; readonly lie: SupportLie }[]): void {
  const { sizes, placer } = view;
  signs.forEach(({ x, y, kind, lie }, i) => {
    if (signs.slice(0, i).some((other) => other.kind === kind && Math.hypot(other.x - x, other.y - y) < SAME_SIGN_mm)) return;
    view.used.add(`support-${kind}`);
    view.lines.push(...supportSymbol(x, y, kind, lie, sizes.factor));
    const middle = besideMiddle(lie);
    placer.block(uprightBox(x + middle.x * sizes.factor, y - middle.y * sizes.factor, 1.8 * sizes.factor, 1.8 * sizes.factor), `support ${x} ${y}`);
  });
}

/** Draws the supports of a network on the plan. */
export function drawSupports(view: ViewDraft, { supports, nozzles, pipes }: NetworkContent): void {
  drawSigns(
    view,
    supports.map((placed) => {
      const [x = 0, y = 0] = onPaper(view.frame, [placed.support.at]);
      return { x, y, kind: placed.support.kind, lie: supportLieOnPlan(placed, nozzles, pipes) };
    }),
  );
}

/** Draws the supports of the room's networks in a section. */
export function drawSupportsFromSide(view: ViewDraft, cut: SectionCut): void {
  const { frame } = view;
  const networks = new Map(cut.nozzles.map(({ network }) => [network.ref.id, network]));
  for (const network of networks.values()) {
    drawSigns(
      view,
      placedSupportsOf(network).map(({ support: { at, kind }, pipe }) => {
        const seen = (p: typeof at) => ({ x: alongCut_m(cut, p), y: p.z });
        return { x: frame.x(alongCut_m(cut, at)), y: frame.y(at.z), kind, lie: supportLie(pipe && seen(pipe.from), pipe && seen(pipe.to), Math.PI / 2) };
      }),
    );
  }
}
