import { sequence } from '#shared/commands/command';
import { editPipe } from '#shared/commands/edit-pipe';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { removeNode } from '#shared/commands/remove-node';
import { setPipeHeight } from '#shared/commands/set-pipe-height';
import type { DerivedPipe } from '#shared/derived/derived';
import type { Pipe, PipeNode, RefOf } from '#shared/model/plan';
import { PIPE_SCHEDULES, PIPE_SIZES, PIPE_TABLE } from '#shared/profile/pipe-table';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { UnitSlip } from './cylinder-form.tsx';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

const MATERIAL = { 'black-steel': 'Black steel', 'galvanized-steel': 'Galvanized steel', 'stainless-steel': 'Stainless steel' } as const;
const JOINT = { threaded: 'Threaded', welded: 'Welded', grooved: 'Grooved' } as const;

/** Nominal sizes as the trade writes them, with the metric size. */
export const PIPE_SIZE_OPTIONS = PIPE_SIZES.map((size) => ({ value: size, label: `NPS ${size} (DN ${PIPE_TABLE[size].dn})` }));

function HeightFields({ refs, pipes }: { readonly refs: readonly RefOf<'pipe'>[]; readonly pipes: readonly DerivedPipe[] }) {
  const commit = useCommit();
  const level = pipes.filter((pipe) => pipe.upright === null);
  const heights = new Set(level.flatMap((pipe) => [pipe.from.z, pipe.to.z]));
  const [only] = heights;
  if (level.length === 0) return null;
  return (
    <LengthField
      label="Height above floor"
      value={heights.size === 1 && only !== undefined ? only : null}
      blank={{ text: heights.size > 1 ? 'several' : '', commit: () => undefined }}
      onCommit={(z_m) => commit(setPipeHeight(refs, z_m))}
      help="Drops and risers at its ends stretch with it."
    />
  );
}

/** Form of one pipe, or of several at once. */
export function PipeForm({ refs }: { readonly refs: readonly RefOf<'pipe'>[] }) {
  const plan = useShownPlan();
  const { derived } = useStore(selectEvaluation);
  const { length } = useFigures();
  const store = useStoreItself();
  const pipes = refs.flatMap((ref) => plan.networks[ref.network]?.pipes[ref.id] ?? []);
  const [first] = pipes;
  const [firstRef] = refs;
  if (!first || !firstRef) return null;
  const network = plan.networks[firstRef.network];
  const wanted = new Set(refs.map((ref) => `${ref.network}/${ref.id}`));
  const shapes = derived.networks.flatMap((each) => each.pipes).filter(({ ref }) => wanted.has(`${ref.network}/${ref.id}`));
  const change = (part: Partial<Pipe>): void => {
    store.commit(refs.length === 1 ? editPipe(firstRef, part) : sequence(`Edit ${refs.length} pipes`, refs.map((ref) => editPipe(ref, part))));
  };
  const bore = shapes[0];
  return (
    <>
      <Slip title={pipes.length === 1 ? 'Pipe' : `${pipes.length} pipes`}>
        <div className="fields">
          <Choice label="Size" value={first.size} options={PIPE_SIZE_OPTIONS} onCommit={(size) => change({ size })} />
          <Choice label="Schedule" value={first.schedule} options={PIPE_SCHEDULES.map((value) => ({ value, label: value }))} onCommit={(schedule) => change({ schedule })} />
          <Choice label="Material" value={first.material} options={optionsOf(MATERIAL)} onCommit={(material) => change({ material })} />
          <Choice label="Joints" value={first.joint} options={optionsOf(JOINT)} onCommit={(joint) => change({ joint })} />
          <HeightFields refs={refs} pipes={shapes} />
        </div>
        <Readings
          rows={[
            { label: 'Length, middle to middle', value: length(shapes.reduce((sum, pipe) => sum + pipe.length_m, 0)) },
            ...(bore ? [{ label: 'Inside diameter', value: length(bore.bore_m) }] : []),
            ...(bore?.upright ? [{ label: 'Stands upright', value: bore.upright === 'drop' ? 'flow goes down' : 'flow goes up' }] : []),
          ]}
        />
      </Slip>
      {network ? <UnitSlip network={network} /> : null}
    </>
  );
}

/** Form of a pipe end or bend: its place. */
export function NodeForm({ at }: { readonly at: RefOf<'node'> }) {
  const commit = useCommit();
  const store = useStoreItself();
  const network = useShownPlan().networks[at.network];
  const node: PipeNode | undefined = network?.nodes[at.id];
  if (!node) return null;
  const move = (part: Partial<PipeNode['at']>): void => {
    commit(movePipeNode(at, { ...node.at, ...part }));
  };
  return (
    <Slip title="Pipe end or bend">
      <div className="fields">
        <LengthField label="East of the origin" value={node.at.x} onCommit={(x) => move({ x })} />
        <LengthField label="North of the origin" value={node.at.y} onCommit={(y) => move({ y })} />
        <LengthField label="Height above floor" value={node.at.z} onCommit={(z) => move({ z })} />
      </div>
      <button
        type="button"
        className="button"
        onClick={() => {
          if (commit(removeNode(at))) store.session({ selection: [] });
        }}
      >
        Straighten the pipe here
      </button>
    </Slip>
  );
}
