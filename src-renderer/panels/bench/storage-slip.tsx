import type { Cylinder } from '#shared/model/plan';
import { Choice, Tick } from '../fields/choice.tsx';
import { Slip } from './slip.tsx';
import { TemperatureFields } from './temperature-fields.tsx';

type Exposure = NonNullable<Cylinder['exposedTo']>[number];

const EXPOSURES: Readonly<Record<Exposure, string>> = { sun: 'Direct sun', heat: 'A source of heat', water: 'Water', vehicles: 'Moving vehicles', weather: 'Weather' };
const ORDER = Object.keys(EXPOSURES) as Exposure[];

/** How cold and warm it gets where a cylinder stands, and what may harm it there. */
export function StorageSlip({ storage, exposedTo, onCommit }: Pick<Cylinder, 'storage' | 'exposedTo'> & { onCommit(part: Partial<Pick<Cylinder, 'storage' | 'exposedTo'>>): void }) {
  return (
    <Slip title="Where it stands" part="storage">
      <div className="fields">
        <TemperatureFields value={storage} blank="as the room" onCommit={(range) => onCommit({ storage: range })} />
        <Choice
          label="Sun, heat, water, vehicles, weather"
          value={exposedTo === null ? 'unknown' : 'looked'}
          options={[
            { value: 'unknown', label: 'Nobody has looked yet' },
            { value: 'looked', label: 'Looked at: exposed to what is ticked' },
          ]}
          onCommit={(chosen) => onCommit({ exposedTo: chosen === 'unknown' ? null : [] })}
          help={exposedTo?.length === 0 ? 'Nothing is ticked: exposed to nothing.' : undefined}
          wide
        />
      </div>
      {exposedTo === null
        ? null
        : ORDER.map((each) => (
            <Tick key={each} label={EXPOSURES[each]} value={exposedTo.includes(each)} onCommit={(isExposed) => onCommit({ exposedTo: ORDER.filter((one) => (one === each ? isExposed : exposedTo.includes(one))) })} />
          ))}
    </Slip>
  );
}
