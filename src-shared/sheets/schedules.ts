import type { Derived, DerivedNozzle, Space } from '../derived/derived.ts';
import { nozzleName } from '../derived/nozzle-name.ts';
import type { AssemblyPart, Settings } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { type Datum, datumsOf, faceName, fromFace_m } from '../derived/datum.ts';
import { dropTo, networkStretches } from './pipe-stretches.ts';
import { clearHeight_m, degreesText, heightText, sizeText } from './sheet-text.ts';
import type { Table } from './tables.ts';

const NOT_KNOWN = 'not known';

/** Where a nozzle stands in figures: the same that the plan view draws. */
export interface NozzlePlace {
  readonly nozzle: DerivedNozzle;
  readonly space: Space | undefined;
  readonly datum: Datum | undefined;
  /** Distances from the two datum faces [m]. */
  readonly fromFaces_m: readonly [number, number] | undefined;
}

/** Places of all nozzles, each from the datum of its enclosure. */
export function nozzlePlaces(derived: Derived): NozzlePlace[] {
  const datums = datumsOf(derived);
  return derived.nozzles.map((nozzle) => {
    const datum = nozzle.space ? datums.get(nozzle.space.key) : undefined;
    const { at } = nozzle;
    return { nozzle, space: nozzle.space, datum, fromFaces_m: datum && at ? [fromFace_m(datum.faces[0], at), fromFace_m(datum.faces[1], at)] : undefined };
  });
}

/**
 * Nozzles with all that a fitter needs to place them.
 * @param isListed which nozzles; all when missing
 */
export function nozzleSchedule(derived: Derived, isListed: (nozzle: DerivedNozzle) => boolean = () => true): Table {
  const { lengths } = derived.plan.settings;
  return {
    title: 'Nozzles',
    note: 'Distances run from the finished datum faces, square to them, to the middle of the orifice. Heights are above the finished floor. Hole directions: 0° plan east, 90° plan north.',
    columns: [
      { head: 'Nozzle', font: 'bold' },
      { head: 'Space', isWide: true },
      { head: 'From', align: 'right' },
      { head: 'And from', align: 'right' },
      { head: 'Orifice height', align: 'right' },
      { head: 'Below ceiling', align: 'right' },
      { head: 'Holes' },
      { head: 'Orifice area', align: 'right' },
      { head: 'Drop pipe', align: 'right' },
    ],
    rows: nozzlePlaces(derived)
      .filter(({ nozzle }) => isListed(nozzle))
      .map(({ nozzle, space, datum, fromFaces_m }) => {
      const { at, localCeiling_m, holes_rad } = nozzle;
      const drop = at ? dropTo(networkStretches(nozzle.network, nozzle.network.pipes), at) : undefined;
      const area = nozzle.nozzle.orificeArea_m2;
      return [
        nozzleName(derived, nozzle),
        space?.name ?? 'in no space',
        datum && fromFaces_m ? `${faceName(datum.faces[0])} ${formatLength(fromFaces_m[0], lengths)}` : NOT_KNOWN,
        datum && fromFaces_m ? `${faceName(datum.faces[1])} ${formatLength(fromFaces_m[1], lengths)}` : NOT_KNOWN,
        at ? heightText(at.z, lengths) : NOT_KNOWN,
        at && localCeiling_m !== undefined ? `${formatLength(Math.abs(localCeiling_m - at.z), lengths)}${localCeiling_m < at.z ? ' ABOVE' : ''}` : NOT_KNOWN,
        holes_rad.length > 0 ? holes_rad.map(degreesText).join(', ') : 'none drawn',
        area === null ? NOT_KNOWN : formatQuantity(area, 'orificeArea', lengths),
        drop ? `${sizeText(drop.size, lengths)}, ${formatLength(drop.length_m, lengths)}` : 'none',
      ];
    }),
  };
}

const PART_WORDS: Readonly<Record<string, string>> = { hose: 'hose', 'check-valve': 'check valve', manifold: 'manifold', 'stop-valve': 'stop valve', 'relief-valve': 'relief valve', regulator: 'regulator', adapter: 'adapter' };

/** A part of a discharge assembly in words: its name, what it is set to, and a warning where it stands the wrong way round. */
export function assemblyPartWords({ kind, name, setPressure_Pa, arrowDownstream }: AssemblyPart, lengths: Settings['lengths']): string {
  const set = setPressure_Pa === null ? '' : ` set to ${formatQuantity(setPressure_Pa, 'pressure', lengths)}`;
  return `${name || PART_WORDS[kind] || kind}${set}${arrowDownstream ? '' : ' (ARROW AGAINST THE FLOW)'}`;
}

/** Cylinders of each network with their unit, and the discharge assembly in flow order. */
export function cylinderSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  return {
    title: 'Cylinders and discharge assembly',
    shortTitle: 'Cylinders',
    columns: [{ head: 'Network' }, { head: 'Cylinders', font: 'bold' }, { head: 'Unit', isWide: true }, { head: 'Rail height', align: 'right' }, { head: 'Assembly in flow order', isWide: true }],
    rows: derived.networks.map(({ network, profile }) => {
      const cylinders = Object.values(network.cylinders);
      const rails = new Set(cylinders.map(({ railHeight_m }) => (railHeight_m === null ? NOT_KNOWN : formatLength(railHeight_m, lengths))));
      const parts = network.assembly.map((part) => assemblyPartWords(part, lengths));
      return [
        network.name,
        cylinders.length > 0 ? `${cylinders.length}: ${cylinders.map(({ name }) => name).join(', ')}` : 'none drawn',
        profile ? profile.name : 'profile lost',
        cylinders.length > 0 ? [...rails].join(', ') : NOT_KNOWN,
        parts.length > 0 ? parts.join(', ') : 'none entered',
      ];
    }),
  };
}

const OCCUPANCY: Readonly<Record<string, string>> = {
  unknown: NOT_KNOWN,
  'normally-occupied': 'normally occupied',
  'normally-unoccupied': 'normally unoccupied',
  unoccupiable: 'cannot be occupied',
};
const HAZARD: Readonly<Record<string, string>> = { unknown: NOT_KNOWN, 'A-surface': 'Class A surface', 'A-higher': 'Class A higher hazard', B: 'Class B', C: 'Class C' };

/** Every protected space with the figures that its volume rests on. */
export function spaceSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  return {
    title: 'Spaces',
    note: 'Volumes are gross: nothing is deducted.',
    columns: [
      { head: 'Space', isWide: true },
      { head: 'Floor', align: 'right' },
      { head: 'Height', align: 'right' },
      { head: 'Gross volume', align: 'right' },
      { head: 'Protected' },
      { head: 'Hazard' },
      { head: 'Occupancy' },
      { head: 'Temperature', align: 'right' },
      { head: 'Design', align: 'right' },
    ],
    rows: derived.spaces.map((space) => {
      const { temperature, concentration_pct, hazardClass, occupancy } = space.enclosure;
      const height_m = clearHeight_m(space);
      const [least, greatest] = temperature ? [temperature.least_K, temperature.greatest_K].map((kelvins) => formatQuantity(kelvins, 'temperature', lengths)) : [];
      return [
        space.name,
        formatQuantity(space.area_m2, 'area', lengths),
        height_m === undefined ? NOT_KNOWN : formatLength(height_m, lengths),
        space.grossVolume_m3 === undefined ? NOT_KNOWN : formatQuantity(space.grossVolume_m3, 'volume', lengths),
        space.isProtected ? 'yes' : 'NO',
        HAZARD[hazardClass] ?? hazardClass,
        OCCUPANCY[occupancy] ?? occupancy,
        least && greatest ? `${least} to ${greatest}` : NOT_KNOWN,
        concentration_pct === null ? NOT_KNOWN : `${concentration_pct} %`,
      ];
    }),
  };
}
