import { area_m2 } from '../geometry/outline.ts';
import type { Level, Settings } from '../model/plan.ts';
import { ADJOINING_WORDS, GAS_WORDS } from '../model/surroundings-words.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import type { Table } from './tables.ts';

/** The spaces beside, under and over the enclosures of a level, and what was found of gas that drifts into them. */
export function adjoiningSchedule(level: Level, lengths: Settings['lengths']): Table {
  return {
    title: 'Adjoining spaces',
    columns: [{ head: 'Space', font: 'bold' }, { head: 'What it is' }, { head: 'Area', align: 'right' }, { head: 'Its floor', align: 'right' }, { head: 'Gas that drifts in' }, { head: 'Note', isWide: true }],
    rows: Object.values(level.adjoining).map(({ name, kind, outline, floor_m, gas, note }) => [
      name,
      ADJOINING_WORDS[kind],
      formatQuantity(area_m2(outline), 'area', lengths),
      floor_m === 0 ? 'level with ours' : `${formatLength(Math.abs(floor_m), lengths)} ${floor_m < 0 ? 'LOWER' : 'higher'}`,
      gas === 'not-assessed' ? 'NOBODY HAS LOOKED' : GAS_WORDS[gas],
      note,
    ]),
  };
}
