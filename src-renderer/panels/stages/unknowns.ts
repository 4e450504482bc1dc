import type { Device, Level, Plan, Ref } from '#shared/model/plan';

/** Something that the survey has not brought yet. */
export interface Unknown {
  readonly ref: Ref;
  readonly what: string;
}

/** What nobody has looked at yet of a device. */
function unknownOfDevice(device: Device): string[] {
  const height = device.height_m === null ? ['height'] : [];
  switch (device.kind) {
    case 'detector':
      return [...height, ...(device.senses === null ? ['what it senses'] : []), ...(device.zone === '' ? ['zone'] : [])];
    case 'sounder':
      return [...height, ...(device.isHeard && device.sound_dBA === null ? ['loudness'] : []), ...(device.isSeen && device.light_cd === null ? ['light'] : [])];
    case 'sign':
      return [...height, ...(device.wording.trim() === '' ? ['wording'] : [])];
    case 'manual-release':
      return [...height, ...(device.isGuarded === null ? ['guard'] : [])];
    case 'abort':
      return [...height, ...(device.isHeld === null ? ['whether it must be held'] : []), ...(device.yieldsToRelease === null ? ['whether manual release goes before it'] : [])];
    case 'disconnect':
      return [...height, ...(device.isKeyed === null ? ['key'] : []), ...(device.isSupervised === null ? ['supervision'] : [])];
    case 'lock-out-valve':
      return [...height, ...(device.isSupervised === null ? ['supervision'] : [])];
    default:
      return height;
  }
}

/** What nobody has looked at yet around the enclosures of a level. */
function unknownsAround({ id: level, devices, adjoining, obstructions }: Level): Unknown[] {
  return [
    ...Object.values(obstructions).flatMap((thing): Unknown[] => (thing.kind === 'live-part' && thing.voltage_V === null ? [{ ref: { kind: 'obstruction', level, id: thing.id }, what: 'voltage' }] : [])),
    ...Object.values(devices).flatMap((device) => unknownOfDevice(device).map((what): Unknown => ({ ref: { kind: 'device', level, id: device.id }, what }))),
    ...Object.values(adjoining).flatMap(({ id, kind, gas }): Unknown[] => {
      const ref: Ref = { kind: 'adjoining', level, id };
      return [...(kind === 'unknown' ? [{ ref, what: 'what it is' }] : []), ...(gas === 'not-assessed' ? [{ ref, what: 'gas that drifts in' }] : [])];
    }),
  ];
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
      if (enclosure.ceiling.make === 'unknown') unknowns.push({ ref, what: 'what the ceiling is' });
      if (enclosure.ambientSound_dBA === null) unknowns.push({ ref, what: 'usual noise' });
      const walls = enclosure.outline.filter((corner) => corner.wall.construction === 'unknown' || corner.wall.allowablePressure_Pa === null);
      const [first] = walls;
      if (first) unknowns.push({ ref: { kind: 'wall', level: level.id, enclosure: enclosure.id, id: first.id }, what: `${walls.length} of ${enclosure.outline.length} walls` });
      for (const opening of Object.values(enclosure.openings)) {
        const at: Ref = { kind: 'opening', level: level.id, enclosure: enclosure.id, id: opening.id };
        if (opening.leadsTo === 'unknown') unknowns.push({ ref: at, what: 'where it leads' });
        if (opening.closes === null) unknowns.push({ ref: at, what: 'whether it closes' });
      }
    }
    unknowns.push(...unknownsAround(level));
  }
  for (const network of Object.values(plan.networks)) {
    for (const cylinder of Object.values(network.cylinders)) {
      if (cylinder.railHeight_m === null && cylinder.mounting === 'wall') unknowns.push({ ref: { kind: 'cylinder', network: network.id, id: cylinder.id }, what: 'rail height' });
    }
  }
  return unknowns;
}
