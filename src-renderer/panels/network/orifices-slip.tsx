import type { OrificeSums } from '#shared/calculations/design/design';
import { type Command, sequence } from '#shared/commands/command';
import { editNozzle } from '#shared/commands/edit-nozzle';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useFigures } from '../bench/use-plan.ts';

/** Two areas that differ by less than this are of one orifice. */
const SAME_ORIFICE = 1e-4;

/** The orifice of a profile with an area, if there is one. */
export const orificeWith = (orifices: UnitProfile['orifices'], area_m2: number | null): UnitProfile['orifices'][number] | undefined =>
  area_m2 === null ? undefined : orifices.find((orifice) => Math.abs(orifice.area_m2 - area_m2) <= SAME_ORIFICE * orifice.area_m2);

/** Nozzles whose orifice is not the one that the sums ask for. */
export const notYetTaken = (sums: readonly OrificeSums[]): OrificeSums[] => sums.filter(({ drawn_m2, made }) => made && !(drawn_m2 !== null && Math.abs(drawn_m2 - made.area_m2) <= SAME_ORIFICE * made.area_m2));

/** Gives nozzles the orifices that the sums ask for, as one step. */
export const takeOrifices = (sums: readonly OrificeSums[]): Command =>
  sequence(
    sums.length === 1 ? `Take the orifice of ${sums[0]?.name ?? 'a nozzle'}` : 'Take the orifices',
    sums.flatMap(({ ref, made }) => (made ? [editNozzle(ref, { orificeArea_m2: made.area_m2 })] : [])),
  );

/** The orifices of a network: drawn, needed, and the one that is made. */
export function OrificesSlip({ networkId, orifices }: { readonly networkId: string; readonly orifices: UnitProfile['orifices'] }) {
  const commit = useCommit();
  const { quantity } = useFigures();
  const { design } = useStore(selectEvaluation);
  const found = design.networks.find(({ ref }) => ref.id === networkId)?.orifices;
  if (!found) return null;
  if (!found.isKnown) {
    return (
      <Slip title="Orifices" part="orifices">
        <p className="quiet">What each nozzle needs is not worked out: {found.because}</p>
      </Slip>
    );
  }
  const open = notYetTaken(found.sums);
  const area = (area_m2: number): string => quantity(area_m2, 'orificeArea');
  return (
    <Slip title="Orifices" part="orifices">
      <table className="sum-table" aria-label="Orifices">
        <thead>
          <tr>
            <th scope="col">Nozzle</th>
            <th scope="col">Drawn</th>
            <th scope="col">Needed</th>
            <th scope="col">Made</th>
          </tr>
        </thead>
        <tbody>
          {found.sums.map(({ ref, name, drawn_m2, needed_m2, made }) => (
            <tr key={ref.id}>
              <th scope="row">{name}</th>
              <td>{drawn_m2 === null ? 'not known' : `${area(drawn_m2)}${orificeWith(orifices, drawn_m2) ? ` (${orificeWith(orifices, drawn_m2)?.code})` : ''}`}</td>
              <td>{area(needed_m2)}</td>
              <td>{made ? made.code : 'none so small'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {orifices.length === 0 ? <p className="quiet">The unit profile lists no orifices yet.</p> : null}
      {open.length > 0 ? (
        <button type="button" className="button" onClick={() => commit(takeOrifices(open))}>
          Take all
        </button>
      ) : null}
      <p className="field-help">Largest made orifice that keeps to the flow of the manual. The listing of the unit decides.</p>
    </Slip>
  );
}
