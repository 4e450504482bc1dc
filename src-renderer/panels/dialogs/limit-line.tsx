import { editLimit } from '#shared/commands/edit-limit';
import { LIMIT_CATALOGUE, type LimitKey } from '#shared/profile/limit-catalogue';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { useCommit } from '../bench/use-plan.ts';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';

/** One figure of the manual with its source. */
export function LimitLine({ profile, limit: key }: { readonly profile: UnitProfile; readonly limit: LimitKey }) {
  const commit = useCommit();
  const { label, help, kind } = LIMIT_CATALOGUE[key];
  const limit = profile.limits[key];
  return (
    <tr className={limit ? undefined : 'is-blank'} data-limit={key}>
      <th scope="row">
        {label}
        <span className="quiet">{help}</span>
      </th>
      <td>
        <QuantityField
          kind={kind}
          label={label}
          value={limit?.value ?? null}
          least={0}
          blank={{ text: 'blank: not checked', commit: () => commit(editLimit(profile.id, key, null)) }}
          onCommit={(value) => commit(editLimit(profile.id, key, { value, source: limit?.source ?? '' }))}
        />
      </td>
      <td>
        {limit ? (
          <TextField label={`Source of: ${label}`} value={limit.source} most={400} placeholder="page of the manual" onCommit={(source) => commit(editLimit(profile.id, key, { value: limit.value, source }))} />
        ) : null}
      </td>
    </tr>
  );
}
