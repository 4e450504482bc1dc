import { type Calculation, type CalculationLine, type CalculationTopic, PRELIMINARY } from '../calculations/lines/calculation.ts';
import { calculationsOf } from '../calculations/lines/calculations-of.ts';
import type { Evaluation } from '../evaluate.ts';
import { type ChartSpace, chartsOf } from './charts/calculation-charts.ts';
import type { FlowBlock } from './flow.ts';
import type { SheetLayout } from './frame.ts';
import type { Cell, Drawing, Foot, Table } from './tables.ts';

/** A longer source stands below its table once, under a number, so that lines stay short. */
const LONGEST_SOURCE = 22;
/** A longer result takes the room of the formula that it does not have. */
const LONGEST_RESULT = 40;

/**
 * Every calculation as a table: formula, numbers, result, source; then charts, what is missing, cautions and sources.
 * @param isWanted  which topics; all when missing
 */
export function calculationBlocks({ derived, design }: Evaluation, { area, sizes }: SheetLayout, isWanted: (topic: CalculationTopic) => boolean = () => true): FlowBlock[] {
  const space: ChartSpace = { design, lengths: derived.plan.settings.lengths, sizes, width_mm: area.right - area.left };
  const notes = new Map<string, TitleNotes>();
  return withoutRepeats(calculationsOf({ derived, design })).filter(({ topic }) => isWanted(topic)).map((calculation): FlowBlock => {
    const shared = notes.get(calculation.title) ?? new TitleNotes();
    notes.set(calculation.title, shared);
    return { table: calculationTable(calculation, chartsOf(calculation, space), shared), span: 'full' };
  });
}

/** One calculation in place of those that say the same of several things, as of units that are all alike. */
function withoutRepeats(calculations: readonly Calculation[]): Calculation[] {
  const byContent = new Map<string, Calculation>();
  for (const calculation of calculations) {
    const { title, lines, missing, cautions, isStale, subjectName } = calculation;
    const key = JSON.stringify([title, lines, missing, cautions, isStale]);
    const known = byContent.get(key);
    byContent.set(key, known ? { ...known, subjectName: `${known.subjectName}, ${subjectName}` } : calculation);
  }
  return [...byContent.values()];
}

/** Sources and cautions of all calculations with one title: each is printed once, under the first that needs it. */
class TitleNotes {
  readonly #sources: string[] = [];
  readonly #cautions = new Set<string>();
  #firstTable: string | undefined;

  /** What of one table's sources and cautions is not printed yet, and how its lines name their sources. */
  enter(title: string, sources: readonly string[], cautions: readonly string[]): { readonly foot: Foot[]; readonly nameOf: (source: string) => string } {
    const long = [...new Set(sources.filter((source) => source.length > LONGEST_SOURCE))];
    const [newSources, newCautions] = [long.filter((source) => !this.#sources.includes(source)), cautions.filter((caution) => !this.#cautions.has(caution))];
    const isAllNew = newSources.length === long.length && newCautions.length === cautions.length;
    const earlier = this.#firstTable;
    this.#sources.push(...newSources);
    for (const caution of newCautions) this.#cautions.add(caution);
    this.#firstTable ??= title;
    const nameOf = (source: string): string => (source.length > LONGEST_SOURCE ? `note ${this.#sources.indexOf(source) + 1}` : source);
    return {
      nameOf,
      foot: [
        ...newCautions.map((caution) => words(`Caution: ${caution}`)),
        ...newSources.map((source) => smallWords(`N${nameOf(source).slice(1)}: ${source}${/[.!?]$/.test(source) ? '' : '.'}`)),
        ...(earlier !== undefined && !isAllNew ? [smallWords(`The other cautions and notes stand under “${earlier}” and after it.`)] : []),
      ],
    };
  }
}

const words = (text: string, isStrong = false): Foot => ({ kind: 'words', words: text, isStrong });
const smallWords = (text: string): Foot => ({ kind: 'words', words: text, isSmall: true });

/** One calculation as a table. */
function calculationTable({ title, subjectName, lines, missing, cautions, isStale }: Calculation, drawings: readonly Drawing[], shared: TitleNotes): Table {
  const named = `${title}: ${subjectName}`;
  const { foot, nameOf } = shared.enter(named, lines.map(({ source }) => source), cautions);
  return {
    title: named,
    shortTitle: title,
    note: 'Numbers stand in m, m², m³, kg, s, Pa and °C unless the result names another unit. Results looked for first are bold.',
    columns: [{ head: 'What', isWide: true }, { head: 'Formula', most_mm: 92 }, { head: 'With numbers', least_mm: 30, most_mm: 72 }, { head: 'Result', least_mm: 46, most_mm: 84 }, { head: 'Source', least_mm: 24 }],
    rows: lines.map((line, i): Cell[] => {
      const source = nameOf(line.source);
      if (line.formula === '' && line.numbers === '' && line.result.length > LONGEST_RESULT) return [line.label, { kind: 'over', words: line.result, columns: 3, isBold: line.isMain ?? false }, '', '', source];
      return [line.label, isRepeated(line, lines[i - 1]) ? 'as above' : line.formula, line.numbers, line.isMain ? { kind: 'bold', words: line.result } : line.result, source];
    }),
    isTight: true,
    foot: [
      ...(drawings.length > 0 ? [{ kind: 'drawings', drawings } as const] : []),
      ...(isStale ? [words('These results belong to an earlier state of the plan: the discharge is being worked out again.', true)] : []),
      ...missing.map((sentence) => words(sentence, true)),
      words(PRELIMINARY, true),
      ...foot,
    ],
  };
}

/** A formula so long that nobody wants to read it again in the next row. */
const isRepeated = ({ formula }: CalculationLine, before: CalculationLine | undefined): boolean => formula.length > 24 && before?.formula === formula;
