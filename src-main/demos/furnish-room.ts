import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '#shared/geometry/point';
import { newDevice } from '#shared/model/new-device';
import { type Adjoining, type Device, type DeviceKind, type Enclosure, type Plan, takeId } from '#shared/model/plan';
import { demoLevel } from './demo-plan.ts';
import { ft } from './floor-drawing.ts';

/** Everything of a kind but what every device has. */
type About<K extends DeviceKind> = Partial<Omit<Extract<Device, { kind: K }>, 'id' | 'kind' | 'at'>>;

const SHORT: Readonly<Record<DeviceKind, string>> = {
  detector: 'D', sounder: 'H', sign: 'Sign ', 'manual-release': 'MR', abort: 'A', disconnect: 'K', 'lock-out-valve': 'LV', 'door-button': 'B', 'control-panel': 'FP', diffuser: 'V', 'air-intake': 'I',
};

/** Adds a device to the one level of a demo; its number counts within its kind. */
export function addDevice<K extends DeviceKind>(plan: Plan, kind: K, at: PlanPoint, height_m: number, facing_rad: number | null, about: About<K>): void {
  const { devices } = demoLevel(plan);
  const number = Object.values(devices).filter((each) => each.kind === kind).length + 1;
  const id = takeId(plan, 'device');
  devices[id] = { ...newDevice(kind, id, `${SHORT[kind]}${number}`, at), height_m, facing_rad, ...about } as Device;
}

/** Adds a space beside the rooms. */
export function addAdjoining(plan: Plan, name: string, kind: Adjoining['kind'], outline: readonly PlanPoint[], gas: Adjoining['gas'], note: string): void {
  const id = takeId(plan, 'adjoining');
  demoLevel(plan).adjoining[id] = { id, name, outline: outline.map(({ x, y }) => ({ x, y })), kind, floor_m: 0, gas, note };
}

const EYE_m = ft(5);
const HAND_m = ft(3, 10);

/** Where a door of a room is: its middle on the wall face, the direction along the wall to where more of it is left, and the one into the room. */
function doorPlaces(room: Enclosure): { readonly middle: PlanPoint; readonly along_rad: number; readonly inward_rad: number; readonly width_m: number }[] {
  return Object.values(room.openings)
    .filter(({ kind }) => kind === 'door')
    .flatMap(({ wall, along_m, width_m }) => {
      const index = room.outline.findIndex(({ id }) => id === wall);
      const [a, b] = [room.outline[index], room.outline[(index + 1) % room.outline.length]];
      if (!a || !b) return [];
      const wall_rad = bearing_rad(a, b);
      const isLongerAhead = distance_m(a, b) - along_m >= along_m;
      return [{ middle: polar(planPoint(a.x, a.y), wall_rad, along_m), along_rad: isLongerAhead ? wall_rad : wall_rad + Math.PI, inward_rad: wall_rad + Math.PI / 2, width_m }];
    });
}

/** What else a room of a demo is furnished with. */
export interface Furnishing {
  /** Two places for detectors, on two circuits, in the room, and in its under-floor void where it has one. */
  readonly detectors: readonly [PlanPoint, PlanPoint];
  readonly sounders: readonly { readonly at: PlanPoint; readonly facing_rad: number }[];
  readonly cylinderSign: { readonly at: PlanPoint; readonly facing_rad: number };
}

/** Signs, buttons, detectors and sounders of one room, as its doors and cylinders ask for them. */
export function furnishRoom(plan: Plan, room: Enclosure, { detectors, sounders, cylinderSign }: Furnishing): void {
  const height_m = room.height_m ?? 0;
  for (const [i, { middle, along_rad, inward_rad, width_m }] of doorPlaces(room).entries()) {
    const beside = (aside_m: number, away_m: number): PlanPoint => polar(polar(middle, along_rad, width_m / 2 + aside_m), inward_rad, away_m);
    addDevice(plan, 'sign', beside(0.25, -0.2), EYE_m, inward_rad + Math.PI, { sign: 'entrance', wording: 'Nitrogen fire suppression. Do not enter during or after a discharge until ventilated.' });
    addDevice(plan, 'manual-release', beside(0.25, 0.05), HAND_m, inward_rad, { isGuarded: true });
    addDevice(plan, 'sign', beside(0.05, 0.05), EYE_m, inward_rad, { sign: 'manual-release', wording: 'Releases nitrogen into this room.' });
    addDevice(plan, 'abort', beside(0.45, 0.05), HAND_m, inward_rad, { isHeld: true, yieldsToRelease: true });
    if (i > 0) continue;
    addDevice(plan, 'sign', beside(0.65, 0.05), EYE_m, inward_rad, { sign: 'inside', wording: 'Nitrogen fire suppression. Leave at once when the alarm sounds.' });
    addDevice(plan, 'control-panel', beside(0.95, 0.1), EYE_m, inward_rad, {});
    addDevice(plan, 'disconnect', beside(1.25, 0.05), HAND_m, inward_rad, { isKeyed: true, isSupervised: true });
  }
  addDevice(plan, 'sign', cylinderSign.at, EYE_m, cylinderSign.facing_rad, { sign: 'cylinder', wording: 'Nitrogen under high pressure.' });
  detectors.forEach((at, i) => {
    addDevice(plan, 'detector', at, height_m - 0.05, null, { senses: 'smoke', zone: String(i + 1), space: 'room' });
    if (room.underFloor) addDevice(plan, 'detector', planPoint(at.x + 0.3, at.y), -0.05, null, { senses: 'smoke', zone: String(i + 1), space: 'under-floor' });
  });
  for (const { at, facing_rad } of sounders) addDevice(plan, 'sounder', at, height_m - 0.3, facing_rad, { isHeard: true, isSeen: true, sound_dBA: 92, light_cd: 110 });
  const fan = takeId(plan, 'shutdown');
  room.shutdowns[fan] = { id: fan, name: 'Ventilation of the room', kind: 'fan', target: null, on: 'first-detector' };
  const power = takeId(plan, 'shutdown');
  room.shutdowns[power] = { id: power, name: 'Power to the equipment', kind: 'power', target: null, on: 'second-detector' };
}

