import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Readings, Slip } from './slip.tsx';
import { useFigures } from './use-plan.ts';

const left = (most: number | undefined, used: number): string => (most === undefined ? 'limit blank: not checked' : most >= used ? `${most - used} left` : `${used - most} too many`);

/** Length and fittings of the ways through a network, against the unit's limits. */
export function PathSums({ network, nozzle }: { readonly network: string; readonly nozzle: string | null }) {
  const { derived } = useStore(selectEvaluation);
  const { length, quantity } = useFigures();
  const shape = derived.networks.find(({ ref }) => ref.id === network);
  if (!shape) return null;
  const limits = shape.profile?.limits;
  const paths = nozzle === null ? shape.paths : shape.paths.filter((path) => path.nozzle === nozzle);
  return (
    <Slip title={nozzle === null ? 'Ways from the cylinder' : 'Way from the cylinder'}>
      {paths.length === 0 ? <p className="quiet">No nozzle is joined to a cylinder yet.</p> : null}
      {paths.map((path) => {
        const longest = limits?.pathLength_m?.value;
        return (
          <div key={path.nozzle}>
            {nozzle === null ? <h4>{shape.network.nozzles[path.nozzle]?.name ?? path.nozzle}</h4> : null}
            <Readings
              rows={[
                { label: 'Length', value: length(path.length_m), note: longest === undefined ? 'limit blank: not checked' : `of ${length(longest)}` },
                { label: 'Elbows', value: `${path.elbows} used,`, note: left(limits?.elbowsPerPath?.value, path.elbows) },
                { label: 'Tees', value: `${path.tees} used,`, note: left(limits?.teesPerPath?.value, path.tees) },
              ]}
            />
          </div>
        );
      })}
      <Readings
        rows={[
          { label: 'All pipe of the network', value: length(shape.totalLength_m) },
          { label: 'Volume inside the pipe', value: quantity(shape.pipeVolume_m3, 'volume') },
        ]}
      />
    </Slip>
  );
}
