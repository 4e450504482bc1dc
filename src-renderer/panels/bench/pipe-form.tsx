import { useState } from 'react';
import { sequence } from '#shared/commands/command';
import { editPipe } from '#shared/commands/edit-pipe';
import { editRun } from '#shared/commands/edit-run';
import { insertPart } from '#shared/commands/insert-part';
import { setPipeHeight } from '#shared/commands/set-pipe-height';
import type { DerivedPipe } from '#shared/derived/derived';
import { along3 } from '#shared/geometry/segment3';
import type { Pipe, RefOf } from '#shared/model/plan';
import { pipesOfRun } from '#shared/model/pipe-run';
import { PIPE_SCHEDULES, PIPE_SIZES, PIPE_TABLE } from '#shared/profile/pipe-table';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Choice, type ChoiceOption, optionsOf } from '../fields/choice.tsx';
import { DoWithLength } from '../fields/action-fields.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { countOf } from '../../plan-words.ts';
import { HeightRoom } from './height-room.tsx';
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
      help="Drops and risers stretch; runs that join at this height go with it."
    />
  );
}

/** What a pipe has besides its make: the length measured on site, and a union built in. */
function PipeAsBuilt({ at, pipe, shape }: { readonly at: RefOf<'pipe'>; readonly pipe: Pipe; readonly shape: DerivedPipe }) {
  const commit = useCommit();
  const { length } = useFigures();
  return (
    <>
      <div className="fields">
        <LengthField
          label="Measured length"
          value={pipe.measured_m}
          least={0.001}
          blank={{ text: 'not measured', commit: () => commit(editPipe(at, { measured_m: null })) }}
          onCommit={(measured_m) => commit(editPipe(at, { measured_m }))}
          help={pipe.measured_m === null ? 'As built, middle of fitting to middle of fitting.' : `Drawn ${length(shape.length_m)}: ${length(Math.abs(pipe.measured_m - shape.length_m))} ${pipe.measured_m >= shape.length_m ? 'longer' : 'shorter'} as built.`}
        />
      </div>
      <DoWithLength
        label="Union, from the end toward the cylinders"
        action="Insert a union"
        start_m={shape.length_m / 2}
        run={(along_m) => commit(insertPart(at, along3({ a: shape.from, b: shape.to }, along_m / shape.length_m), 'union'))}
      />
    </>
  );
}

/** Form of one pipe, of the whole run that it is part of, or of several at once. */
export function PipeForm({ refs }: { readonly refs: readonly RefOf<'pipe'>[] }) {
  const plan = useShownPlan();
  const { derived } = useStore(selectEvaluation);
  const { length } = useFigures();
  const store = useStoreItself();
  const [scope, setScope] = useState<'pipe' | 'run'>('pipe');
  const pipes = refs.flatMap((ref) => plan.networks[ref.network]?.pipes[ref.id] ?? []);
  const [first] = pipes;
  const [firstRef] = refs;
  if (!first || !firstRef) return null;
  const wanted = new Set(refs.map((ref) => `${ref.network}/${ref.id}`));
  const shapes = derived.networks.flatMap((each) => each.pipes).filter(({ ref }) => wanted.has(`${ref.network}/${ref.id}`));
  const network = plan.networks[firstRef.network];
  const run = refs.length === 1 && network ? pipesOfRun(network, firstRef.id) : [];
  const change = (part: Partial<Pipe>): void => {
    if (run.length > 1 && scope === 'run') store.commit(editRun(firstRef, part));
    else store.commit(refs.length === 1 ? editPipe(firstRef, part) : sequence(`Edit ${refs.length} pipes`, refs.map((ref) => editPipe(ref, part))));
  };
  const shared = <K extends keyof Pipe>(key: K): Pipe[K] | typeof SEVERAL => (pipes.every((pipe) => pipe[key] === first[key]) ? first[key] : SEVERAL);
  const bore = pipes.length === 1 ? shapes[0] : undefined;
  return (
    <Slip title={pipes.length === 1 ? 'Pipe' : `${pipes.length} pipes`}>
      <div className="fields">
        {run.length > 1 ? (
          <Choice
            label="What is chosen changes"
            value={scope}
            options={[
              { value: 'pipe', label: 'This pipe' },
              { value: 'run', label: `The whole run to the next branch or end: ${countOf(run.length, 'pipe')}` },
            ]}
            onCommit={(value) => setScope(value === 'run' ? 'run' : 'pipe')}
            wide
          />
        ) : null}
        <Choice label="Size" value={shared('size')} options={withSeveral(PIPE_SIZE_OPTIONS, shared('size'))} onCommit={(size) => size !== SEVERAL && change({ size })} />
        <Choice label="Schedule" value={shared('schedule')} options={withSeveral(PIPE_SCHEDULES.map((value) => ({ value, label: value })), shared('schedule'))} onCommit={(schedule) => schedule !== SEVERAL && change({ schedule })} />
        <Choice label="Material" value={shared('material')} options={withSeveral(optionsOf(MATERIAL), shared('material'))} onCommit={(material) => material !== SEVERAL && change({ material })} />
        <Choice label="Joints" value={shared('joint')} options={withSeveral(optionsOf(JOINT), shared('joint'))} onCommit={(joint) => joint !== SEVERAL && change({ joint })} />
        <LengthField
          label="Insulation"
          value={shared('insulation_m') === SEVERAL || first.insulation_m === 0 ? null : first.insulation_m}
          least={0}
          most={1}
          blank={{ text: shared('insulation_m') === SEVERAL ? 'several' : 'bare', commit: () => change({ insulation_m: 0 }) }}
          onCommit={(insulation_m) => change({ insulation_m })}
          help="Thickness around the pipe."
        />
        <HeightFields refs={refs} pipes={shapes} />
      </div>
      <Readings
        rows={[
          { label: 'Length, middle to middle', value: length(shapes.reduce((sum, pipe) => sum + pipe.length_m, 0)) },
          ...(bore ? [{ label: 'Inside diameter', value: length(bore.bore_m) }] : []),
          ...(bore?.upright ? [{ label: 'Stands upright', value: bore.upright === 'drop' ? 'flow goes down' : 'flow goes up' }] : []),
        ]}
      />
      {bore && refs.length === 1 && bore.upright === null && bore.from.z === bore.to.z ? <HeightRoom raised={firstRef} label="May hang at, all else as drawn" /> : null}
      {bore ? <PipeAsBuilt at={firstRef} pipe={first} shape={bore} /> : null}
    </Slip>
  );
}
