import { LengthField } from '../fields/quantity-field.tsx';
import { without } from '../network/list-edits.ts';
import { RowButtons } from '../network/row-buttons.tsx';
import { Slip } from './slip.tsx';

const MOST = 10;
/** Height that the first restraint is proposed at [m]: 2 ft, common practice. */
const FIRST_m = 0.6096;
/** Restraints keep this far apart [m]: 12 in, common practice. */
const APART_m = 0.3048;

/** A height for one more restraint that is not near any other: 2 ft, or above the highest. */
export function proposedRestraint_m(heights_m: readonly number[]): number {
  const isFree = heights_m.every((each) => Math.abs(each - FIRST_m) >= APART_m);
  return isFree ? FIRST_m : Math.max(...heights_m) + APART_m;
}

/** What holds a cylinder besides its rail: straps, chains or further rails by their heights. */
export function RestraintsSlip({ heights_m, rail_m, onCommit }: { readonly heights_m: readonly number[]; /** Its rail, where it hangs on one. */ readonly rail_m: number | null; onCommit(heights_m: number[]): void }) {
  return (
    <Slip title="Further restraints" part="restraints">
      {heights_m.length === 0 ? <p className="field-help">None yet. A cylinder is held at two levels at least.</p> : null}
      {heights_m.map((height_m, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a restraint has no name beside its place in the list
        <div key={i} className="fields">
          <LengthField label={`Restraint ${i + 1} above floor`} value={height_m} least={0} onCommit={(to_m) => onCommit(heights_m.map((each, k) => (k === i ? to_m : each)))} />
          <RowButtons what={`restraint ${i + 1}`} onTakeOut={() => onCommit(without(heights_m, i))} />
        </div>
      ))}
      <button type="button" className="button" disabled={heights_m.length >= MOST} onClick={() => onCommit([...heights_m, proposedRestraint_m(rail_m === null ? heights_m : [...heights_m, rail_m])])}>
        Add a restraint
      </button>
    </Slip>
  );
}
