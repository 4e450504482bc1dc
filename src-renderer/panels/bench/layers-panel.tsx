import { editSettings } from '#shared/commands/edit-settings';
import { LAYER_WORDS, NEVER_PICKED, changeLayer } from '../../actions/view-actions.ts';
import type { LayerName, State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Tick } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { Slip } from './slip.tsx';

const layersOf = (state: State) => state.session.layers;
const gridOf = (state: State) => state.history.present.settings.grid_m;
const NAMES = Object.keys(LAYER_WORDS) as LayerName[];

/** What the board shows, and what of it can be picked. */
export function LayersPanel() {
  const layers = useStore(layersOf);
  const grid_m = useStore(gridOf);
  const store = useStoreItself();
  return (
    <Slip title="Layers of the board" part="layers">
      <table className="layer-table">
        <thead>
          <tr>
            <th scope="col">Layer</th>
            <th scope="col">Show</th>
            <th scope="col">Lock</th>
          </tr>
        </thead>
        <tbody>
          {NAMES.map((name) => (
            <tr key={name}>
              <th scope="row">{LAYER_WORDS[name]}</th>
              <td>
                <Tick label={<span className="out-of-sight">Show {LAYER_WORDS[name]}</span>} value={layers[name].visible} onCommit={(visible) => changeLayer(store, name, { visible })} />
              </td>
              <td>
                {NEVER_PICKED.includes(name) ? null : (
                  <Tick label={<span className="out-of-sight">Lock {LAYER_WORDS[name]}</span>} value={layers[name].locked} onCommit={(locked) => changeLayer(store, name, { locked })} />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="fields">
        <LengthField label="Grid lines apart" value={grid_m} least={0.001} most={10} onCommit={(apart_m) => store.commit(editSettings({ grid_m: apart_m }))} />
      </div>
      <p className="quiet">What is locked is shown but cannot be picked or moved. The layers of a floor plan are in its own form: select the floor plan.</p>
    </Slip>
  );
}
