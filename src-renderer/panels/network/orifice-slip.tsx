import { editNozzle } from '#shared/commands/edit-nozzle';
import type { Nozzle, RefOf } from '#shared/model/plan';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useFigures } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { notYetTaken, orificeWith, takeOrifices } from './orifices-slip.tsx';

const OTHER = ' other';

/** What the sums ask of one nozzle, with a button that takes it. */
function NeededOrifice({ at }: { readonly at: RefOf<'nozzle'> }) {
  const commit = useCommit();
  const { quantity } = useFigures();
  const { design } = useStore(selectEvaluation);
  const found = design.networks.find(({ ref }) => ref.id === at.network)?.orifices;
  if (!found) return null;
  if (!found.isKnown) return <p className="quiet">What it needs is not worked out: {found.because}</p>;
  const sums = found.sums.find(({ ref }) => ref.id === at.id);
  if (!sums) return null;
  const { needed_m2, made } = sums;
  const area = (area_m2: number): string => quantity(area_m2, 'orificeArea');
  if (!made) return <p className="quiet">Needed {area(needed_m2)}: the unit profile lists none so small.</p>;
  return (
    <div className="row">
      <span>
        Needed {area(needed_m2)} → <strong>{made.code}</strong> ({area(made.area_m2)})
      </span>
      {notYetTaken([sums]).length > 0 ? (
        <button type="button" className="button is-slim" onClick={() => commit(takeOrifices([sums]))}>
          Take it
        </button>
      ) : (
        <span className="quiet">taken</span>
      )}
    </div>
  );
}

/** The orifice of a nozzle: one that the unit profile lists, or a typed area. */
export function OrificeSlip({ at, nozzle, orifices }: { readonly at: RefOf<'nozzle'>; readonly nozzle: Nozzle; readonly orifices: UnitProfile['orifices'] }) {
  const commit = useCommit();
  const { quantity } = useFigures();
  const { orificeArea_m2 } = nozzle;
  const listed = orificeWith(orifices, orificeArea_m2);
  const take = (area_m2: number | null): void => {
    commit(editNozzle(at, { orificeArea_m2: area_m2 }));
  };
  return (
    <Slip title="Orifice" part="orifice">
      <div className="fields">
        {orifices.length > 0 ? (
          <Choice
            label="Orifice of the unit"
            value={listed?.code ?? (orificeArea_m2 === null ? '' : OTHER)}
            options={[
              { value: '', label: 'Not yet chosen' },
              ...orifices.map(({ code, area_m2 }) => ({ value: code, label: `${code}: ${quantity(area_m2, 'orificeArea')}` })),
              ...(orificeArea_m2 !== null && !listed ? [{ value: OTHER, label: 'Another, as typed' }] : []),
            ]}
            onCommit={(code) => {
              if (code !== OTHER) take(orifices.find((each) => each.code === code)?.area_m2 ?? null);
            }}
          />
        ) : null}
        <QuantityField kind="orificeArea" label="Area of all holes" value={orificeArea_m2} least={0} most={1} blank={{ text: 'not known', commit: () => take(null) }} onCommit={take} />
      </div>
      <NeededOrifice at={at} />
    </Slip>
  );
}
