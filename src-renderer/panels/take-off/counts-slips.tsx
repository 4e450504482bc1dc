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
            <li key={words}>
              <span>{words}</span>
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

/** What all pipe together weighs. */
export function WeightsSlip({ bill: { pipeWeight_kg, stockWeight_kg } }: { readonly bill: BillOfMaterials }) {
  const { quantity } = useFigures();
  const mass = (value_kg: number | null): string => (value_kg === null ? 'not known: no weight is known for some of it' : quantity(value_kg, 'mass'));
  return (
    <Slip title="Weight" part="weights">
      <Readings
        rows={[
          { label: 'Pipe as it is built', value: mass(pipeWeight_kg) },
          { label: 'Stock to bring to the site', value: mass(stockWeight_kg) },
        ]}
      />
    </Slip>
  );
}
