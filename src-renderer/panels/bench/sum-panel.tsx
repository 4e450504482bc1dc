import type { LedgerFigure } from '../../actions/desk.ts';
import { netVolumeOf_m3 } from '#shared/calculations/design/net-volume';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { PathSums } from './path-sums.tsx';
import { Slip } from './slip.tsx';
import { useFigures } from './use-plan.ts';

export const SUM_TITLES: Readonly<Record<LedgerFigure, string>> = {
  volume: 'Net volume',
  area: 'Floor area',
  path: 'Longest path',
  elbows: 'Elbows left',
  nozzles: 'Nozzles',
  cylinders: 'Cylinders',
};

const BASIS: Readonly<Record<LedgerFigure, { readonly how: string; readonly source: string }>> = {
  volume: {
    how: 'Floor area times height, with slopes and ceiling zones, less the solid things that gas cannot enter. Voids count when they are protected.',
    source: 'Only fixed solid items may be deducted (common practice; confirm in the adopted code).',
  },
  area: { how: 'Area inside the finished wall faces, less cut-outs.', source: 'Geometry of the drawn outline.' },
  path: { how: 'Pipe from the cylinder to each nozzle, middle to middle, drops and risers included.', source: 'Limit from the unit profile.' },
  elbows: { how: 'Most elbows that the unit allows on a path, less those on the most bent path. A bend in the pipe is an elbow.', source: 'Limit from the unit profile.' },
  nozzles: { how: 'Nozzles drawn, by the room that they serve.', source: 'Count of what is drawn.' },
  cylinders: { how: 'Cylinders drawn, by pipe network.', source: 'Count of what is drawn.' },
};

function VolumeTable({ column }: { readonly column: 'volume' | 'area' }) {
  const { derived } = useStore(selectEvaluation);
  const { quantity } = useFigures();
  const store = useStoreItself();
  const spaces = column === 'area' ? derived.spaces.filter(({ kind }) => kind === 'room') : derived.spaces;
  return (
    <table className="sum-table">
      <thead>
        <tr>
          <th scope="col">Space</th>
          {column === 'volume' ? (
            <>
              <th scope="col">Gross</th>
              <th scope="col">Solid</th>
              <th scope="col">Net</th>
            </>
          ) : (
            <th scope="col">Area</th>
          )}
        </tr>
      </thead>
      <tbody>
        {spaces.map((space) => {
          const net = netVolumeOf_m3(space);
          const gross = space.grossVolume_m3;
          return (
            <tr key={space.key}>
              <th scope="row">
                <button type="button" className="link" onClick={() => store.session({ selection: [space.enclosureRef], level: space.level.id })}>
                  {space.name}
                </button>
                {space.isProtected ? '' : ' (left out)'}
              </th>
              {column === 'area' ? (
                <td>{quantity(space.area_m2, 'area')}</td>
              ) : gross === undefined || net === undefined ? (
                <td colSpan={3}>height not known</td>
              ) : (
                <>
                  <td>{quantity(gross, 'volume')}</td>
                  <td>{quantity(gross - net, 'volume')}</td>
                  <td>{quantity(net, 'volume')}</td>
                </>
              )}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function CountTable({ figure }: { readonly figure: 'nozzles' | 'cylinders' }) {
  const { derived } = useStore(selectEvaluation);
  const groups = new Map<string, string[]>();
  const put = (group: string, name: string): void => {
    groups.set(group, [...(groups.get(group) ?? []), name]);
  };
  if (figure === 'nozzles') for (const { space, nozzle } of derived.nozzles) put(space?.name ?? 'In no room', nozzle.name);
  else for (const { network } of derived.networks) for (const { name } of Object.values(network.cylinders)) put(network.name || 'Network', name);
  return (
    <table className="sum-table">
      <tbody>
        {[...groups].map(([group, names]) => (
          <tr key={group}>
            <th scope="row">{group}</th>
            <td>{names.join(', ')}</td>
            <td>{names.length}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Where a figure of the ledger comes from. */
export function SumPanel({ figure }: { readonly figure: LedgerFigure }) {
  const { derived } = useStore(selectEvaluation);
  const { how, source } = BASIS[figure];
  return (
    <>
      <Slip title="How it is worked out">
        <p>{how}</p>
        <p className="quiet">{source}</p>
      </Slip>
      {figure === 'volume' || figure === 'area' ? (
        <Slip title="Space by space">
          <VolumeTable column={figure} />
        </Slip>
      ) : null}
      {figure === 'nozzles' || figure === 'cylinders' ? (
        <Slip title="What is drawn">
          <CountTable figure={figure} />
        </Slip>
      ) : null}
      {figure === 'path' || figure === 'elbows' ? derived.networks.map(({ ref, network }) => (
        <div key={ref.id}>
          {derived.networks.length > 1 ? <h3 className="network-name">{network.name}</h3> : null}
          <PathSums network={ref.id} nozzle={null} />
        </div>
      )) : null}
      <p className="caution">Preliminary figures beside the listing and the manual of the unit.</p>
    </>
  );
}
