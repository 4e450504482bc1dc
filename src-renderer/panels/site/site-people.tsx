import type { Plan } from '#shared/model/plan';
import { TextField } from '../fields/text-field.tsx';

/** Who is on site, typed once and kept for every reading and tick. */
export interface SitePeople {
  readonly by: string;
  readonly witness: string;
  readonly instrument: string;
}

/** Whoever was last there. */
export function lastPeople({ siteRecord: { log, checks } }: Plan): SitePeople {
  const entry = log.at(-1);
  const ticks = Object.values(checks).filter(({ done }) => done);
  return { by: entry?.by ?? ticks.at(-1)?.by ?? '', witness: ticks.findLast(({ witness }) => witness !== '')?.witness ?? '', instrument: entry?.instrument ?? '' };
}

interface SitePeopleFieldsProps {
  readonly people: SitePeople;
  /** Asked where a witness signs. */
  readonly isWitnessed: boolean;
  readonly hasReadings: boolean;
  onChange(people: SitePeople): void;
}

/** Asks who does the work, who sees it, and with what it is measured. */
export function SitePeopleFields({ people, isWitnessed, hasReadings, onChange }: SitePeopleFieldsProps) {
  return (
    <div className="fields">
      <TextField label="Done by" value={people.by} onCommit={(by) => onChange({ ...people, by })} placeholder="name" />
      {isWitnessed ? <TextField label="Witness" value={people.witness} onCommit={(witness) => onChange({ ...people, witness })} placeholder="name of somebody else" /> : null}
      {hasReadings ? <TextField label="Instrument" value={people.instrument} onCommit={(instrument) => onChange({ ...people, instrument })} placeholder="make and number" /> : null}
    </div>
  );
}
