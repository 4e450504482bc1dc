import { useEffect, useState } from 'react';
import type { Enclosure } from '#shared/model/plan';
import { QuantityField } from '../fields/quantity-field.tsx';

type Range = NonNullable<Enclosure['temperature']>;
interface Draft {
  readonly least_K: number | null;
  readonly greatest_K: number | null;
}

/** Coldest and warmest a room gets, or the place of a cylinder. The plan takes both or neither: one alone proves nothing. */
export function TemperatureFields({ value, blank = 'not known', onCommit }: { readonly value: Range | null; /** What an empty field means. */ readonly blank?: string; onCommit(value: Range | null): void }) {
  const [draft, setDraft] = useState<Draft>(value ?? { least_K: null, greatest_K: null });
  useEffect(() => setDraft(value ?? { least_K: null, greatest_K: null }), [value]);
  const take = (next: Draft): void => {
    setDraft(next);
    const { least_K, greatest_K } = next;
    if (least_K === null || greatest_K === null) {
      if (value) onCommit(null);
    } else if (least_K <= greatest_K) onCommit({ least_K, greatest_K });
  };
  const { least_K, greatest_K } = draft;
  const isCrossed = least_K !== null && greatest_K !== null && least_K > greatest_K;
  const isHalf = (least_K === null) !== (greatest_K === null);
  return (
    <>
      <QuantityField kind="temperature" label="Coldest" value={least_K} least={150} most={400} blank={{ text: blank, commit: () => take({ ...draft, least_K: null }) }} onCommit={(K) => take({ ...draft, least_K: K })} />
      <QuantityField kind="temperature" label="Warmest" value={greatest_K} least={150} most={400} blank={{ text: blank, commit: () => take({ ...draft, greatest_K: null }) }} onCommit={(K) => take({ ...draft, greatest_K: K })} />
      {isCrossed ? (
        <p className="field-fault" role="alert">
          The coldest is above the warmest: nothing was taken.
        </p>
      ) : isHalf ? (
        <p className="field-help">Both are needed before either counts.</p>
      ) : null}
    </>
  );
}
