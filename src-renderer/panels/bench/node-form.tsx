import { addDirtTrap } from '#shared/commands/add-dirt-trap';
import { editNode } from '#shared/commands/edit-node';
import { removeNode } from '#shared/commands/remove-node';
import type { PipeNode, RefOf } from '#shared/model/plan';
import { selectEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { movePlace } from '../../tools/drag.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { STANDING_WORDS, standingAt } from './node-words.ts';
import { PIPE_MOVE_WORDS } from './pipe-move-words.ts';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useShownPlan } from './use-plan.ts';

const howOf = (state: State) => state.session.toolOptions.pipeMove;

/** Form of a place where pipes meet or end: what stands there, where it is, and what is built in. */
export function NodeForm({ at }: { readonly at: RefOf<'node'> }) {
  const commit = useCommit();
  const store = useStoreItself();
  const how = useStore(howOf);
  const { derived } = useStore(selectEvaluation);
  const node: PipeNode | undefined = useShownPlan().networks[at.network]?.nodes[at.id];
  const network = derived.networks.find(({ ref }) => ref.id === at.network);
  if (!node || !network) return null;
  const { kind, fittings, parts, takesTrap } = standingAt(network, at.id);
  const move = (part: Partial<PipeNode['at']>): void => {
    commit(movePlace(at, { ...node.at, ...part }, how));
  };
  return (
    <Slip title={STANDING_WORDS[kind]} part="node">
      {fittings.length > 0 ? <Readings rows={[{ label: 'Stands here', value: fittings.map((fitting) => <div key={fitting}>{fitting}</div>) }]} /> : null}
      <div className="fields">
        {parts.length > 0 ? (
          <Choice label="Built in" value={node.part ?? 'none'} options={partOptions(parts, node.part)} onCommit={(part) => commit(editNode(at, { part: part === 'none' ? null : part }))} wide />
        ) : null}
        <LengthField label="East of the origin" value={node.at.x} onCommit={(x) => move({ x })} />
        <LengthField label="North of the origin" value={node.at.y} onCommit={(y) => move({ y })} />
        <LengthField label="Height above floor" value={node.at.z} onCommit={(z) => move({ z })} />
        <Choice
          label="When it is moved"
          value={how}
          options={optionsOf(PIPE_MOVE_WORDS)}
          onCommit={(pipeMove) => store.session(({ toolOptions }) => ({ toolOptions: { ...toolOptions, pipeMove } }))}
          wide
          help="For dragging too; Ctrl while dragging takes the other way."
        />
      </div>
      {takesTrap ? (
        <button type="button" className="button" onClick={() => commit(addDirtTrap(at))}>
          Add a dirt trap
        </button>
      ) : null}
      {kind === 'turn' || kind === 'straight' || kind === 'end' ? (
        <button
          type="button"
          className="button"
          onClick={() => {
            if (commit(removeNode(at))) store.session({ selection: [] });
          }}
        >
          {kind === 'turn' ? 'Straighten the pipe here' : kind === 'straight' ? 'Make it one pipe again' : 'Take this pipe away'}
        </button>
      ) : null}
    </Slip>
  );
}

type Part = NonNullable<PipeNode['part']> | 'none';

/** The parts to choose from, with one that stands here though it does not fit any more. */
const partOptions = (parts: readonly { readonly value: Part; readonly label: string }[], part: PipeNode['part']) =>
  part === null || parts.some(({ value }) => value === part) ? parts : [...parts, { value: part, label: 'Another part, which does not fit here' }];
