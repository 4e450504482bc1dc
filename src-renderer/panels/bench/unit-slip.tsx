import { setProfile } from '#shared/commands/set-profile';
import { Choice } from '../fields/choice.tsx';
import { useRun } from '../window-context.ts';
import { Slip } from './slip.tsx';
import { useCommit, useShownPlan } from './use-plan.ts';

/** Which unit feeds a pipe network, and the figures of its manual. */
export function UnitSlip({ networkId }: { readonly networkId: string }) {
  const plan = useShownPlan();
  const network = plan.networks[networkId];
  const commit = useCommit();
  const run = useRun();
  const profiles = Object.values(plan.profiles);
  if (!network) return null;
  const known = profiles.some((profile) => profile.id === network.profile);
  return (
    <Slip title="Unit">
      <div className="fields">
        <Choice
          label={`Unit profile of ${network.name || 'this network'}`}
          value={network.profile}
          options={[...profiles.map(({ id, name }) => ({ value: id, label: name })), ...(known ? [] : [{ value: network.profile, label: 'A profile that is no longer in the plan' }])]}
          onCommit={(profile) => commit(setProfile(network.id, profile))}
          wide
          help={plan.profiles[network.profile]?.isSample ? 'A sample with invented figures: enter those of your unit’s manual.' : undefined}
        />
      </div>
      <button type="button" className="button" onClick={() => run('profile')}>
        Figures of the manual…
      </button>
    </Slip>
  );
}
