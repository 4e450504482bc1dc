import type { Plan, RefOf } from '#shared/model/plan';
import type { BillOfMaterials } from '#shared/take-off/bill-of-materials';
import { useStoreItself } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useFigures } from '../bench/use-plan.ts';
import { VerdictMark } from '../verdict-mark.tsx';

/** What the pipe as measured on site does to the drawing: nozzles that it moves, and measurements that could not be used. */
export function AsMeasured({ bill: { asBuilt }, plan }: { readonly bill: BillOfMaterials; readonly plan: Plan }) {
  const store = useStoreItself();
  const { length } = useFigures();
  const networks = Object.entries(asBuilt);
  if (networks.length === 0) return null;
  const select = (ref: RefOf<'nozzle'> | RefOf<'pipe'>): void => store.session(({ level }) => ({ selection: [ref], level: plan.networks[ref.network]?.level ?? level }));
  return (
    <Slip title="As measured on site" part="as-measured">
      <ul className="counts">
        {networks.flatMap(([network, { moved, unused }]) => [
          ...moved.map(({ nozzle, by_m }) => (
            <li key={`${network} ${nozzle}`}>
              <span>
                <VerdictMark verdict="warn" silent />{' '}
                <button type="button" className="link" onClick={() => select({ kind: 'nozzle', network, id: nozzle })}>
                  Nozzle {plan.networks[network]?.nozzles[nozzle]?.name ?? nozzle}
                </button>{' '}
                hangs {length(by_m)} from where it is drawn: no pipe before it takes up the difference. Measure a pipe beside it, or move the nozzle on the plan.
              </span>
            </li>
          )),
          ...unused.map((id) => (
            <li key={`${network} ${id}`}>
              <span>
                <VerdictMark verdict="not-checked" silent />{' '}
                <button type="button" className="link" onClick={() => select({ kind: 'pipe', network, id })}>
                  A measured pipe
                </button>{' '}
                could not be laid out: the network closes a ring, or the pipe has no length on the plan. Mend the network first.
              </span>
            </li>
          )),
        ])}
      </ul>
    </Slip>
  );
}
