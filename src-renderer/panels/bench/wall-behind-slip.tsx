import type { RefOf } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Slip } from './slip.tsx';
import { WallStrengthFields } from './wall-form.tsx';
import { useShownPlan } from './use-plan.ts';

/** What the wall behind a cylinder bears, entered where the cylinder is: it holds for the whole wall. */
export function WallBehindSlip({ at }: { readonly at: RefOf<'cylinder'> }) {
  const store = useStoreItself();
  const plan = useShownPlan();
  const { design } = useStore(selectEvaluation);
  const mounts = design.networks.find(({ ref }) => ref.id === at.network)?.mounts;
  const wall = mounts?.isKnown ? mounts.sums.find(({ ref }) => ref.id === at.id)?.wall : undefined;
  if (!wall) return null;
  return (
    <Slip
      title="Wall behind it"
      part="wall-behind"
      aside={
        <button type="button" className="button is-slim" onClick={() => store.session({ selection: [wall] })}>
          Go to the wall
        </button>
      }
    >
      <p className="field-help">{thingName(plan, wall)}. What is entered here holds for the whole wall.</p>
      <div className="fields">
        <WallStrengthFields at={wall} />
      </div>
    </Slip>
  );
}
