import type { Derived } from '../derived/derived.ts';
import { type FieldDimension, fieldDimensionsOf } from '../derived/field-dimensions.ts';
import { HOLD_POINTS } from '../model/hold-points.ts';
import type { FieldEntry, FieldReading, FieldRecord, FieldRowAnswer } from './field-entries.ts';
import { type FormIdentity, formIdentityOf, matchOf, readIdentity } from './form-identity.ts';
import { answerCheck } from './answer-check.ts';
import { answerRow, missingRow, unknownRow } from './answer-row.ts';
import { formRemarks } from './form-remarks.ts';

/** Rows of a file that are looked at; no plan has more dimensions. */
export const MOST_ROWS = 200_000;

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim().toLowerCase();

function grouped(entries: readonly FieldEntry[], keyOf: (entry: FieldEntry) => string | undefined): { readonly known: ReadonlyMap<string, FieldEntry[]>; readonly rest: readonly FieldEntry[] } {
  const known = new Map<string, FieldEntry[]>();
  const rest: FieldEntry[] = [];
  for (const entry of entries) {
    const key = keyOf(entry);
    const list = key === undefined ? rest : (known.get(key) ?? []);
    list.push(entry);
    if (key !== undefined) known.set(key, list);
  }
  return { known, rest };
}

/** Finds a dimension by its id, or by its printed name where only one has it. */
function finderOf(dimensions: readonly FieldDimension[]): (id: string) => FieldDimension | undefined {
  const byId = new Map(dimensions.map((dimension) => [dimension.id, dimension]));
  const byName = new Map<string, FieldDimension | undefined>();
  for (const dimension of dimensions) byName.set(plain(dimension.name), byName.has(plain(dimension.name)) ? undefined : dimension);
  return (id) => byId.get(id.trim()) ?? byName.get(plain(id));
}

const matchOfRow = (entry: FieldEntry, whole: FormIdentity, own: FormIdentity) => matchOf((entry.cells.form && readIdentity(entry.cells.form)) || whole, own);

/**
 * Judges what came back from the site, row by row, against the plan as it is. Nothing is applied.
 * @param record  as it was read from a form or table
 * @returns an answer for every dimension and every hold point of the plan, and for every row that belongs to none
 */
export function readEntries({ rows, about }: FieldRecord, derived: Derived): FieldReading {
  const dimensions = fieldDimensionsOf(derived);
  const own = formIdentityOf(derived, dimensions);
  const find = finderOf(dimensions);
  const { lengths } = derived.plan.settings;
  const { measurements, checks } = derived.plan.siteRecord;
  const looked = rows.slice(0, MOST_ROWS);
  const holdPoints = new Map(HOLD_POINTS.map((point) => [point.id.toLowerCase(), point]));
  const points = grouped(looked, ({ id }) => holdPoints.get(plain(id))?.id);
  const measured = grouped(points.rest, ({ id }) => find(id)?.id);
  const answers: FieldRowAnswer[] = dimensions.map((dimension) => {
    const entries = measured.known.get(dimension.id);
    const kept = measurements[dimension.id];
    const [first] = entries ?? [];
    return entries && first ? answerRow(dimension, entries, { kept, lengths, match: matchOfRow(first, about, own) }) : missingRow(dimension, kept);
  });
  const isTable = about.source === 'csv';
  return {
    match: matchOf(about, own),
    remarks: [...formRemarks(about, own, { rows: rows.length, missing: answers.filter(({ kind }) => kind === 'missing').length, isTable }), ...(rows.length > MOST_ROWS ? [`The file has ${rows.length} rows; only the first ${MOST_ROWS} were looked at.`] : [])],
    rows: [...answers, ...measured.rest.map(unknownRow)],
    checks: HOLD_POINTS.map((point) => {
      const entries = points.known.get(point.id) ?? [];
      const [first] = entries;
      return answerCheck(point, entries, checks[point.id], first ? matchOfRow(first, about, own) : 'not-told');
    }),
  };
}
