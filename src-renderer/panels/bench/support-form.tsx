import { editSupport } from '#shared/commands/edit-support';
import type { RefOf, Support } from '#shared/model/plan';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { Slip } from './slip.tsx';
import { useCommit, useShownPlan } from './use-plan.ts';

/** Kinds of pipe support in the user's words. */
export const SUPPORT_WORDS = { rigid: 'Rigid: holds every way', guide: 'Guide: pipe slides along itself', hanger: 'Hanger: only carries', sling: 'Sling: only carries, loose' } as const;

/** Form of one pipe support. */
export function SupportForm({ at }: { readonly at: RefOf<'support'> }) {
  const commit = useCommit();
  const support = useShownPlan().networks[at.network]?.supports[at.id];
  if (!support) return null;
  const change = (part: Partial<Support>): void => {
    commit(editSupport(at, part));
  };
  const { x, y, z } = support.at;
  return (
    <Slip title="Pipe support">
      <div className="fields">
        <Choice label="Kind" value={support.kind} options={optionsOf(SUPPORT_WORDS)} onCommit={(kind) => change({ kind })} wide />
        <QuantityField
          kind="force"
          label="Thrust it bears"
          value={support.capacity_N}
          least={0}
          blank={{ text: 'not known', commit: () => change({ capacity_N: null }) }}
          onCommit={(capacity_N) => change({ capacity_N })}
          help="As its maker or an engineer states it, with its anchor."
        />
        <LengthField label="East of the origin" value={x} onCommit={(to) => change({ at: { x: to, y, z } })} />
        <LengthField label="North of the origin" value={y} onCommit={(to) => change({ at: { x, y: to, z } })} />
      </div>
    </Slip>
  );
}
