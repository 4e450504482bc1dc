import { ventOf } from '#shared/calculations/design/vent';
import type { Evaluation } from '#shared/evaluate';
import { type RefOf, isSameRef } from '#shared/model/plan';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { useFigures } from './use-plan.ts';

/** Free areas are taken in steps of this [m²], always upward. */
const STEP_m2 = 1e-4;

/**
 * Free area that one vent needs so that all vents of its room are enough, rounded up [m²]; why not where it cannot
 * be worked out. A vent without an area counts as shut.
 */
export function neededOfVent({ derived, design }: Evaluation, at: RefOf<'opening'>): number | string {
  const { plan } = derived;
  const enclosure = plan.levels[at.level]?.enclosures[at.enclosure];
  const opening = enclosure?.openings[at.id];
  const ref: RefOf<'enclosure'> = { kind: 'enclosure', level: at.level, id: at.enclosure };
  const room = design.enclosures.find((each) => isSameRef(each.ref, ref));
  if (!enclosure || !opening || !room) return 'no nozzle serves the room.';
  const openings = Object.fromEntries(Object.entries(enclosure.openings).map(([id, each]) => [id, { ...each, freeArea_m2: each.freeArea_m2 ?? 0 }]));
  const vent = ventOf(ref, { ...enclosure, openings }, room.agent, room.supply, room.weakest, room.leaks, derived.networks, (network) => design.networks.find((each) => isSameRef(each.ref, network.ref))?.discharge, plan.basis);
  if (!vent.isKnown) return vent.because;
  const { needed_m2, provided_m2 } = vent.sums;
  return Math.max(0, Math.ceil((needed_m2 - provided_m2 + (opening.freeArea_m2 ?? 0)) / STEP_m2 - 1e-6) * STEP_m2);
}

/** What a relief vent needs, a press away. */
export function NeededVent({ at, onTake }: { readonly at: RefOf<'opening'>; onTake(freeArea_m2: number): void }) {
  const { quantity } = useFigures();
  const evaluation = useStore(selectEvaluation);
  const needed = neededOfVent(evaluation, at);
  if (typeof needed === 'string') return <p className="quiet">What it needs is not worked out: {needed}</p>;
  const has = evaluation.derived.plan.levels[at.level]?.enclosures[at.enclosure]?.openings[at.id]?.freeArea_m2 ?? 0;
  if (needed <= has) return <p className="quiet">Needed: {quantity(needed, 'area')} of free area. It is enough.</p>;
  return (
    <div className="row">
      <span>Needed: {quantity(needed, 'area')} of free area.</span>
      <button type="button" className="button is-slim" onClick={() => onTake(needed)}>
        Take it
      </button>
    </div>
  );
}
