import type { FieldCell, FieldEntry, FieldRecord } from './field-entries.ts';
import { readIdentity } from './form-identity.ts';
import { PARTINGS, type Parting, type TableLine, splitTable } from './split-table.ts';

/** A table that was understood, or what is wrong with it and what to do. */
export type ParsedTable = { readonly ok: true; readonly record: FieldRecord } | { readonly ok: false; readonly what: string; readonly remedy: string };

type Head = FieldCell | 'id' | 'dimension';

/** Headings by what they may be called, small letters. */
const HEADS: Readonly<Record<string, Head>> = {
  id: 'id', 'dimension id': 'id',
  dimension: 'dimension', dim: 'dimension', 'dim.': 'dimension', name: 'dimension',
  measured: 'measured', 'measured value': 'measured', 'as measured': 'measured',
  by: 'by', initials: 'by', 'measured by': 'by',
  when: 'when', 'date and time': 'when', date: 'when', time: 'when',
  instrument: 'instrument',
  reason: 'reason', 'reason or note': 'reason', note: 'reason', notes: 'reason',
  'planned mm': 'planned', mm: 'planned',
  done: 'done', witness: 'witness', form: 'form',
};
const UNITS: Readonly<Record<string, string>> = { mm: 'mm', millimetres: 'mm', millimeters: 'mm', cm: 'cm', m: 'm', metres: 'm', meters: 'm', in: '"', inch: '"', inches: '"', ft: "'", feet: "'" };

interface Column {
  readonly head: Head;
  /** Unit of a number alone, where the heading says one. */
  readonly unit: string | undefined;
}

/** Reads a heading such as "Measured", "measured (mm)" or "measured [in]". */
function readHead(text: string): Column | undefined {
  const plain = text.toLowerCase().replace(/\s+/g, ' ').trim();
  if (Object.hasOwn(HEADS, plain)) return { head: HEADS[plain] ?? 'id', unit: undefined };
  const [, name = '', unit = ''] = /^(.*?) ?[([,]? ?([a-z]+)[)\]]?$/.exec(plain) ?? [];
  if (!Object.hasOwn(HEADS, name) || !Object.hasOwn(UNITS, unit)) return undefined;
  const head = HEADS[name] ?? 'id';
  return head === 'measured' ? { head, unit: UNITS[unit] } : undefined;
}

/** Lines that are searched for the headings: somebody may have written above them. */
const MOST_ABOVE = 30;

interface Headed {
  readonly parting: Parting;
  readonly lines: readonly TableLine[];
  readonly columns: readonly (Column | undefined)[];
  readonly hasOpenQuote: boolean;
}

function findHeads(text: string, mostLines: number): Headed | undefined {
  for (const parting of PARTINGS) {
    const { lines } = splitTable(text.slice(0, 20_000), parting, MOST_ABOVE);
    const at = lines.findIndex(({ cells }) => {
      const heads = cells.map((cell) => readHead(cell)?.head);
      return heads.some((head) => head === 'id' || head === 'dimension') && heads.some((head) => head === 'measured' || head === 'done');
    });
    if (at < 0) continue;
    const whole = splitTable(text, parting, mostLines + MOST_ABOVE);
    return { parting, hasOpenQuote: whole.hasOpenQuote, columns: (lines[at]?.cells ?? []).map(readHead), lines: whole.lines.slice(at + 1) };
  }
  return undefined;
}

const DECIMAL_COMMA = /^\s*[+-]?\d+,\d+\s*(?:[a-z]{1,11}\.?|['"′″])?\s*$/i;
const BARE = /^\s*[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)\s*$/;

/**
 * Reads a table of measured dimensions from text: any of the usual parting signs, quoted or not, with a decimal comma
 * where commas do not part the cells, its headings as this program writes them or as the printed sheet has them.
 * @param mostLines  lines beyond it are left out, and said
 * @param remarks    what is known already of how the file was read
 */
export function parseFieldTable(text: string, mostLines: number, remarks: readonly string[] = []): ParsedTable {
  const body = text.replace(/^\ufeff/, '').replace(/^sep=.\r?\n/i, '');
  if (body.trim() === '') return { ok: false, what: 'The table is empty.', remedy: 'Have it handed over again.' };
  const headed = findHeads(body, mostLines);
  if (!headed) return { ok: false, what: 'The table has no line of headings with “id” or “dimension” and “measured”.', remedy: 'Fill in the table that Nozzlewright writes, and keep its first line.' };
  const { parting, lines, columns, hasOpenQuote } = headed;
  let hasComma = false;
  let unit: string | undefined;
  const cellOf = (column: Column, raw: string): string => {
    // A spreadsheet may keep the sign that stops it from reckoning.
    const given = raw.replace(/^'(?=[=+@-])/, '');
    if (column.head !== 'measured' && column.head !== 'planned') return given;
    const isComma = parting !== ',' && DECIMAL_COMMA.test(given);
    hasComma ||= isComma;
    const number = isComma ? given.replace(',', '.') : given;
    if (column.unit === undefined || !BARE.test(number)) return number;
    unit = column.unit;
    return `${number.trim()} ${column.unit}`;
  };
  const rows = lines.slice(0, mostLines).map(({ line, cells }): FieldEntry => {
    const found: Partial<Record<Head, string>> = {};
    for (const [i, column] of columns.entries()) if (column) found[column.head] ??= cellOf(column, cells[i] ?? '');
    const { id = '', dimension = '', ...own } = found;
    return { id: id.trim() || dimension.trim(), where: `line ${line}`, cells: own };
  });
  const identity = commonIdentity(rows);
  return {
    ok: true,
    record: {
      rows,
      about: {
        source: 'csv',
        project: identity?.project ?? null,
        revision: identity?.revision ?? null,
        digest: identity?.digest ?? null,
        count: identity?.count ?? null,
        remarks: [
          ...remarks,
          ...(hasComma ? ['A comma in a number is read as the decimal sign.'] : []),
          ...(unit === undefined ? [] : [`A number alone is read in the unit of its heading: ${unit === "'" ? 'feet' : unit === '"' ? 'inches' : unit}.`]),
          ...(hasOpenQuote ? ['A quotation mark is never closed. Quotation marks from there on are read as inches.'] : []),
          ...(lines.length > mostLines ? [`The table has more than ${mostLines} lines; the rest was left out.`] : []),
        ],
      },
    },
  };
}

/** What most rows say of the form that they belong to. */
function commonIdentity(rows: readonly FieldEntry[]) {
  const counts = new Map<string, number>();
  for (const { cells } of rows) if (cells.form) counts.set(cells.form, (counts.get(cells.form) ?? 0) + 1);
  const [most] = [...counts].sort(([, a], [, b]) => b - a).filter(([text]) => readIdentity(text));
  return most && readIdentity(most[0]);
}
