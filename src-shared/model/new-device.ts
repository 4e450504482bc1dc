import type { PlanPoint } from '../geometry/point.ts';
import type { Device, DeviceKind } from './plan.ts';

/** A device of a kind of which nothing is known but its place and name. */
export function newDevice(kind: DeviceKind, id: string, name: string, { x, y }: PlanPoint): Device {
  const placed = { id, name, at: { x, y }, height_m: null, facing_rad: null };
  switch (kind) {
    case 'detector':
      return { ...placed, kind, senses: null, zone: '', space: 'room' };
    case 'sounder':
      return { ...placed, kind, isHeard: true, isSeen: true, sound_dBA: null, light_cd: null };
    case 'sign':
      return { ...placed, kind, sign: 'entrance', wording: '' };
    case 'manual-release':
      return { ...placed, kind, isGuarded: null };
    case 'abort':
      return { ...placed, kind, isHeld: null, yieldsToRelease: null };
    case 'disconnect':
      return { ...placed, kind, isKeyed: null, isSupervised: null };
    case 'lock-out-valve':
      return { ...placed, kind, isSupervised: null };
    case 'diffuser':
      return { ...placed, kind, air: 'supply' };
    case 'door-button':
    case 'control-panel':
    case 'air-intake':
      return { ...placed, kind };
  }
}
