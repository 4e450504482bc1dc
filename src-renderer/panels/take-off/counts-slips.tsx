import type { BillOfMaterials } from '#shared/take-off/bill-of-materials';
import { sentence } from '#shared/sheets/sheet-text';
import { partLines } from '#shared/sheets/take-off-parts';
import { fittingWords } from '#shared/sheets/take-off-words';
import { Readings, Slip } from '../bench/slip.tsx';
import { useFigures } from '../bench/use-plan.ts';

/** Fittings that are alike, counted. */
export function FittingsSlip({ bill: { fittings } }: { readonly bill: BillOfMaterials }) {
  const { system } = useFigures();
  return (
    <Slip title="Fittings" part="fittings">
      {fittings.length === 0 ? <p className="quiet">None.</p> : null}
      <ul className="counts">
        {fittings.map(({ count, ...fitting }) => {
          const words = sentence(fittingWords(fitting, system));
          return (
            <li key={`${words} ${fitting.place}`}>
              <span>
                {words}
                {fitting.place === 'stock' ? <span className="quiet sum-note">joins two stock lengths in one run</span> : null}
              </span>
              <span>{count}</span>
            </li>
          );
        })}
      </ul>
    </Slip>
  );
}

/** Supports, nozzles, cylinders, discharge assembly, anchors and what else is bought. */
export function PartsSlip({ bill }: { readonly bill: BillOfMaterials }) {
  const { system } = useFigures();
  const lines = partLines(bill, system);
  const parts = [...new Set(lines.map(({ part }) => part))];
  return (
    <Slip title="Parts" part="parts">
      {parts.map((part) => (
        <div key={part}>
          <h4>{part}</h4>
          <ul className="counts">
            {lines
              .filter((line) => line.part === part)
              .map(({ what, count, remark }) => (
                <li key={`${what} ${remark}`}>
                  <span>
                    {what}
                    {remark ? <span className="quiet sum-note">{remark}</span> : null}
                  </span>
                  <span>{count ?? ''}</span>
                </li>
              ))}
          </ul>
        </div>
      ))}
    </Slip>
  );
}

/** What all of it weighs, as far as that is known. */
export function WeightsSlip({ bill: { stockWeight_kg, weights } }: { readonly bill: BillOfMaterials }) {
  const { quantity } = useFigures();
  const mass = (value_kg: number): string => quantity(value_kg, 'mass');
  const { pipe_kg, fittings_kg, estimated_kg, cylinders_kg, total_kg, unknown } = weights;
  return (
    <Slip title="Weight" part="weights">
      <Readings
        rows={[
          { label: 'Pipe as it is built', value: mass(pipe_kg) },
          { label: 'Fittings', value: mass(fittings_kg), note: estimated_kg > 0 ? `${mass(estimated_kg)} of it estimated` : undefined },
          { label: 'Cylinders, filled', value: mass(cylinders_kg) },
          { label: 'All of these', value: <strong>{mass(total_kg)}</strong> },
          { label: 'Stock of pipe to bring', value: mass(stockWeight_kg) },
        ]}
      />
      {unknown.length > 0 ? <p className="field-help">Not in it: {unknown.join('; ')}.</p> : null}
    </Slip>
  );
}
