import type { RefOf } from '#shared/model/plan';
import { netVolumeOf_m3 } from '#shared/calculations/design/net-volume';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Readings, Slip } from './slip.tsx';
import { useFigures } from './use-plan.ts';

/** The volumes of an enclosure, space by space. */
export function EnclosureSums({ at }: { readonly at: RefOf<'enclosure'> }) {
  const { derived } = useStore(selectEvaluation);
  const { quantity, length } = useFigures();
  const spaces = derived.spaces.filter(({ enclosureRef }) => enclosureRef.level === at.level && enclosureRef.id === at.id);
  const volume = (value: number | undefined): string => (value === undefined ? 'not known: height missing' : quantity(value, 'volume'));
  return (
    <Slip title="Volume and area">
      {spaces.map((space) => {
        const net = netVolumeOf_m3(space);
        const deducted = net !== undefined && space.grossVolume_m3 !== undefined ? space.grossVolume_m3 - net : undefined;
        const nozzles = derived.nozzles.filter((nozzle) => nozzle.space?.key === space.key).length;
        return (
          <div key={space.key}>
            {spaces.length > 1 ? <h4>{space.name}</h4> : null}
            <Readings
              rows={[
                { label: 'Floor area', value: quantity(space.area_m2, 'area') },
                ...(space.tallest_m === undefined ? [] : [{ label: 'Greatest height', value: length(space.tallest_m - space.floor_m) }]),
                { label: 'Gross volume', value: volume(space.grossVolume_m3) },
                ...(deducted !== undefined && deducted > 1e-9 ? [{ label: 'Less solid things', value: quantity(deducted, 'volume') }] : []),
                { label: 'Net volume', value: <strong>{volume(net)}</strong>, note: space.isProtected ? '' : 'left out: not protected' },
                { label: 'Nozzles serving it', value: String(nozzles) },
              ]}
            />
          </div>
        );
      })}
    </Slip>
  );
}
