import type { Derived, DerivedNetwork, DerivedNozzle, FittingKind, Space } from '../derived/derived.ts';
import type { Plan, Settings } from '../model/plan.ts';
import { type PipeSize, pipeSizeRank } from '../profile/pipe-table.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { type Datum, datumsOf, faceName, fromFace_m } from './datum.ts';
import { dropTo, networkStretches } from './pipe-stretches.ts';
import { degreesText, heightText, sentence, sizeText } from './sheet-text.ts';
import type { Table } from './tables.ts';

type Lengths = Settings['lengths'];

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

/** Name of a nozzle in a table; the network's is added when two nozzles share one. */
export function nozzleName(derived: Derived, { nozzle, network }: DerivedNozzle): string {
  const isShared = derived.nozzles.filter((other) => other.nozzle.name === nozzle.name).length > 1;
  return isShared ? `${nozzle.name} (${network.network.name})` : nozzle.name;
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
        at && localCeiling_m !== undefined ? formatLength(localCeiling_m - at.z, lengths) : NOT_KNOWN,
        holes_rad.length > 0 ? holes_rad.map(degreesText).join(', ') : 'none drawn',
        area === null ? NOT_KNOWN : formatQuantity(area, 'orificeArea', lengths),
        drop ? `${sizeText(drop.size, lengths)}, ${formatLength(drop.length_m, lengths)}` : 'none',
      ];
    }),
  };
}

const FITTING_WORDS: Readonly<Record<FittingKind, string>> = {
  'elbow-90': '90° elbow',
  'elbow-45': '45° elbow',
  'odd-bend': 'bend of another angle',
  tee: 'tee',
  cross: 'cross',
  reducer: 'reducer',
  coupling: 'coupling',
  cap: 'cap',
};

/** Total of pipe by size, schedule, material and joint. */
export function pipeSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  const totals = new Map<string, { size: PipeSize; words: readonly [string, string, string]; length_m: number; pieces: number }>();
  for (const network of derived.networks) {
    for (const { pipe, length_m } of network.pipes) {
      const words = [`Sch ${pipe.schedule}`, pipe.material.replace('-', ' '), pipe.joint] as const;
      const key = [pipe.size, ...words].join('/');
      const known = totals.get(key) ?? { size: pipe.size, words, length_m: 0, pieces: 0 };
      totals.set(key, { ...known, length_m: known.length_m + length_m, pieces: known.pieces + 1 });
    }
  }
  return {
    title: 'Pipe',
    note: 'Lengths run from centre to centre of fittings; the cut length is shorter by the take-off of the fittings.',
    columns: [
      { head: 'Size', font: 'bold' },
      { head: 'Wall' },
      { head: 'Material', isWide: true },
      { head: 'Joint' },
      { head: 'Total length', align: 'right' },
    ],
    rows: [...totals.values()]
      .sort((a, b) => pipeSizeRank(b.size) - pipeSizeRank(a.size))
      .map(({ size, words: [wall, material, joint], length_m }) => [sizeText(size, lengths), wall, sentence(material), joint, formatLength(length_m, lengths)]),
  };
}

/** Sizes of the pipes at a fitting, the one toward the source first. */
function fittingSizes(network: DerivedNetwork, pipes: readonly string[], lengths: Lengths): string {
  const sizes = pipes.flatMap((id) => {
    const pipe = network.pipes.find(({ ref }) => ref.id === id);
    return pipe ? [pipe.pipe.size] : [];
  });
  const distinct = new Set(sizes);
  return (distinct.size === 1 ? [...distinct] : sizes).map((size) => sizeText(size, lengths)).join(' × ');
}

/** Count of fittings by kind and size. */
export function fittingSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  const counts = new Map<string, { kind: FittingKind; sizes: string; count: number }>();
  for (const network of derived.networks) {
    for (const { kind, pipes } of network.fittings) {
      const sizes = fittingSizes(network, pipes, lengths);
      const key = `${kind}/${sizes}`;
      const known = counts.get(key) ?? { kind, sizes, count: 0 };
      counts.set(key, { ...known, count: known.count + 1 });
    }
  }
  const kinds = Object.keys(FITTING_WORDS);
  return {
    title: 'Fittings',
    columns: [{ head: 'Fitting', isWide: true }, { head: 'Size' }, { head: 'Count', align: 'right' }],
    rows: [...counts.values()]
      .sort((a, b) => kinds.indexOf(a.kind) - kinds.indexOf(b.kind) || (a.sizes < b.sizes ? -1 : 1))
      .map(({ kind, sizes, count }) => [sentence(FITTING_WORDS[kind]), sizes, String(count)]),
  };
}

/** Straight stretches of pipe with both ends in figures, for the cut list and for checking the route. */
export function runSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  const rows = derived.networks.flatMap((network) =>
    networkStretches(network, network.pipes).map((stretch) => {
      const way = stretch.lie === 'upright' ? (stretch.way === 'riser' ? 'up' : 'down') : stretch.lie;
      const heights = stretch.lie === 'level' ? heightText(stretch.from.z, lengths) : `${heightText(stretch.from.z, lengths)} to ${heightText(stretch.to.z, lengths)}`;
      return [network.network.name, sizeText(stretch.size, lengths), way, formatLength(stretch.length_m, lengths), heights];
    }),
  );
  return {
    title: 'Pipe runs in flow order',
    shortTitle: 'Pipe runs',
    note: 'Straight pipe from fitting to fitting; heights of the centreline above the finished floor.',
    columns: [{ head: 'Network', isWide: true }, { head: 'Size' }, { head: 'Lies' }, { head: 'Length', align: 'right' }, { head: 'Height', align: 'right' }],
    rows,
  };
}

/** Way of the agent from the cylinders to each nozzle. */
export function pathSchedule(derived: Derived): Table {
  const { lengths } = derived.plan.settings;
  return {
    title: 'Paths',
    note: 'Developed length from the end of the discharge assembly, drops included.',
    columns: [{ head: 'Nozzle', font: 'bold', isWide: true }, { head: 'Length', align: 'right' }, { head: 'Elbows', align: 'right' }, { head: 'Tees', align: 'right' }],
    rows: derived.networks.flatMap((network) =>
      network.paths.map((path) => {
        const nozzle = network.nozzles.find(({ ref }) => ref.id === path.nozzle);
        return [nozzle ? nozzleName(derived, nozzle) : path.nozzle, formatLength(path.length_m, lengths), String(path.elbows), String(path.tees)];
      }),
    ),
  };
}

const PART_WORDS: Readonly<Record<string, string>> = { hose: 'hose', 'check-valve': 'check valve', regulator: 'regulator', adapter: 'adapter' };

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
      const parts = network.assembly.map(({ kind, name, setPressure_Pa, arrowDownstream }) => {
        const set = setPressure_Pa === null ? '' : ` set to ${formatQuantity(setPressure_Pa, 'pressure', lengths)}`;
        return `${name || PART_WORDS[kind] || kind}${set}${arrowDownstream ? '' : ' (ARROW AGAINST THE FLOW)'}`;
      });
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
      const [least, greatest] = temperature ? [temperature.least_K, temperature.greatest_K].map((kelvins) => formatQuantity(kelvins, 'temperature', lengths)) : [];
      return [
        space.name,
        formatQuantity(space.area_m2, 'area', lengths),
        space.tallest_m === undefined ? NOT_KNOWN : formatLength(space.tallest_m - space.floor_m, lengths),
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

/** The job's own data in full, whatever the title block had room for. */
export const jobTable = ({ info }: Plan): Table => ({
  title: 'Job',
  columns: [{ head: '' }, { head: '', isWide: true }],
  rows: (
    [
      ['Client', info.client],
      ['Project', info.project],
      ['Site', info.site],
      ['Code', [info.code, info.edition].filter(Boolean).join(', edition ')],
      ['Drawn', info.drawnBy],
      ['Checked', info.checkedBy],
      ['Approved', info.approvedBy],
    ] as const
  ).map(([name, words]) => [name, words.trim() === '' ? 'not entered' : words]),
  isPlain: true,
});

/** All revisions, oldest first. */
export const revisionTable = ({ info }: Plan): Table => ({
  title: 'Revisions',
  columns: [{ head: 'Mark', font: 'bold' }, { head: 'Date' }, { head: 'What changed', isWide: true }],
  rows: info.revisions.map(({ mark, date, text }) => [mark, date, text]),
});

/** The plan's own notes, one row a line. */
export const notesTable = ({ info }: Plan): Table => ({
  title: 'Notes',
  columns: [{ head: '', isWide: true }],
  rows: info.notes
    .split(/\r?\n/)
    .filter((words) => words.trim() !== '')
    .map((words) => [words]),
  isPlain: true,
});
