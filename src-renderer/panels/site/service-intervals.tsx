import { editServiceIntervals, type ServiceIntervals } from '#shared/commands/edit-service-intervals';
import { SERVICE_SOURCE } from '#shared/site/service-due';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { QuantityField } from '../fields/quantity-field.tsx';

const INTERVALS: readonly { readonly key: keyof ServiceIntervals; readonly label: string }[] = [
  { key: 'pressure_months', label: 'Pressure, months' },
  { key: 'hose_months', label: 'Hose, months' },
  { key: 'retest_months', label: 'Retest, months' },
  { key: 'enclosure_months', label: 'Enclosure, months' },
];

/** How often each service is due. */
export function ServiceIntervalFields() {
  const commit = useCommit();
  const { siteRecord: { service } } = useShownPlan();
  return (
    <details className="folded">
      <summary>How often</summary>
      <div className="fields">
        {INTERVALS.map(({ key, label }) => (
          <QuantityField
            key={key}
            kind="count"
            label={label}
            value={service[key]}
            least={1}
            most={600}
            blank={{ text: 'not yet read', commit: () => commit(editServiceIntervals({ [key]: null })) }}
            onCommit={(months) => commit(editServiceIntervals({ [key]: months }))}
          />
        ))}
      </div>
      <p className="field-help">{SERVICE_SOURCE}</p>
    </details>
  );
}
