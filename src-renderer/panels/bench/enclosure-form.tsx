import { useState } from 'react';
import { sequence } from '#shared/commands/command';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import { editWall } from '#shared/commands/edit-wall';
import { distance_m } from '#shared/geometry/point';
import type { Enclosure, RefOf } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import { useStoreItself } from '../../store/use-store.ts';
import { Choice, Tick, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { LongTextField, TextField } from '../fields/text-field.tsx';
import { LeastConcentration } from './least-concentration.tsx';
import { LeakageSlip } from './leakage-slip.tsx';
import { PeopleSlip } from './people-slip.tsx';
import { Slip } from './slip.tsx';
import { lowHeight_m, withSlope } from './slope-form.ts';
import { CONSTRUCTION, wallSide } from './wall-words.ts';
import { TemperatureFields } from './temperature-fields.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

const OCCUPANCY = { unknown: 'Not yet known', 'normally-occupied': 'People work here', 'normally-unoccupied': 'People come now and then', unoccupiable: 'Nobody can be inside' } as const;
const HAZARD = { unknown: 'Not yet known', 'A-surface': 'Class A, surface fire', 'A-higher': 'Class A, higher hazard', B: 'Class B, flammable liquid', C: 'Class C, live electrical' } as const;

type EnclosureRef = RefOf<'enclosure'>;
type Voids = 'underFloor' | 'ceilingVoid';

/** A void begins with the depth that the user types: no depth is ever assumed. */
function VoidFields({ label, space, onCommit }: { readonly label: string; readonly space: Enclosure[Voids]; onCommit(space: Enclosure[Voids]): void }) {
  const [isAsked, ask] = useState(false);
  const tick = (has: boolean): void => {
    ask(has);
    if (!has && space) onCommit(null);
  };
  return (
    <>
      <Tick label={label} value={space !== null || isAsked} onCommit={tick} />
      {space || isAsked ? (
        <div className="fields is-inset">
          <LengthField
            label="Clear depth"
            value={space?.depth_m ?? null}
            least={0.01}
            onCommit={(depth_m) => onCommit({ isProtected: true, exclusion: null, ...space, depth_m })}
            help={space ? undefined : 'Type its depth: until then it is not in the plan and not checked.'}
          />
          {space ? (
            <Choice
              label="Agent there"
              value={space.isProtected ? 'yes' : 'no'}
              options={[
                { value: 'yes', label: 'Protected' },
                { value: 'no', label: 'Left out, signed for' },
              ]}
              onCommit={(chosen) => onCommit({ ...space, isProtected: chosen === 'yes' })}
            />
          ) : null}
        </div>
      ) : null}
    </>
  );
}

function CeilingSlip({ enclosure, change }: { readonly enclosure: Enclosure; change(part: Partial<Enclosure>): void }) {
  const { id, slope } = enclosure;
  return (
    <Slip title="Ceiling and voids">
      <div className="fields">
        <LengthField
          label={slope ? 'Height at the low place' : 'Floor to ceiling'}
          value={lowHeight_m(enclosure)}
          least={0.1}
          blank={{ text: 'not known', commit: () => change({ height_m: null }) }}
          help={enclosure.height_m === null ? 'Without it, drop and volume are not checked.' : undefined}
          onCommit={(low_m) => change(slope ? withSlope(enclosure, { low_m }) : { height_m: low_m })}
        />
      </div>
      <Tick label="Sloped ceiling" value={slope !== null} onCommit={(has) => change(has ? withSlope(enclosure, {}) : { height_m: lowHeight_m(enclosure), slope: null })} />
      {slope ? (
        <div className="fields is-inset">
          <QuantityField kind="angle" label="Rises toward" value={slope.direction_rad} onCommit={(direction_rad) => change(withSlope(enclosure, { direction_rad }))} help="0° is east, 90° is north." />
          <QuantityField kind="ratio" label="Rise over run" value={slope.rise} onCommit={(rise) => change(withSlope(enclosure, { rise }))} />
        </div>
      ) : null}
      <VoidFields key={`${id} under`} label="Under-floor void" space={enclosure.underFloor} onCommit={(underFloor) => change({ underFloor })} />
      <VoidFields key={`${id} above`} label="Void above the ceiling" space={enclosure.ceilingVoid} onCommit={(ceilingVoid) => change({ ceilingVoid })} />
    </Slip>
  );
}

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
        <LongTextField label="What lies on the other sides" value={enclosure.adjacent} rows={2} onCommit={(adjacent) => change({ adjacent })} />
      </Slip>
      <CeilingSlip enclosure={enclosure} change={change} />
      <PeopleSlip people={enclosure.people} onCommit={(people) => change({ people })} />
      <LeakageSlip key={enclosure.id} enclosure={enclosure} change={change} />
      <PartsSlip at={at} enclosure={enclosure} />
      <WallsSlip at={at} enclosure={enclosure} />
    </>
  );
}
