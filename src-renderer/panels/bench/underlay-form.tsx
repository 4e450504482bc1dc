import { calibrateUnderlay } from '#shared/commands/calibrate-underlay';
import { editUnderlay } from '#shared/commands/edit-underlay';
import { placeUnderlay } from '#shared/commands/place-underlay';
import type { RefOf, Underlay } from '#shared/model/plan';
import { useStoreItself } from '../../store/use-store.ts';
import { Tick } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { useDrawingState } from '../window-context.ts';
import { scaleProof } from './scale-proof.ts';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

const CALIBRATION = { none: 'not set: drawn at one metre to the unit', 'file-units': 'as the file says', 'two-points': 'from two places and a typed distance' } as const;

/** Layers of a drawing beyond these are not listed; a file with more is ruled by its ticks in the list's head. */
const MOST_LISTED = 200;

function ScaleSlip({ at, underlay }: { readonly at: RefOf<'underlay'>; readonly underlay: Underlay }) {
  const store = useStoreItself();
  const { length } = useFigures();
  const { calibration, knownLengths } = underlay;
  const start = (): void => store.session({ tool: 'calibrate', selection: [at] });
  const { setting, checks } = scaleProof(underlay);
  return (
    <Slip title="Scale" part="scale">
      <Readings rows={[{ label: 'Scale', value: CALIBRATION[calibration] }]} />
      {setting ? (
        <LengthField
          label="True distance that sets it"
          value={setting.distance_m}
          onCommit={(distance) => {
            store.commit(calibrateUnderlay(at, { ...setting, distance_m: distance }));
          }}
        />
      ) : null}
      {checks.map(({ known, drawn_m, off }, i) => (
        <div key={`${known.a.x}/${known.a.y}/${known.b.x}/${known.b.y}`}>
          <Readings rows={[{ label: `Check ${i + 1}`, value: length(known.distance_m), note: `the plan has ${length(drawn_m)}, ${Math.abs(off * 100).toFixed(2)} % off` }]} />
          <div className="row">
            <button type="button" className="button is-slim" onClick={() => store.commit(calibrateUnderlay(at, known))}>
              Set the scale by it
            </button>
            <button type="button" className="button is-slim" onClick={() => store.commit(editUnderlay(at, { knownLengths: knownLengths.filter((each) => each !== known) }))}>
              Take it away
            </button>
          </div>
        </div>
      ))}
      <div className="row">
        <button type="button" className={checks.length === 0 ? 'button is-main' : 'button'} onClick={start}>
          {calibration === 'none' ? 'Set it by two places…' : 'Check it by two places…'}
        </button>
      </div>
      {calibration !== 'none' && checks.length === 0 ? (
        <p className="field-help">{setting ? 'One distance is not proof: check it by a second one, measured elsewhere and square to the first.' : 'A file can be wrong about its units: check them by a distance that you measured on site.'}</p>
      ) : null}
    </Slip>
  );
}

function LayersSlip({ at, underlay }: { readonly at: RefOf<'underlay'>; readonly underlay: Underlay }) {
  const commit = useCommit();
  const state = useDrawingState(underlay);
  const hidden = new Set(underlay.hiddenLayers);
  const hide = (names: readonly string[], isHidden: boolean): void => {
    const next = isHidden ? [...new Set([...underlay.hiddenLayers, ...names])] : underlay.hiddenLayers.filter((name) => !names.includes(name));
    commit(editUnderlay(at, { hiddenLayers: next }));
  };
  const layers = state?.state === 'ready' ? state.drawing.layers : [];
  if (state?.state === 'ready' && layers.length < 2) return null;
  const names = layers.map((layer) => layer.name);
  return (
    <Slip
      title="Layers of the file"
      aside={
        layers.length > 1 ? (
          <span className="row">
            <button type="button" className="button is-slim" onClick={() => hide(names, false)}>
              All
            </button>
            <button type="button" className="button is-slim" onClick={() => hide(names, true)}>
              None
            </button>
          </span>
        ) : null
      }
    >
      {state?.state === 'failed' ? <p className="field-fault">{`${state.problem.what} ${state.problem.remedy}`}</p> : null}
      {state?.state === 'loading' ? <p className="quiet">{state.doing}…</p> : null}
      <ul className="layer-list">
        {layers.slice(0, MOST_LISTED).map((layer) => (
          <li key={layer.name}>
            <Tick label={layer.name} value={!hidden.has(layer.name)} onCommit={(shown) => hide([layer.name], !shown)} />
          </li>
        ))}
      </ul>
      {layers.length > MOST_LISTED ? <p className="quiet">{layers.length - MOST_LISTED} more layers follow All and None.</p> : null}
    </Slip>
  );
}

/** Form of an imported floor plan: scale, place, what of it shows. */
export function UnderlayForm({ at }: { readonly at: RefOf<'underlay'> }) {
  const commit = useCommit();
  const underlay = useShownPlan().levels[at.level]?.underlays[at.id];
  if (!underlay) return null;
  const change = (part: Partial<Underlay>): void => {
    commit(editUnderlay(at, part));
  };
  return (
    <>
      <Slip title="Floor plan">
        <div className="fields">
          <TextField label="Name" value={underlay.name} onCommit={(name) => change({ name })} wide />
          <QuantityField kind="ratio" label="How strongly it shows" value={underlay.opacity} least={0.05} most={1} onCommit={(opacity) => change({ opacity })} />
          <QuantityField kind="angle" label="Turned by" value={underlay.rotation_rad} onCommit={(rotation_rad) => commit(placeUnderlay(at, { rotation_rad }))} />
          <LengthField label="Origin, east" value={underlay.at.x} onCommit={(x) => commit(placeUnderlay(at, { at: { ...underlay.at, x } }))} />
          <LengthField label="Origin, north" value={underlay.at.y} onCommit={(y) => commit(placeUnderlay(at, { at: { ...underlay.at, y } }))} />
        </div>
        <div className="row">
          <Tick label="Show it" value={underlay.visible} onCommit={(visible) => change({ visible })} />
          <Tick label="Lock it in place" value={underlay.locked} onCommit={(locked) => change({ locked })} />
        </div>
      </Slip>
      <ScaleSlip at={at} underlay={underlay} />
      <LayersSlip at={at} underlay={underlay} />
    </>
  );
}
