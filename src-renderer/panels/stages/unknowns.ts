import type { Plan, Ref } from '#shared/model/plan';

/** Something that the survey has not brought yet. */
export interface Unknown {
  readonly ref: Ref;
  readonly what: string;
}

/** Everything in a plan that is marked as not yet known, weightiest first within its thing. */
export function unknownsOf(plan: Plan): Unknown[] {
  const unknowns: Unknown[] = [];
  for (const level of Object.values(plan.levels)) {
    for (const underlay of Object.values(level.underlays)) {
      const ref: Ref = { kind: 'underlay', level: level.id, id: underlay.id };
      if (underlay.metresPerUnit === null) unknowns.push({ ref, what: 'scale' });
    }
    for (const enclosure of Object.values(level.enclosures)) {
      const ref: Ref = { kind: 'enclosure', level: level.id, id: enclosure.id };
      if (enclosure.height_m === null) unknowns.push({ ref, what: 'floor to ceiling' });
      if (enclosure.temperature === null) unknowns.push({ ref, what: 'temperatures' });
      if (enclosure.altitude_m === null) unknowns.push({ ref, what: 'height above the sea' });
      if (enclosure.occupancy === 'unknown') unknowns.push({ ref, what: 'people in it' });
      if (enclosure.hazardClass === 'unknown') unknowns.push({ ref, what: 'what can burn' });
      if (enclosure.concentration_pct === null) unknowns.push({ ref, what: 'design concentration' });
      const walls = enclosure.outline.filter((corner) => corner.wall.construction === 'unknown' || corner.wall.allowablePressure_Pa === null);
      const [first] = walls;
      if (first) unknowns.push({ ref: { kind: 'wall', level: level.id, enclosure: enclosure.id, id: first.id }, what: `${walls.length} of ${enclosure.outline.length} walls` });
      for (const opening of Object.values(enclosure.openings)) {
        const at: Ref = { kind: 'opening', level: level.id, enclosure: enclosure.id, id: opening.id };
        if (opening.leadsTo === 'unknown') unknowns.push({ ref: at, what: 'where it leads' });
        if (opening.closes === null) unknowns.push({ ref: at, what: 'whether it closes' });
      }
    }
  }
  for (const network of Object.values(plan.networks)) {
    for (const cylinder of Object.values(network.cylinders)) {
      if (cylinder.railHeight_m === null && cylinder.mounting === 'wall') unknowns.push({ ref: { kind: 'cylinder', network: network.id, id: cylinder.id }, what: 'rail height' });
    }
  }
  return unknowns;
}
