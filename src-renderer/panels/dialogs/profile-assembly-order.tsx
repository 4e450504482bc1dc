import { saveProfileInPlan } from '#shared/commands/save-profile-in-plan';
import { ASSEMBLY_KINDS, type UnitProfile } from '#shared/profile/unit-profile';
import { useCommit } from '../bench/use-plan.ts';
import { PART_WORDS } from '../network/assembly-slip.tsx';
import { shifted, without } from '../network/list-edits.ts';
import { RowButtons } from '../network/row-buttons.tsx';

const MOST_PARTS = 20;

type Order = NonNullable<UnitProfile['assemblyOrder']>;

/** The order of the manual from the valve to the pipe; blank until its first part is put in. */
export function ProfileAssemblyOrder({ profile }: { readonly profile: UnitProfile }) {
  const commit = useCommit();
  const order: Order = profile.assemblyOrder ?? [];
  // An order without parts says nothing: it is blank again.
  const keep = (next: Order): boolean => commit(saveProfileInPlan({ ...profile, assemblyOrder: next.length === 0 ? null : next }));
  return (
    <fieldset className="orifice-list" data-part="assembly-order">
      <legend>Order of the discharge assembly, from the valve to the pipe{profile.assemblyOrder === null ? ' (blank: not checked)' : ''}</legend>
      <ol className="order-list">
        {order.map((kind, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a kind may stand twice; its place is what it is
          <li key={i}>
            <span>
              {i + 1}. {PART_WORDS[kind]}
            </span>
            <RowButtons what={`${PART_WORDS[kind].toLowerCase()}, place ${i + 1}`} isFirst={i === 0} isLast={i === order.length - 1} onShift={(by) => keep(shifted(order, i, by))} onTakeOut={() => keep(without(order, i))} />
          </li>
        ))}
      </ol>
      {order.length < MOST_PARTS ? (
        <div className="row">
          {ASSEMBLY_KINDS.map((kind) => (
            <button key={kind} type="button" className="button is-slim" onClick={() => keep([...order, kind])}>
              Then {PART_WORDS[kind].toLowerCase()}
            </button>
          ))}
        </div>
      ) : null}
    </fieldset>
  );
}
