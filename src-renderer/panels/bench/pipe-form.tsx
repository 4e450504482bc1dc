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
import { Choice, type ChoiceOption, optionsOf } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

const MATERIAL = { 'black-steel': 'Black steel', 'galvanized-steel': 'Galvanized steel', 'stainless-steel': 'Stainless steel' } as const;
const JOINT = { threaded: 'Threaded', welded: 'Welded', grooved: 'Grooved' } as const;

/** Nominal sizes as the trade writes them, with the metric size. */
export const PIPE_SIZE_OPTIONS = PIPE_SIZES.map((size) => ({ value: size, label: `NPS ${size} (DN ${PIPE_TABLE[size].dn})` }));

/** Stands in a choice for values that differ among the pipes. */
const SEVERAL = 'several';
const withSeveral = <V extends string>(options: readonly ChoiceOption<V>[], value: V | typeof SEVERAL): ChoiceOption<V | typeof SEVERAL>[] => [
  ...(value === SEVERAL ? [{ value: SEVERAL, label: 'several' } as const] : []),
  ...options,
];

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
  const wanted = new Set(refs.map((ref) => `${ref.network}/${ref.id}`));
  const shapes = derived.networks.flatMap((each) => each.pipes).filter(({ ref }) => wanted.has(`${ref.network}/${ref.id}`));
  const change = (part: Partial<Pipe>): void => {
    store.commit(refs.length === 1 ? editPipe(firstRef, part) : sequence(`Edit ${refs.length} pipes`, refs.map((ref) => editPipe(ref, part))));
  };
  const shared = <K extends keyof Pipe>(key: K): Pipe[K] | typeof SEVERAL => (pipes.every((pipe) => pipe[key] === first[key]) ? first[key] : SEVERAL);
  const bore = pipes.length === 1 ? shapes[0] : undefined;
  return (
    <Slip title={pipes.length === 1 ? 'Pipe' : `${pipes.length} pipes`}>
      <div className="fields">
        <Choice label="Size" value={shared('size')} options={withSeveral(PIPE_SIZE_OPTIONS, shared('size'))} onCommit={(size) => size !== SEVERAL && change({ size })} />
        <Choice label="Schedule" value={shared('schedule')} options={withSeveral(PIPE_SCHEDULES.map((value) => ({ value, label: value })), shared('schedule'))} onCommit={(schedule) => schedule !== SEVERAL && change({ schedule })} />
        <Choice label="Material" value={shared('material')} options={withSeveral(optionsOf(MATERIAL), shared('material'))} onCommit={(material) => material !== SEVERAL && change({ material })} />
        <Choice label="Joints" value={shared('joint')} options={withSeveral(optionsOf(JOINT), shared('joint'))} onCommit={(joint) => joint !== SEVERAL && change({ joint })} />
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
