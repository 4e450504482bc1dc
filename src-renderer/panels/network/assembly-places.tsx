import { sequence } from '#shared/commands/command';
import { editCylinder } from '#shared/commands/edit-cylinder';
import { editNetwork } from '#shared/commands/edit-network';
import type { AssemblyRun } from '#shared/derived/assembly-run';
import type { DerivedNetwork } from '#shared/derived/derived';
import type { Hose } from '#shared/derived/hose-of';
import type { PlanPoint3 } from '#shared/geometry/point';
import type { Cylinder } from '#shared/model/plan';
import { type Figures, useCommit, useFigures } from '../bench/use-plan.ts';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';

interface PlaceFieldsProps {
  /** Whose place it is, in front of each label: "Hose end". */
  readonly what: string;
  readonly at: PlanPoint3;
  onCommit(at: PlanPoint3): void;
}

/** The three figures of a place in space. */
function PlaceFields({ what, at, onCommit }: PlaceFieldsProps) {
  return (
    <>
      <LengthField label={`${what} east of the origin`} value={at.x} onCommit={(x) => onCommit({ ...at, x })} />
      <LengthField label={`${what} north of the origin`} value={at.y} onCommit={(y) => onCommit({ ...at, y })} />
      <LengthField label={`${what} above floor`} value={at.z} onCommit={(z) => onCommit({ ...at, z })} />
    </>
  );
}

/** What a hose takes, in a sentence. */
export function hoseText({ part, needed_m, radius_m, reach_m, slack_m }: Hose, { length }: Figures): string {
  const ends = `It ends ${length(reach_m)} from the outlet.`;
  if (needed_m === undefined) return ends;
  if (part.length_m <= 0) return `${ends} It takes at least ${length(needed_m)} of hose; its length is not entered.`;
  if (needed_m > part.length_m + 1e-9) return `${ends} It takes ${length(needed_m)} of hose, and ${length(part.length_m)} is listed: too short.`;
  const bend = Number.isFinite(radius_m) ? `lies with bends of ${length(radius_m)} or wider` : 'lies straight';
  return slack_m > 0 ? `${ends} Of its ${length(part.length_m)}, ${length(slack_m)} finds no gentle way.` : `${ends} Its ${length(part.length_m)} ${bend}.`;
}

function CylinderPlaces({ shape, cylinder, hose }: { readonly shape: DerivedNetwork; readonly cylinder: Cylinder; readonly hose: Hose | undefined }) {
  const commit = useCommit();
  const figures = useFigures();
  const ref = { kind: 'cylinder' as const, network: shape.network.id, id: cylinder.id };
  const { outlet_rad, hoseEnd, name } = cylinder;
  const source = shape.network.source === null ? undefined : shape.network.nodes[shape.network.source]?.at;
  const start: PlanPoint3 = { x: cylinder.at.x, y: cylinder.at.y, z: source?.z ?? shape.profile?.limits.outletHeight_m?.value ?? 0 };
  return (
    <fieldset className="part-fields">
      <legend>Hose of {name}</legend>
      <div className="fields">
        <QuantityField
          kind="angle"
          label={`Outlet of ${name} points toward`}
          value={outlet_rad}
          blank={{ text: 'not known', commit: () => commit(editCylinder(ref, { outlet_rad: null })) }}
          onCommit={(to) => commit(editCylinder(ref, { outlet_rad: to }))}
          help="0° is east, 90° is north."
        />
        {hoseEnd ? <PlaceFields what="End" at={hoseEnd} onCommit={(at) => commit(editCylinder(ref, { hoseEnd: { x: at.x, y: at.y, z: at.z } }))} /> : null}
      </div>
      <div className="row">
        {hoseEnd ? (
          <button type="button" className="button is-slim" onClick={() => commit(editCylinder(ref, { hoseEnd: null }))}>
            Not known where it ends
          </button>
        ) : (
          <button type="button" className="button is-slim" onClick={() => commit(editCylinder(ref, { hoseEnd: start }))}>
            Enter where it ends
          </button>
        )}
      </div>
      {hose ? <p className="field-help">{hoseText(hose, figures)}</p> : null}
    </fieldset>
  );
}

/** Places of the discharge assembly: outlets, ends of hoses and the manifold. */
export function AssemblyPlaces({ shape, run }: { readonly shape: DerivedNetwork; readonly run: AssemblyRun }) {
  const commit = useCommit();
  const { network, ref } = shape;
  const { manifold } = network;
  const hasManifold = network.assembly.some(({ kind }) => kind === 'manifold');
  const cylinders = Object.values(network.cylinders);
  const source = network.source === null ? undefined : network.nodes[network.source]?.at;
  const place = ({ x, y, z }: PlanPoint3): PlanPoint3 => ({ x, y, z });
  return (
    <details>
      <summary>Places of {cylinders.length === 1 ? 'its hose' : 'hoses and manifold'}, typed by hand</summary>
      {cylinders.map((cylinder) => (
        <CylinderPlaces key={cylinder.id} shape={shape} cylinder={cylinder} hose={run.hoses.get(cylinder.id)} />
      ))}
      {hasManifold || manifold ? (
        <fieldset className="part-fields">
          <legend>Manifold</legend>
          {manifold ? (
            <div className="fields">
              <PlaceFields what="Blind end" at={manifold.from} onCommit={(from) => commit(editNetwork(ref, { manifold: { from: place(from), to: manifold.to } }))} />
              <PlaceFields what="Outlet" at={manifold.to} onCommit={(to) => commit(editNetwork(ref, { manifold: { from: manifold.from, to: place(to) } }))} />
            </div>
          ) : null}
          <div className="row">
            {manifold ? (
              <button type="button" className="button is-slim" onClick={() => commit(sequence('Take the manifold off the plan', [editNetwork(ref, { manifold: null })]))}>
                Not known where it runs
              </button>
            ) : (
              <button type="button" className="button is-slim" disabled={!source} onClick={() => source && commit(editNetwork(ref, { manifold: { from: place(source), to: place(source) } }))}>
                Enter where it runs
              </button>
            )}
          </div>
        </fieldset>
      ) : null}
    </details>
  );
}
