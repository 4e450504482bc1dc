import type { Derived } from '../derived/derived.ts';
import type { Enclosure, Level } from '../model/plan.ts';
import { SHUTDOWN_ON_WORDS, SHUTDOWN_WORDS } from '../model/shutdown-words.ts';
import type { Shutdown } from '../model/plan.ts';
import { FIELD_ROW_mm } from './cautions.ts';
import { shutdownTarget } from './release-matrix.ts';
import type { Cell, Table } from './tables.ts';
import { byField, testTick, witnessField } from './test-fields.ts';

interface Tested {
  /** The same however often the plan is printed. */
  readonly key: string;
  readonly input: string;
  readonly outcome: string;
}

const ON = Object.keys(SHUTDOWN_ON_WORDS) as Shutdown['on'][];

const delayWords = ({ people: { delay_s } }: Enclosure): string => (delay_s === null ? 'the delay runs: how long is not entered' : `the delay of ${delay_s} s runs`);

/** What an input brings about besides the rows of the matrix. Source: NFPA 2001, memory. */
function inputsOf(enclosure: Enclosure, level: Level): Tested[] {
  const devices = Object.values(level.devices);
  const aborts = devices.filter((device) => device.kind === 'abort');
  return [
    { key: 'first-detector', input: 'First detector', outcome: 'alarm, no release' },
    { key: 'second-detector', input: 'Second detector', outcome: `alarm, ${delayWords(enclosure)}, release output acts on the dummy load` },
    { key: 'manual-release', input: 'Manual release', outcome: 'alarm, release output acts on the dummy load' },
    ...(aborts.length > 0
      ? [{ key: 'abort', input: 'Abort switch', outcome: `the delay stops while it is held${aborts.some(({ yieldsToRelease }) => yieldsToRelease === true) ? '; the manual release goes before it' : ''}` }]
      : []),
    { key: 'open-circuit', input: 'One wire of the releasing circuit off', outcome: 'trouble at the panel, no release' },
    { key: 'actuator', input: 'Actuator off its valve', outcome: 'shows at the panel' },
    { key: 'low-pressure', input: 'Low-pressure switch', outcome: 'shows at the panel' },
    { key: 'disconnect', input: 'Lock-out or disconnect', outcome: 'shows at the panel; the release output stays without current' },
    { key: 'mains-off', input: 'Mains off', outcome: 'panel works on its battery, trouble shows' },
  ];
}

const matrixRows = (enclosure: Enclosure, level: Level): Tested[] =>
  ON.flatMap((on) => Object.values(enclosure.shutdowns).filter((row) => row.on === on).map((row) => ({
    key: row.id,
    input: SHUTDOWN_ON_WORDS[on],
    outcome: `${row.name || SHUTDOWN_WORDS[row.kind]}: ${row.kind === 'damper' || row.kind === 'door' ? 'shuts' : 'goes off'} (${shutdownTarget(row, level)})`,
  })));

/** Every input with what it must bring about, room by room, and each row of the release matrix, to be signed. Without rows while no room is drawn. */
export function functionalTestTable({ plan: { levels } }: Derived): Table {
  const rooms = Object.values(levels).flatMap((level) => Object.values(level.enclosures).map((enclosure) => ({ level, enclosure })));
  return {
    title: 'Functional test: every input against the release matrix (H11)',
    shortTitle: 'Functional test',
    note: 'Agent made safe: actuator off its valve, release locked out, dummy load connected. Each row once on mains and once on the battery; then everything back to rest. Tell whoever runs what is shut off.',
    columns: [{ head: 'Room', font: 'bold' }, { head: 'Input', most_mm: 42 }, { head: 'Must bring about', isWide: true }, { head: 'On mains', least_mm: 18 }, { head: 'On battery', least_mm: 18 }, { head: 'At rest again', least_mm: 20 }, { head: 'By', least_mm: 24 }, { head: 'Witness', least_mm: 24 }],
    rows: rooms.flatMap(({ level, enclosure }) =>
      [...inputsOf(enclosure, level), ...matrixRows(enclosure, level)].map(({ key, input, outcome }, i): Cell[] => {
        const about = `${level.id}/${enclosure.id}/${key}`;
        const what = `${enclosure.name}, ${input.charAt(0).toLowerCase()}${input.slice(1)}`;
        const tick = (cell: 'mains' | 'battery' | 'rest', words: string): Cell => testTick('H11', about, cell, `${what}: tick it when ${words}`);
        return [i === 0 ? enclosure.name : '', input, outcome, tick('mains', 'it came about on mains'), tick('battery', 'it came about on the battery'), tick('rest', 'all is back at rest'), byField('H11', about, what), witnessField('H11', about, what)];
      }),
    ),
    repeated: 1,
    rowHeight_mm: FIELD_ROW_mm,
    foot: [{ kind: 'words', words: 'Source: NFPA 2001 and NFPA 72, memory; the manual of the panel and the authority govern.', isSmall: true }],
  };
}
