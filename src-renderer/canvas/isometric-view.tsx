import { useMemo, useState } from 'react';
import type { DerivedNetwork } from '#shared/derived/derived';
import type { Ref } from '#shared/model/plan';
import { useFrameSize } from '../input/use-frame-size.ts';
import { selectEvaluation } from '../store/selectors.ts';
import type { Session, State } from '../store/state.ts';
import { useStore, useStoreItself } from '../store/use-store.ts';
import { IsometricBoard } from './isometric/isometric-board.tsx';
import { isometricKeeper } from './isometric/keep-isometric.ts';
import './isometric/isometric-view.css';

const levelOf = (state: State): string => state.session.level;
const selectionOf = (state: State): Session['selection'] => state.session.selection;
const isHeldOf = (state: State): boolean => state.preview !== null;

/** The network that a thing belongs to; undefined for what is no part of one. */
const networkIdOf = (ref: Ref | undefined): string | undefined => (ref?.kind === 'network' ? ref.id : ref && 'network' in ref ? ref.network : undefined);

/** The networks of the level as isometrics: one at a time, that of the selected thing by itself. */
export function IsometricView() {
  const store = useStoreItself();
  const { derived } = useStore(selectEvaluation);
  const level = useStore(levelOf);
  const selection = useStore(selectionOf);
  const isHeld = useStore(isHeldOf);
  const { ref, width, height } = useFrameSize();
  const [keeper] = useState(isometricKeeper);
  const [anew, searchAnew] = useState(0);
  const networks = derived.networks.filter(({ network }) => network.level === level);
  const [chosen, choose] = useChosenNetwork(networks, selection);
  const network = networks.find(({ network: { id } }) => id === chosen);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a search anew asks for another drawing of the same network
  const shown = useMemo(() => (network && network.pipes.length > 0 ? keeper.shown(network, isHeld) : undefined), [keeper, network, isHeld, anew]);

  return (
    <div className="isometric-view">
      {networks.length > 1 ? (
        <label className="isometric-chooser">
          Network
          <select value={chosen} onChange={(event) => choose(event.target.value)}>
            {networks.map(({ network: { id, name } }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <div ref={ref} className="isometric-frame">
        {shown && width > 0 && height > 0 ? (
          <IsometricBoard
            shown={shown}
            lengths={derived.plan.settings.lengths}
            width={width}
            height={height}
            searchAnew={() => {
              keeper.forget(shown.iso.network.network.id);
              searchAnew((count) => count + 1);
            }}
          />
        ) : (
          <div className="side-view-empty">
            <p>{networks.length === 0 ? 'This level has no pipe network yet. Stand a cylinder or draw pipe: its isometric appears here.' : 'This network has no pipe yet. Draw pipe from its cylinders: its isometric appears here.'}</p>
            <button type="button" className="button is-slim" onClick={() => store.session({ tool: 'pipe' })}>
              Draw pipe
            </button>
          </div>
        )}
      </div>
    </div>
  );
}

/** Which network is shown: the one chosen by hand, until a thing of another one is selected. */
function useChosenNetwork(networks: readonly DerivedNetwork[], selection: readonly Ref[]): readonly [string | undefined, (id: string) => void] {
  const [choice, setChoice] = useState<{ readonly id: string | undefined; readonly selection: readonly Ref[] }>({ id: undefined, selection: [] });
  const selected = networkIdOf(selection.findLast((ref) => networkIdOf(ref) !== undefined));
  const isKnown = (id: string | undefined): boolean => networks.some(({ network }) => network.id === id);
  if (choice.selection !== selection) setChoice({ id: isKnown(selected) ? selected : choice.id, selection });
  const first = networks.find(({ pipes }) => pipes.length > 0) ?? networks[0];
  const id = isKnown(choice.id) ? choice.id : first?.network.id;
  return [id, (next) => setChoice({ id: next, selection })];
}
