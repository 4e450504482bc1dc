import { countOf } from '../../plan-words.ts';
import { presentEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { netVolumeOf_m3 } from '#shared/calculations/design/net-volume';
import { Readings, Slip } from '../bench/slip.tsx';
import { useFigures } from '../bench/use-plan.ts';
import { useRun } from '../window-context.ts';

const levelOf = (state: State) => state.session.level;

function RoomsSlip() {
  const { derived } = useStore(presentEvaluation);
  const level = useStore(levelOf);
  const store = useStoreItself();
  const run = useRun();
  const { quantity } = useFigures();
  const spaces = derived.spaces.filter((space) => space.level.id === level);
  return (
    <Slip title="Rooms on this level">
      {spaces.length === 0 ? (
        <>
          <p className="quiet">No enclosure is drawn on this level yet: the nozzles need a room to hang in.</p>
          <button type="button" className="button" onClick={() => run('tool-enclosure')}>
            Draw an enclosure
          </button>
        </>
      ) : null}
      <ul className="room-list">
        {spaces.map((space) => {
          const net = netVolumeOf_m3(space);
          const nozzles = derived.nozzles.filter((nozzle) => nozzle.space?.key === space.key);
          return (
            <li key={space.key}>
              <button type="button" className="room" onClick={() => store.session({ selection: [space.enclosureRef] })}>
                <strong>{space.name}</strong>
                <span className="quiet">
                  {quantity(space.area_m2, 'area')} · {net === undefined ? 'height not known' : quantity(net, 'volume')} · {space.isProtected ? (nozzles.length === 0 ? 'no nozzle yet' : countOf(nozzles.length, 'nozzle')) : 'left out'}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </Slip>
  );
}

function NetworksSlip() {
  const { derived } = useStore(presentEvaluation);
  const level = useStore(levelOf);
  const store = useStoreItself();
  const run = useRun();
  const { length } = useFigures();
  const networks = derived.networks.filter(({ network }) => network.level === level);
  return (
    <Slip
      title="Units and their pipe"
      aside={
        <button type="button" className="button is-slim" onClick={() => run('tool-cylinder')}>
          Stand a cylinder
        </button>
      }
    >
      {networks.length === 0 ? <p className="quiet">No cylinder stands yet. Stand one against a wall, hang the nozzles, then run pipe between them.</p> : null}
      {networks.map((shape) => (
        <div key={shape.ref.id} className="network-block">
          <button type="button" className="room" onClick={() => store.session({ selection: [shape.ref] })}>
            <strong>{shape.network.name || 'Pipe network'}</strong>
            <span className="quiet">{derived.plan.profiles[shape.network.profile]?.name ?? 'no unit profile'}</span>
          </button>
          <Readings
            rows={[
              { label: 'Cylinders', value: String(Object.keys(shape.network.cylinders).length) },
              { label: 'Nozzles', value: shape.nozzles.map(({ nozzle }) => nozzle.name).join(', ') || 'none yet' },
              { label: 'All pipe', value: length(shape.totalLength_m) },
            ]}
          />
          {shape.faults.map((fault) => (
            <p key={fault.text} className="advice">
              {fault.text}
            </p>
          ))}
        </div>
      ))}
    </Slip>
  );
}

/** Layout: the rooms with what serves them, and the units with their pipe. */
export const LayoutPanel = () => (
  <>
    <RoomsSlip />
    <NetworksSlip />
  </>
);
