import { barsOf } from '#shared/sheets/take-off-bars';
import { makeWords, pieceLabel } from '#shared/sheets/take-off-words';
import type { PipeOrder } from '#shared/take-off/pipe-order';
import { Readings, Slip } from '../bench/slip.tsx';
import { useFigures } from '../bench/use-plan.ts';
import { countOf } from '../../plan-words.ts';
import { CutBarDrawing } from './cut-bar-drawing.tsx';

/** Pipe of one make: how much to buy, what is wasted, and every stock length with what is cut from it. */
export function OrderSlip({ order, kerf_m, networkName }: { readonly order: PipeOrder; readonly kerf_m: number; readonly networkName: ((id: string) => string) | undefined }) {
  const { system, length, quantity } = useFigures();
  const { nesting, pieces, uncut, stock_m, weight_kg, stockWeight_kg } = order;
  const { bars, leastBars, isFewest, tooLong, waste_m, leastWaste_m } = nesting;
  return (
    <Slip title={makeWords(order, system)} part="pipe-order" aside={<span className="sum-aside">{countOf(pieces.length, 'piece')}</span>}>
      <Readings
        rows={[
          { label: 'Between centres', value: length(order.length_m) },
          { label: 'To buy', value: `${bars.length} × ${length(stock_m)}`, note: isFewest ? 'the fewest possible' : `at least ${leastBars} are needed` },
          { label: 'Waste', value: length(waste_m), note: Math.abs(waste_m - leastWaste_m) < 1e-9 ? 'the least possible' : `at best ${length(leastWaste_m)}` },
          { label: 'Weight, built / bought', value: `${quantity(weight_kg, 'mass')} / ${quantity(stockWeight_kg, 'mass')}` },
        ]}
      />
      {uncut > 0 ? <p className="field-help">{uncut === 1 ? 'One piece has no cut length' : `${uncut} pieces have no cut length`}: reckoned as long as they can be.</p> : null}
      {tooLong.length > 0 ? (
        <p className="field-fault">
          Longer than the stock, and not cut from it: {tooLong.flatMap((index) => pieces.slice(index, index + 1).map(pieceLabel)).join(', ')}. Type a longer stock length.
        </p>
      ) : null}
      <ol className="cut-bars" aria-label={`Cutting plan of ${makeWords(order, system)}`}>
        {barsOf(order, kerf_m).map((bar) => (
          <CutBarDrawing key={bar.number} bar={bar} stock_m={stock_m} networkName={networkName} />
        ))}
      </ol>
    </Slip>
  );
}
