import type { HoldPointState } from '#shared/site/arming-order';
import { holdPointCriterion } from '#shared/site/hold-point-criteria';
import { tickInOrder } from '#shared/site/tick-in-order';
import { presentEvaluation } from '../../store/selectors.ts';
import { useStoreItself } from '../../store/use-store.ts';
import { countOf } from '../../plan-words.ts';
import { nowText } from './now-text.ts';
import { ReadingList } from './reading-list.tsx';
import { type SitePeople, SitePeopleFields } from './site-people.tsx';

interface NextHoldPointProps {
  readonly state: HoldPointState;
  readonly people: SitePeople;
  onPeople(people: SitePeople): void;
}

/** The hold point to do now: cautions first, then its readings, then who signs. */
export function NextHoldPoint({ state: { point, standing, cautions, readings, lacks }, people, onPeople }: NextHoldPointProps) {
  const store = useStoreItself();
  const tick = (): void => {
    store.commit(tickInOrder(presentEvaluation(store.get()), point.id, { by: people.by, witness: point.isWitnessed ? people.witness : '', at: nowText() }));
  };
  const open = readings.filter(({ verdict }) => verdict !== 'ok').length;
  const others = lacks.slice(open);
  return (
    <div className="next-point" data-point={point.id}>
      <p className="next-point-head">
        <strong>
          Next: {point.id} {point.words}
        </strong>
      </p>
      {standing === 'lost' ? <p>It was ticked, but what it stood on no longer holds. Put that right and tick it again.</p> : null}
      <p>{holdPointCriterion(point.id)}</p>
      <p className="quiet">{point.why}</p>
      {cautions.length > 0 ? (
        <div className="point-cautions">
          <strong>Caution</strong>
          {cautions.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </div>
      ) : null}
      <SitePeopleFields people={people} isWitnessed={point.isWitnessed} hasReadings={readings.length > 0} onChange={onPeople} />
      <ReadingList readings={readings} people={people} />
      {open === 0 ? others.map((words) => <p key={words}>{words}</p>) : null}
      <div className="row">
        <button type="button" className="button" disabled={lacks.length > 0} onClick={tick}>
          Tick {point.id}
        </button>
        {open > 0 ? <span className="quiet">{countOf(open, 'reading is', 'readings are')} still open.</span> : point.isWitnessed ? <span className="quiet">The witness signs on paper as well.</span> : null}
      </div>
    </div>
  );
}
