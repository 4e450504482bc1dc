import { layOutAssembly } from '#shared/commands/lay-out-assembly';
import { lacksManifold, orderFaults, wantedParts } from '#shared/derived/assembly-order';
import { type AssemblyRun, assemblyRunOf } from '#shared/derived/assembly-run';
import type { DerivedNetwork } from '#shared/derived/derived';
import { PART_WORDS } from '#shared/derived/part-words';
import { gapText } from '#shared/rules/pipe/gap-text';
import { wordingFor } from '#shared/rules/wording';
import { useCommit, useFigures } from '../bench/use-plan.ts';
import { AssemblyPlaces } from './assembly-places.tsx';

/** What of a discharge assembly is not as it should be, each a sentence: against the manual, and in its lengths. */
export function assemblyFaults({ network, profile }: DerivedNetwork, { gaps }: AssemblyRun, lengths: 'feet' | 'metric'): string[] {
  const say = wordingFor(lengths);
  const order = network.assembly.length > 0 ? profile?.assemblyOrder : null;
  return [
    ...(lacksManifold(network) ? ['Several cylinders feed the pipe, and no manifold is listed in which they meet.'] : []),
    ...(order ? orderFaults(order, network).map(({ text }) => text).filter((text) => !lacksManifold(network) || !text.includes('manifold')) : []),
    ...gaps.map((gap) => gapText(gap, network.cylinders, say)),
  ];
}

/** How the parts of a discharge assembly fit each other, the manual and their places, with laying them out. */
export function AssemblyCheck({ shape }: { readonly shape: DerivedNetwork }) {
  const commit = useCommit();
  const { system, length } = useFigures();
  const { network, profile, ref } = shape;
  const run = assemblyRunOf(shape);
  const faults = assemblyFaults(shape, run, system);
  const order = profile?.assemblyOrder;
  const clamped = run.stretches.filter(({ clamps }) => clamps.length > 0);
  const lies = [...new Set(clamped.map(({ lie }) => lie))];
  const heights = [...new Set(clamped.flatMap(({ clamps }) => clamps.map(({ z }) => length(z))))];
  return (
    <>
      <p className="field-help">{order ? `Order of the manual, from the valve on: ${wantedParts(order, network).map((kind) => PART_WORDS[kind]).join(', ')}.` : 'The order of the manual is blank in the unit profile.'}</p>
      {faults.map((text) => (
        <p className="field-fault" key={text}>
          {text}
        </p>
      ))}
      <div className="row">
        <button type="button" className="button" onClick={() => commit(layOutAssembly(ref))}>
          Lay it out
        </button>
      </div>
      <p className="field-help">Turns the outlets, and places the ends of the hoses and the manifold along the wall up to where the pipe begins. Lengths of hoses stay as they are listed.</p>
      {run.missing.length > 0 ? (
        <ul className="quiet">
          {run.missing.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      ) : null}
      {clamped.length > 0 ? (
        <p className="field-help">
          Two clamps on each straight stretch of rigid parts from 0.2 m on, a quarter of it in from either end: {clamped.length * 2} in all, {lies.map((lie) => ({ level: 'level', upright: 'upright', aslant: 'aslant' })[lie]).join(' and ')}, at {heights.join(', ')}. Common practice; the manual governs.
        </p>
      ) : null}
      <AssemblyPlaces shape={shape} run={run} />
    </>
  );
}
