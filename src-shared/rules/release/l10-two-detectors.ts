import type { Space } from '../../derived/derived.ts';
import { placedOf } from '../../derived/device-place.ts';
import type { PlanPoint } from '../../geometry/point.ts';
import type { Device } from '../../model/plan.ts';
import type { Place } from '../finding.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { roomDevices } from '../safety/room-devices.ts';
import { perServedRoom } from '../served-rooms.ts';

type Detector = Extract<Device, { kind: 'detector' }>;

interface Watched {
  readonly level: string;
  readonly kind: Space['kind'];
  readonly outline: readonly PlanPoint[];
  readonly detectors: readonly Detector[];
}

/** A fire in one circuit alone warns; two circuits release. */
const LEAST_ZONES = 2;
const SOURCE = 'authority; NFPA 2001 and NFPA 72, release on detectors of two circuits (memory)';

const zoneOf = ({ zone }: Detector): string => zone.trim().toLowerCase();
const placeOf = ({ level, outline, detectors }: Watched): Place => ({ level, at: detectors.length > 0 ? detectors.map(({ at }) => at) : outline });
const counted = (count: number): string => (count === 1 ? 'one detector' : `${count} detectors`);

/**
 * L10: every protected space, voids included, is watched by detectors of two circuits, so that one false alarm releases
 * nothing.
 * Measure: different zones of the detectors drawn in the space. Limit: 2.
 * Not checked: the zone of a detector that matters is not entered.
 */
export const l10TwoDetectors = defineRule<Watched>({
  id: 'L10',
  title: 'Two detectors in every space',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'zones of the detectors in each protected space ≥ 2',
    source: SOURCE,
    caution: 'How many detectors the space needs, and where, follows from their listing, the ceiling and the air that moves: NFPA 72 and the authority decide.',
  },
  subjects: perServedRoom((room) => {
    const detectors = placedOf(roomDevices(room), 'detector')
      .filter(({ where }) => where === 'inside')
      .map(({ device }) => device);
    return room.on.spaces
      .filter(({ enclosureRef, isProtected }) => isProtected && enclosureRef.id === room.ref.id)
      .map(({ kind, outline, name }) => ({ subject: { level: room.ref.level, kind, outline, detectors: detectors.filter(({ space }) => space === kind) }, ref: room.ref, name }));
  }),
  check(subject) {
    const { detectors } = subject;
    const place = placeOf(subject);
    const zones = new Set(detectors.map(zoneOf).filter((zone) => zone !== ''));
    const blank = detectors.filter((detector) => zoneOf(detector) === '');
    const figures = atLeast(zones.size, { value: LEAST_ZONES, source: SOURCE }, 0);
    const inputs = detectors.map(({ name, zone, senses }) => ({ label: name || 'Detector', value: `${senses ?? 'kind not known'}, zone ${zone.trim() || 'not known'}`, source: 'plan' }));
    const cure = { kind: 'advice', text: 'Draw a detector of another zone in this space.' } as const;
    if (figures.isKept) return { ...figures, text: `${counted(detectors.length)} of ${zones.size} zones ${detectors.length === 1 ? 'watches' : 'watch'} it.`.replace(/^\w/, (first) => first.toUpperCase()), inputs, place };
    if (detectors.length === 0) return { ...figures, text: 'No detector is drawn in it. Draw two of different zones.', inputs, place, cure };
    if (detectors.length === 1) return { ...figures, text: 'Only one detector is drawn in it. Draw another one, of another zone.', inputs, place, cure };
    if (blank.length > 0) return notChecked(`the zone of ${blank.map(({ name }) => `“${name || 'a detector'}”`).join(', ')} is not entered.`, place);
    return { ...figures, text: `Its ${counted(detectors.length)} are all of one zone: one false alarm releases the agent. Put one on another zone.`, inputs, place, cure };
  },
});
