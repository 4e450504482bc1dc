import { editNetwork } from '#shared/commands/edit-network';
import type { DerivedNetwork } from '#shared/derived/derived';
import type { AssemblyPart, Network, RefOf } from '#shared/model/plan';
import { Slip } from '../bench/slip.tsx';
import { useCommit } from '../bench/use-plan.ts';
import { Choice, Tick, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { changedAt, freeId, shifted, without } from './list-edits.ts';
import { AssemblyCheck } from './assembly-check.tsx';
import { RowButtons } from './row-buttons.tsx';

/** Parts between the valve and the pipe in the user's words. */
export const PART_WORDS = { hose: 'Hose', 'check-valve': 'Check valve', regulator: 'Pressure regulator', adapter: 'Adapter', manifold: 'Manifold', 'stop-valve': 'Stop valve', 'relief-valve': 'Relief valve' } as const satisfies Record<AssemblyPart['kind'], string>;
const KINDS = Object.keys(PART_WORDS) as AssemblyPart['kind'][];

/** A part as it comes: its figures are entered from the manual. */
export const freshPart = (assembly: readonly AssemblyPart[], kind: AssemblyPart['kind']): AssemblyPart => ({ id: freeId(assembly, 'part'), kind, name: PART_WORDS[kind], length_m: 0, setPressure_Pa: null, arrowDownstream: true });

/** The part as another kind: a name that only said what it was follows. */
export const partAs = (part: AssemblyPart, kind: AssemblyPart['kind']): AssemblyPart => ({
  ...part,
  kind,
  name: part.name === PART_WORDS[part.kind] ? PART_WORDS[kind] : part.name,
  setPressure_Pa: kind === 'regulator' ? part.setPressure_Pa : null,
});

/** The discharge assembly, part by part in flow order from the valve. */
export function AssemblySlip({ at, network, shape }: { readonly at: RefOf<'network'>; readonly network: Network; readonly shape: DerivedNetwork | undefined }) {
  const commit = useCommit();
  const { assembly } = network;
  const take = (next: AssemblyPart[]): void => {
    commit(editNetwork(at, { assembly: next }));
  };
  return (
    <Slip title="Discharge assembly" part="assembly">
      <p className="field-help">{assembly.length === 0 ? 'No parts listed between the valve and the pipe.' : 'In the order of the flow, from the valve to the pipe.'}</p>
      {assembly.map((part, i) => (
        <fieldset className="part-fields" key={part.id}>
          <legend>
            {i + 1}. {part.name}
          </legend>
          <div className="fields">
            <Choice label="What it is" value={part.kind} options={optionsOf(PART_WORDS)} onCommit={(kind) => take(assembly.map((each, k) => (k === i ? partAs(each, kind) : each)))} />
            <TextField label="Name" value={part.name} onCommit={(name) => take(changedAt(assembly, i, { name }))} />
            <LengthField label="Length" value={part.length_m} least={0} onCommit={(length_m) => take(changedAt(assembly, i, { length_m }))} />
            {part.kind === 'regulator' ? (
              <QuantityField
                kind="pressure"
                label="Set pressure (absolute)"
                value={part.setPressure_Pa}
                least={0}
                most={1e8}
                blank={{ text: 'not known', commit: () => take(changedAt(assembly, i, { setPressure_Pa: null })) }}
                onCommit={(setPressure_Pa) => take(changedAt(assembly, i, { setPressure_Pa }))}
              />
            ) : null}
          </div>
          <div className="row">
            <Tick label="Its arrow points to the pipe" value={part.arrowDownstream} onCommit={(arrowDownstream) => take(changedAt(assembly, i, { arrowDownstream }))} />
            <RowButtons what={`part ${i + 1}`} isFirst={i === 0} isLast={i === assembly.length - 1} onShift={(by) => take(shifted(assembly, i, by))} onTakeOut={() => take(without(assembly, i))} />
          </div>
          {part.arrowDownstream ? null : <p className="field-fault">Turned against the flow: the agent could not pass.</p>}
        </fieldset>
      ))}
      <div className="row">
        {KINDS.map((kind) => (
          <button key={kind} type="button" className="button is-slim" onClick={() => take([...assembly, freshPart(assembly, kind)])}>
            Add {PART_WORDS[kind].toLowerCase()}
          </button>
        ))}
      </div>
      {shape && Object.keys(network.cylinders).length > 0 && assembly.length > 0 ? <AssemblyCheck shape={shape} /> : null}
    </Slip>
  );
}
