import type { Derived } from '../derived/derived.ts';
import type { Enclosure, Level, Ref, Shutdown } from '../model/plan.ts';
import { SHUTDOWN_ON_WORDS, SHUTDOWN_WORDS } from '../model/shutdown-words.ts';
import { thingName } from '../model/thing-name.ts';
import type { Cell, Table } from './tables.ts';

const ON = Object.keys(SHUTDOWN_ON_WORDS) as Shutdown['on'][];
const MARK: Cell = { kind: 'bold', words: 'X' };

/** What a row shuts, where it is drawn: an opening, a duct or a diffuser of the level. */
function targetRef(level: Level, id: string): Ref | undefined {
  if (level.obstructions[id]) return { kind: 'obstruction', level: level.id, id };
  if (level.devices[id]) return { kind: 'device', level: level.id, id };
  const enclosure = Object.values(level.enclosures).find(({ openings }) => openings[id]);
  return enclosure && { kind: 'opening', level: level.id, enclosure: enclosure.id, id };
}

/** The thing that a row shuts, in words. */
export function shutdownTarget({ target }: Pick<Shutdown, 'target'>, level: Level): string {
  if (target === null) return 'not drawn';
  const ref = targetRef(level, target);
  return ref ? thingName({ levels: { [level.id]: level }, networks: {} }, ref) : 'NO LONGER DRAWN';
}

function rowsOf({ name, shutdowns }: Enclosure, level: Level): Cell[][] {
  const rows = Object.values(shutdowns);
  if (rows.length === 0) return [[name, 'no row entered', '', '', ...ON.map((): Cell => '')]];
  const inOrder = ON.flatMap((on) => rows.filter((row) => row.on === on));
  return inOrder.map((row, i): Cell[] => [i === 0 ? name : '', row.name || SHUTDOWN_WORDS[row.kind], SHUTDOWN_WORDS[row.kind], shutdownTarget(row, level), ...ON.map((on): Cell => (on === row.on ? MARK : ''))]);
}

/** What is shut or switched off in each room, and on what; without rows while no room has any. */
export function releaseMatrix({ plan: { levels } }: Derived): Table {
  const all = Object.values(levels).flatMap((level) => Object.values(level.enclosures).map((enclosure) => ({ level, enclosure })));
  const hasRows = all.some(({ enclosure }) => Object.keys(enclosure.shutdowns).length > 0);
  return {
    title: 'Release matrix: what is shut, and on what',
    shortTitle: 'Release matrix',
    note: 'What is shut at one signal stays shut at those that follow. Tested row by row with the agent made safe; a witness signs the hold points.',
    columns: [{ head: 'Room', font: 'bold' }, { head: 'What', isWide: true }, { head: 'Kind' }, { head: 'On the plan', isWide: true }, ...ON.map((on) => ({ head: SHUTDOWN_ON_WORDS[on], align: 'middle' as const, most_mm: 18 }))],
    rows: hasRows ? all.flatMap(({ enclosure, level }) => rowsOf(enclosure, level)) : [],
    repeated: 1,
  };
}
