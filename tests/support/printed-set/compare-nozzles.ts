import { type Comparison, figureIn, lengthIn } from './printed-figure.ts';
import { type PrintedPage, seriesOf } from './printed-set.ts';
import { type PrintedRow, fieldRows, resultOf, sumLines, tableRows } from './printed-table.ts';
import { printedNodes } from './compare-pipe.ts';

const LEAST_m = 1e-6;

/** Names in a label: "203-N1, N2" stands for 203-N1 and 203-N2. */
export function namesIn(label: string): string[] {
  const [first = '', ...others] = label.split(', ');
  const prefix = /^(.*-)[^-]+$/.exec(first)?.[1] ?? '';
  return [first, ...others.map((name) => (name.includes('-') ? name : prefix + name))];
}

const offset = (words: string | undefined): string => /face (.+)$/.exec(words ?? '')?.[1] ?? '';
const faceOf = (words: string | undefined): string => /^(\w+) face/.exec(words ?? '')?.[1]?.toLowerCase() ?? '';

/** Nozzles in schedule, plan, section, isometric, field sheet and calculation. */
export function compareNozzles(pages: readonly PrintedPage[], all: Comparison): void {
  const nozzles = tableRows(pages, 'Nozzles');
  const names = nozzles.map((row) => row.Nozzle ?? '');
  const nodes = printedNodes(pages);
  const field = fieldRows(pages);
  all.figures('Nozzles are listed', nozzles.length > 0 ? 1 : 0, 1, 0);
  all.sets('Nozzles of the schedule and of the isometrics', names, nodes.flatMap(({ what }) => /^Nozzle ([^;]+);/.exec(what)?.[1] ?? []));
  all.sets('Nozzles of the schedule and of the field sheet', names, [...new Set(field.flatMap((row) => (/^(?:Nozzle )?(\S+) a$/.exec(row['Dim.'] ?? '')?.[1] ?? '')).filter((name) => names.includes(name)))]);
  const said = new Map(seriesOf(pages, 2).flatMap(({ texts }) => texts.flatMap(({ text, turn_deg }): [string, string][] => {
    const [, label = '', length = ''] = /^(.+): (.+)$/.exec(text) ?? [];
    return lengthIn(length) === undefined ? [] : namesIn(label).filter((name) => names.includes(name)).map((name) => [`${name} ${Math.round(turn_deg) === 0 ? 'across' : 'up'}`, length]);
  })));
  for (const row of nozzles) {
    const name = row.Nozzle ?? '';
    const node = nodes.find(({ what }) => what.startsWith(`Nozzle ${name};`));
    all.words(`Height of ${name} in schedule and isometric`, row['Orifice height'], node?.height);
    all.words(`Holes of ${name} in schedule and isometric`, row.Holes, /holes (.+)$/.exec(node?.what ?? '')?.[1]);
    all.words(`Orifice of ${name} in schedule and isometric`, row['Orifice area'], /orifice ([\d.]+ \S+);/.exec(node?.what ?? '')?.[1]);
    all.sets(`Offsets of ${name} in schedule and plan`, [offset(row.From), offset(row['And from'])], ['across', 'up'].flatMap((way) => said.get(`${name} ${way}`) ?? []));
    comparePlanLabel(pages, row, all);
    compareSections(pages, row, all);
    compareFieldRows(field, row, all);
    const drop = (row['Drop pipe'] ?? '').split(', ');
    all.words(`Drop of ${name} in schedule and isometric`, `${drop[0]} · ${drop[1]}`, node && `${node.size} · ${node.length}`);
  }
  compareDischarge(pages, nozzles, all);
}

/** The words under a nozzle's name on its plan and on the isometric. */
function comparePlanLabel(pages: readonly PrintedPage[], row: PrintedRow, all: Comparison): void {
  const name = row.Nozzle ?? '';
  // The schedule may stand on the plan's sheet: there the name has no such words under it.
  const under = seriesOf(pages, 2).flatMap(({ texts }) => texts.flatMap(({ text }, i) => (text === name && texts[i + 1]?.text.startsWith('orifice ') ? [texts.slice(i + 1, i + 3).map((next) => next.text)] : [])));
  all.figures(`${name} on the plans`, under.length, 1, 0);
  all.words(`Height of ${name} in schedule and plan`, `orifice ${row['Orifice height']}`, under[0]?.[0]);
  const depth = row['Below ceiling'];
  if (under[0]?.[1]?.includes('below')) all.words(`Depth of ${name} in schedule and plan`, depth, /^(.+) below/.exec(under[0][1])?.[1]);
  const drawn = seriesOf(pages, 5).flatMap(({ texts }) => texts.flatMap(({ text }, i) => (text.startsWith(`${name} `) && lengthIn(text.slice(name.length + 1)) !== undefined ? [[text.slice(name.length + 1), texts[i + 1]?.text ?? '']] : [])));
  all.figures(`${name} on the isometrics`, drawn.length, 1, 0);
  all.words(`Height of ${name} in schedule and on the drawn isometric`, row['Orifice height'], drawn[0]?.[0]);
  all.words(`Orifice of ${name} in schedule and on the drawn isometric`, `orifice ${row['Orifice area']}`, drawn[0]?.[1]);
}

/** Heights beside a nozzle in the sections, where it is named with one. */
function compareSections(pages: readonly PrintedPage[], row: PrintedRow, all: Comparison): void {
  const name = row.Nozzle ?? '';
  let shown = 0;
  for (const { texts } of seriesOf(pages, 4)) {
    texts.forEach(({ text }, i) => {
      if (text.includes(':') || !namesIn(text).includes(name)) return;
      shown += 1;
      all.words(`Height of ${name} in schedule and section`, row['Orifice height'], texts[i + 1]?.text);
      const depth = /^(.+) below/.exec(texts[i + 2]?.text ?? '')?.[1];
      if (depth !== undefined) all.words(`Depth of ${name} in schedule and section`, row['Below ceiling'], depth);
    });
  }
  all.figures(`${name} in a section`, shown > 0 ? 1 : 0, 1, 0);
}

function compareFieldRows(field: readonly PrintedRow[], row: PrintedRow, all: Comparison): void {
  const name = row.Nozzle ?? '';
  const own = field.filter((each) => new RegExp(`^(?:Nozzle )?${name} [a-z]$`).test(each['Dim.'] ?? ''));
  const planned = (datum: RegExp): string | undefined => own.find((each) => datum.test(each['From datum'] ?? ''))?.Planned;
  all.lengths(`First offset of ${name} in schedule and field sheet`, offset(row.From), planned(new RegExp(`^${faceOf(row.From)} face`, 'i')), LEAST_m);
  all.lengths(`Second offset of ${name} in schedule and field sheet`, offset(row['And from']), planned(new RegExp(`^${faceOf(row['And from'])} face`, 'i')), LEAST_m);
  all.lengths(`Height of ${name} in schedule and field sheet`, row['Orifice height'], planned(/floor/i), LEAST_m);
}

function compareDischarge(pages: readonly PrintedPage[], nozzles: readonly PrintedRow[], all: Comparison): void {
  for (const network of tableRows(pages, 'Cylinders and discharge assembly')) {
    const lines = sumLines(pages, 'Discharge', network.Network ?? '');
    const masses = lines.flatMap((line) => (/^Nozzle /.test(line.What ?? '') ? [figureIn(resultOf(line))] : []));
    const out = figureIn(resultOf(lines.find(({ What }) => What === 'Agent discharged')));
    // Four printed figures of each nozzle, and the whole to as many.
    all.figures(`Agent of ${network.Network} through its nozzles and in all`, masses.reduce((sum, mass) => sum + mass, 0), out, 0.001 * out);
    for (const line of lines) {
      const { What = '' } = line;
      const name = /^Orifices of nozzle (.+)$/.exec(What)?.[1];
      const row = nozzles.find(({ Nozzle }) => Nozzle === name);
      if (name === undefined) continue;
      const printed = figureIn(row?.['Orifice area']);
      all.figures(`Orifice of ${name} in schedule and calculation`, printed, figureIn(/on the plan .*= ([\d.]+) in²/.exec(resultOf(line) ?? '')?.[1]), 0.005 * printed);
    }
  }
}
