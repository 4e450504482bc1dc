import { sequence } from '#shared/commands/command';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import { editWall } from '#shared/commands/edit-wall';
import { distance_m } from '#shared/geometry/point';
import type { Enclosure, RefOf, Wall } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import { useStoreItself } from '../../store/use-store.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { LongTextField, TextField } from '../fields/text-field.tsx';
import { AfterDischargeSlip } from './after-discharge-slip.tsx';
import { CeilingSlip } from './ceiling-slip.tsx';
import { LeastConcentration } from './least-concentration.tsx';
import { LeakageSlip } from './leakage-slip.tsx';
import { PeopleSlip } from './people-slip.tsx';
import { ShutdownSlip } from './shutdown-slip.tsx';
import { Slip } from './slip.tsx';
import { CONSTRUCTION, REACHES, wallSide } from './wall-words.ts';
import { TemperatureFields } from './temperature-fields.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

const OCCUPANCY = { unknown: 'Not yet known', 'normally-occupied': 'People work here', 'normally-unoccupied': 'People come now and then', unoccupiable: 'Nobody can be inside' } as const;
const HAZARD = { unknown: 'Not yet known', 'A-surface': 'Class A, surface fire', 'A-higher': 'Class A, higher hazard', B: 'Class B, flammable liquid', C: 'Class C, live electrical' } as const;

/** Stands for walls of which each says something else. */
const MIXED = 'mixed';

type EnclosureRef = RefOf<'enclosure'>;

function PartsSlip({ at, enclosure }: { readonly at: EnclosureRef; readonly enclosure: Enclosure }) {
  const store = useStoreItself();
  const plan = useShownPlan();
  const { length } = useFigures();
  const openings = Object.values(enclosure.openings);
  const zones = Object.values(enclosure.ceilingZones);
  const pick = (kind: 'opening' | 'ceiling-zone', id: string): void => store.session({ selection: [{ kind, level: at.level, enclosure: at.id, id }] });
  return (
    <Slip title="Openings and ceiling zones">
      {openings.length + zones.length === 0 ? <p className="quiet">None yet. Press O for an opening, Z for a part of the ceiling with its own height.</p> : null}
      <ul className="pick-list">
        {openings.map((opening) => (
          <li key={opening.id}>
            <button type="button" onClick={() => pick('opening', opening.id)}>
              <span>
                {thingName(plan, { kind: 'opening', level: at.level, enclosure: at.id, id: opening.id })}
              </span>
              <span className="quiet">
                {length(opening.width_m)} wide{opening.kind === 'door' ? `, ${opening.swing === 'none' ? 'no swing' : `opens ${opening.swing}`}` : ''}
              </span>
            </button>
          </li>
        ))}
        {zones.map((zone) => (
          <li key={zone.id}>
            <button type="button" onClick={() => pick('ceiling-zone', zone.id)}>
              <span>{thingName(plan, { kind: 'ceiling-zone', level: at.level, enclosure: at.id, id: zone.id })}</span>
              <span className="quiet">{length(zone.height_m)} high</span>
            </button>
          </li>
        ))}
      </ul>
    </Slip>
  );
}

/** What is known of the walls, each a press away. */
function WallsSlip({ at, enclosure }: { readonly at: EnclosureRef; readonly enclosure: Enclosure }) {
  const store = useStoreItself();
  const { length, quantity } = useFigures();
  const commit = useCommit();
  const { outline, holes } = enclosure;
  const walls = [outline, ...holes].flat();
  const borne = new Set(walls.map(({ wall }) => wall.allowablePressure_Pa));
  const [only = null] = borne;
  const reached = new Set(walls.map(({ wall }) => wall.reaches));
  const everyReach = (reaches: Wall['reaches']): void => {
    commit(sequence('Set how far up all walls go', walls.map(({ id }) => editWall({ kind: 'wall', level: at.level, enclosure: at.id, id }, { reaches }))));
  };
  const everyWall = (allowablePressure_Pa: number | null): void => {
    const changes = walls.map(({ id }) => editWall({ kind: 'wall', level: at.level, enclosure: at.id, id }, { allowablePressure_Pa }));
    commit(sequence('Set what all walls bear', changes));
  };
  return (
    <Slip title="Walls">
      <div className="fields">
        <QuantityField
          kind="pressureDifference"
          label="All walls bear"
          value={borne.size === 1 ? only : null}
          least={0}
          most={1e6}
          blank={{ text: borne.size > 1 ? 'not all alike' : 'not known', commit: () => everyWall(null) }}
          onCommit={everyWall}
          help={borne.has(null) ? 'Ask a structural engineer. Without it no relief vent can be sized.' : undefined}
        />
        <Choice label="All walls go up to" value={reached.size === 1 ? (walls[0]?.wall.reaches ?? 'unknown') : MIXED} options={reached.size === 1 ? optionsOf(REACHES) : [{ value: MIXED, label: 'Not all alike' }, ...optionsOf(REACHES)]} onCommit={(chosen) => (chosen === MIXED ? undefined : everyReach(chosen))} />
      </div>
      <ul className="pick-list">
        {outline.map((corner, i) => {
          const next = outline[(i + 1) % outline.length] ?? corner;
          const { construction, allowablePressure_Pa } = corner.wall;
          return (
            <li key={corner.id}>
              <button type="button" onClick={() => store.session({ selection: [{ kind: 'wall', level: at.level, enclosure: at.id, id: corner.id }] })}>
                <span>
                  Wall {i + 1}, {wallSide(enclosure, corner.id)}, {length(distance_m(corner, next))}
                </span>
                <span className={construction === 'unknown' ? 'is-open' : 'quiet'}>
                  {CONSTRUCTION[construction]}
                  {allowablePressure_Pa === null ? '' : `, ${quantity(allowablePressure_Pa, 'pressureDifference')}`}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </Slip>
  );
}

/** Form of an enclosure: what the room is, how high, how hot, who is in it. */
export function EnclosureForm({ at }: { readonly at: EnclosureRef }) {
  const plan = useShownPlan();
  const commit = useCommit();
  const enclosure = plan.levels[at.level]?.enclosures[at.id];
  if (!enclosure) return null;
  const change = (part: Partial<Enclosure>): void => {
    commit(editEnclosure(at, part));
  };
  return (
    <>
      <Slip title="Room">
        <div className="fields">
          <TextField label="Name" value={enclosure.name} required="A room needs a name." onCommit={(name) => change({ name })} wide />
          <Choice label="People" value={enclosure.occupancy} options={optionsOf(OCCUPANCY)} onCommit={(occupancy) => change({ occupancy })} wide />
          <Choice label="What can burn" value={enclosure.hazardClass} options={optionsOf(HAZARD)} onCommit={(hazardClass) => change({ hazardClass })} wide />
          <QuantityField
            kind="ratio"
            label="Design concentration"
            value={enclosure.concentration_pct === null ? null : enclosure.concentration_pct / 100}
            least={0}
            most={0.99}
            blank={{ text: 'not chosen', commit: () => change({ concentration_pct: null }) }}
            onCommit={(share) => change({ concentration_pct: share * 100 })}
            help={<LeastConcentration at={at} enclosure={enclosure} onTake={(concentration_pct) => change({ concentration_pct })} />}
          />
          <LengthField label="Height above the sea" value={enclosure.altitude_m} least={-1000} most={6000} blank={{ text: 'not known', commit: () => change({ altitude_m: null }) }} onCommit={(altitude_m) => change({ altitude_m })} />
          <TemperatureFields value={enclosure.temperature} onCommit={(temperature) => change({ temperature })} />
        </div>
        <div className="fields">
          <TextField label="Discharged together with" value={enclosure.dischargedWith} placeholder="by itself" onCommit={(dischargedWith) => change({ dischargedWith })} wide help="Rooms with the same name here are discharged together." />
        </div>
        <LongTextField label="What lies on the other sides" value={enclosure.adjacent} rows={2} onCommit={(adjacent) => change({ adjacent })} />
      </Slip>
      <CeilingSlip enclosure={enclosure} change={change} />
      <PeopleSlip people={enclosure.people} ambientSound_dBA={enclosure.ambientSound_dBA} change={change} />
      <LeakageSlip key={enclosure.id} enclosure={enclosure} change={change} />
      <ShutdownSlip at={at} enclosure={enclosure} change={change} />
      <AfterDischargeSlip key={`${enclosure.id} after`} after={enclosure.afterDischarge} onCommit={(afterDischarge) => change({ afterDischarge })} />
      <PartsSlip at={at} enclosure={enclosure} />
      <WallsSlip at={at} enclosure={enclosure} />
    </>
  );
}
