import type { FillOfConduit } from '#shared/calculations/design/design';
import type { Worked } from '#shared/calculations/design/worked';
import { GREATEST_BENDS_rad, bendsSum_rad } from '#shared/calculations/formulas/conduit-bends';
import type { Release } from '#shared/model/plan';
import { useFigures } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { TypedField } from '../fields/typed-field.tsx';
import { bendsText, readBends } from './bends-text.ts';
import { changedAt, without } from './list-edits.ts';
import { RowButtons } from './row-buttons.tsx';

type Conductor = Release['conductors'][number];

/** Conduits that the tables know, by kind and trade size. */
const CONDUITS = [
  { value: 'none', label: 'Not chosen', conduit: null },
  { value: 'EMT 1/2', label: 'Metallic tubing (EMT), trade size 1/2', conduit: { kind: 'EMT', size: '1/2' } },
  { value: 'EMT 3/4', label: 'Metallic tubing (EMT), trade size 3/4', conduit: { kind: 'EMT', size: '3/4' } },
  { value: 'FMC 3/8', label: 'Flexible metal (FMC), trade size 3/8', conduit: { kind: 'FMC', size: '3/8' } },
  { value: 'FMC 1/2', label: 'Flexible metal (FMC), trade size 1/2', conduit: { kind: 'FMC', size: '1/2' } },
] as const satisfies readonly { value: string; label: string; conduit: Release['conduit'] }[];

/** Conductors that the tables know. */
const CONDUCTORS = [
  { value: 'TFFN 18', label: 'TFFN, 18 AWG', type: 'TFFN', wireGauge: '18' },
  { value: 'TFFN 16', label: 'TFFN, 16 AWG', type: 'TFFN', wireGauge: '16' },
  { value: 'THHN 14', label: 'THHN, 14 AWG', type: 'THHN', wireGauge: '14' },
  { value: 'THHN 12', label: 'THHN, 12 AWG', type: 'THHN', wireGauge: '12' },
  { value: 'THHN 10', label: 'THHN, 10 AWG', type: 'THHN', wireGauge: '10' },
] as const satisfies readonly (Omit<Conductor, 'count'> & { value: string; label: string })[];

const keyOf = ({ type, wireGauge }: Omit<Conductor, 'count'>): string => `${type} ${wireGauge}`;

/** Conductor kinds to choose from, with the drawn one among them even if the tables do not know it. */
const conductorOptions = (drawn: Conductor): { value: string; label: string }[] => {
  const known = CONDUCTORS.map(({ value, label }) => ({ value, label }));
  return known.some(({ value }) => value === keyOf(drawn)) ? known : [...known, { value: keyOf(drawn), label: `${drawn.type}, ${drawn.wireGauge} AWG: not in the table` }];
};

interface ConduitFieldsProps {
  readonly release: Release;
  readonly fill: Worked<FillOfConduit> | undefined;
  onCommit(part: Partial<Release>): void;
}

/** Conduit, what is in it, and how it bends between pull points. */
export function ConduitFields({ release, fill, onCommit }: ConduitFieldsProps) {
  const { quantity, system } = useFigures();
  const { conduit, conductors, pulls } = release;
  const chosen = conduit ? `${conduit.kind} ${conduit.size}` : 'none';
  const isListed = CONDUITS.some(({ value }) => value === chosen);
  return (
    <>
      <div className="fields">
        <Choice
          label="Conduit"
          value={chosen}
          options={[...CONDUITS, ...(isListed ? [] : [{ value: chosen, label: `${chosen}: not in the table` }])]}
          onCommit={(value) => {
            const found = CONDUITS.find((each) => each.value === value);
            if (found) onCommit({ conduit: found.conduit });
          }}
          wide
        />
      </div>
      {conductors.map((conductor, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: conductors have no name; equal ones may stand twice
        <div className="fields part-line" key={i}>
          <Choice
            label="Conductors"
            value={keyOf(conductor)}
            options={conductorOptions(conductor)}
            onCommit={(value) => {
              const found = CONDUCTORS.find((each) => each.value === value);
              if (found) onCommit({ conductors: changedAt(conductors, i, { type: found.type, wireGauge: found.wireGauge }) });
            }}
          />
          <QuantityField kind="count" label="How many" value={conductor.count} least={1} most={200} onCommit={(count) => onCommit({ conductors: changedAt(conductors, i, { count }) })} />
          <RowButtons what={`conductors ${i + 1}`} onTakeOut={() => onCommit({ conductors: without(conductors, i) })} />
        </div>
      ))}
      {fill?.isKnown ? (
        <p className="quiet">
          {fill.sums.conductors} conductors fill {quantity(fill.sums.area_m2, 'orificeArea')} of {quantity(fill.sums.allowed_m2, 'orificeArea')} allowed.
        </p>
      ) : fill ? (
        <p className="quiet">How full the conduit is, is not worked out: {fill.because}</p>
      ) : null}
      {conductors.length < 20 ? (
        <button type="button" className="button is-slim" onClick={() => onCommit({ conductors: [...conductors, { type: 'THHN', wireGauge: '14', count: 2 }] })}>
          Add conductors
        </button>
      ) : null}
      {pulls.map((pull, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: stretches are known by their place in the list
        <div className="fields part-line" key={i}>
          <TextField label="Between pull points" value={pull.name} onCommit={(name) => onCommit({ pulls: changedAt(pulls, i, { name }) })} />
          <TypedField
            label="Its bends"
            shown={bendsText(pull.bends_rad, system)}
            placeholder="straight"
            read={(typed) => readBends(typed, system)}
            onCommit={(bends_rad) => onCommit({ pulls: changedAt(pulls, i, { bends_rad }) })}
            help={`${quantity(bendsSum_rad(pull.bends_rad), 'angle')} of ${quantity(GREATEST_BENDS_rad, 'angle')} in all.`}
          />
          <RowButtons what={`stretch ${i + 1}`} onTakeOut={() => onCommit({ pulls: without(pulls, i) })} />
        </div>
      ))}
      {pulls.length < 100 ? (
        <button type="button" className="button is-slim" onClick={() => onCommit({ pulls: [...pulls, { name: `Stretch ${pulls.length + 1}`, bends_rad: [] }] })}>
          Add a stretch of conduit
        </button>
      ) : null}
    </>
  );
}
