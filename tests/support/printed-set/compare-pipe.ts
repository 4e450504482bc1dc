import { type Comparison, SIXTEENTH_m, figureIn, lengthIn } from './printed-figure.ts';
import { type PrintedPage, seriesOf } from './printed-set.ts';
import { type PrintedRow, resultOf, sumLines, tableRows } from './printed-table.ts';

const SIZE = String.raw`(?:\d+ )?(?:\d+\/\d+|\d+)"`;
const IS_SIZE = new RegExp(`^${SIZE}$`);
const LABEL = new RegExp(`^(${SIZE}) · (.+?)(?: · (.+))?$`);
const UPRIGHT = new RegExp(`^(${SIZE}) (up|down) (.+) to (.+)$`);
const LEAST_m = 1e-6;

/** A numbered node of an isometric and the pipe that comes to it, as its table prints them. */
export interface PrintedNode {
  readonly network: string;
  readonly number: string;
  readonly what: string;
  readonly height: string;
  readonly after: string;
  readonly size: string;
  readonly length: string;
  readonly fromSource: string;
}

/** Every node of every isometric of a set. */
export function printedNodes(pages: readonly PrintedPage[]): PrintedNode[] {
  const networks = tableRows(pages, 'Cylinders and discharge assembly').map((row) => row.Network ?? '');
  return networks.flatMap((network) =>
    tableRows(pages, `Nodes of the isometric: ${network}`).map((row) => {
      const [, size = '', length = ''] = LABEL.exec(row['Pipe to it'] ?? '') ?? [];
      return { network, number: row['No.'] ?? '', what: row.What ?? '', height: row.Height ?? '', after: row.After ?? '', size, length, fromSource: row['From source'] ?? '' };
    }),
  );
}

const isLevel = (node: PrintedNode, nodes: readonly PrintedNode[]): boolean => nodes.some(({ network, number, height }) => network === node.network && number === node.after && height === node.height);
const fed = (nodes: readonly PrintedNode[]): PrintedNode[] => nodes.filter(({ after }) => after !== '');

/** Labels of pipe on a drawn page, size over length where they stand in two lines. */
function pipeLabels({ texts }: PrintedPage): string[] {
  const labels: string[] = [];
  for (let i = 0; i < texts.length; i += 1) {
    const [here, next] = [texts[i], texts[i + 1]];
    const [, size, length] = LABEL.exec(here?.text ?? '') ?? [];
    if (size !== undefined && lengthIn(length ?? '') !== undefined) labels.push(`${size} · ${length}`);
    if (!here || !next || !IS_SIZE.test(here.text) || lengthIn(next.text) === undefined || Math.abs(next.y - here.y) > 2 * here.size) continue;
    labels.push(`${here.text} · ${next.text}`);
    i += 1;
  }
  return labels;
}

/** Pipe on plan, isometric, its table, cut list, schedules, paths and calculation. */
export function comparePipe(pages: readonly PrintedPage[], all: Comparison): void {
  const nodes = printedNodes(pages);
  const pipes = fed(nodes);
  const drawn = ({ size, length }: PrintedNode): string => `${size} · ${length}`;

  for (const page of seriesOf(pages, 5)) {
    const shown = new Set(page.texts.flatMap(({ text }) => (text.startsWith('Isometric: ') ? [text.slice(11)] : [])));
    if (![...shown].some((name) => nodes.some(({ network }) => network === name))) continue;
    const labels = pipeLabels(page);
    // Tables of nodes may stand on the same sheet, with the same words: each label then comes once more.
    const listed = pipes.filter(({ network }) => page.texts.some(({ text }) => text.startsWith(`Nodes of the isometric: ${network}`)));
    all.sets(`Pipe on ${page.number} and in the table of its nodes`, labels, [...pipes.filter(({ network }) => shown.has(network)), ...listed].map(drawn));
  }

  all.sets('Level pipe on the plans and in the tables of nodes', seriesOf(pages, 2).flatMap(pipeLabels), pipes.filter((node) => isLevel(node, nodes)).map(drawn));
  for (const { number, texts } of seriesOf(pages, 2)) {
    for (const { text } of texts) {
      const [, size, way, from = '', to = ''] = UPRIGHT.exec(text) ?? [];
      if (size === undefined) continue;
      const same = pipes.filter((pipe) => pipe.size === size && pipe.height === to && nodes.some((node) => node.network === pipe.network && node.number === pipe.after && node.height === from));
      all.figures(`“${text}” on ${number} and the nodes between those heights`, same.length > 0 ? 1 : 0, 1, 0);
      const rise_m = (lengthIn(to) ?? Number.NaN) - (lengthIn(from) ?? Number.NaN);
      all.figures(`“${text}” on ${number} and its way`, Math.sign(rise_m), way === 'up' ? 1 : -1, 0);
      if (same[0]) all.figures(`“${text}” on ${number} and its length in the table of nodes`, Math.abs(rise_m), lengthIn(same[0].length), SIXTEENTH_m + LEAST_m);
    }
  }

  const pieces = tableRows(pages, 'Cut list');
  const networks = [...new Set(nodes.map(({ network }) => network))];
  all.sets('Pieces of the cut list and pipe between nodes', pieces.map((row) => `${row.Network ?? networks[0]} ${row.Piece} ${row.Pipe} · ${row['Between centres']}`), pipes.map((node) => `${node.network} ${node.after}–${node.number} ${drawn(node)}`));
  for (const row of pieces) compareCut(row, all);

  const schedule = tableRows(pages, 'Pipe');
  all.sets('Sizes of the pipe schedule and of the nodes', schedule.map((row) => row.Size ?? ''), [...new Set(pipes.map(({ size }) => size))]);
  for (const row of schedule) {
    const own = pipes.filter(({ size }) => size === row.Size);
    all.figures(`Length of ${row.Size} pipe in the schedule and between nodes`, lengthIn(row['Between centres'] ?? ''), own.reduce((sum, { length }) => sum + (lengthIn(length) ?? Number.NaN), 0), ((own.length + 1) * SIXTEENTH_m) / 2 + LEAST_m);
  }
  compareFittings(pages, nodes, all);
  for (const network of networks) compareCalculation(pages, network, nodes.filter((node) => node.network === network), all);
}

/** Length of a printed fitting or piece, 0 where only a 0 is printed [m]. */
const takenOff = (words: string | undefined): number | undefined => (words === '0' ? 0 : lengthIn(words ?? ''));

function compareCut(row: PrintedRow, all: Comparison): void {
  const cut = lengthIn(row.Cut ?? '');
  const [first, second] = [takenOff(row['Takes off']), takenOff(row['Takes off 2'])];
  const between = lengthIn(row['Between centres'] ?? '');
  // A sixteenth for what each of the four figures was rounded by, and the tape's own for the metric one.
  if (first !== undefined && second !== undefined && between !== undefined) all.figures(`Cut of piece ${row.Piece}: centres less what the fittings take`, cut, between - first - second, 2 * SIXTEENTH_m + LEAST_m);
  all.lengths(`Cut of piece ${row.Piece} in feet and metric`, row.Cut, row.Metric, SIXTEENTH_m / 2 + 0.0005 + LEAST_m);
}

const isElbow = ({ what }: PrintedNode): boolean => /elbow/i.test(what);
const isTee = ({ what }: PrintedNode): boolean => /\btee\b/i.test(what);
const isTrapTee = ({ what }: PrintedNode): boolean => /dirt trap/.test(what) && isTee({ what } as PrintedNode);

function compareFittings(pages: readonly PrintedPage[], nodes: readonly PrintedNode[], all: Comparison): void {
  const bought = tableRows(pages, 'Fittings');
  const count = (is: RegExp): number => bought.filter((row) => is.test(row.Fitting ?? '')).reduce((sum, row) => sum + figureIn(row.Count), 0);
  all.figures('Elbows bought and on the isometrics', count(/elbow/i), nodes.filter(isElbow).length, 0);
  all.figures('Tees bought and on the isometrics', count(/\btee\b/i), nodes.filter(isTee).length, 0);
  all.figures('Caps bought and dirt traps on the isometrics', count(/^cap$/i), nodes.filter(({ what }) => /^dirt trap, capped/i.test(what)).length, 0);
  for (const row of tableRows(pages, 'Paths')) {
    const name = row.Nozzle ?? '';
    const end = nodes.find(({ what }) => what.startsWith(`Nozzle ${name};`));
    all.lengths(`Way to ${name} in the paths and from the source`, row.Length, end?.fromSource, LEAST_m);
    const way: PrintedNode[] = [];
    for (let at = end; at && way.length < 1000; at = nodes.find(({ network, number }) => network === at?.network && number === at.after)) way.push(at);
    // A tee with a dirt trap turns the agent and parts nothing: it counts as an elbow there.
    all.figures(`Elbows on the way to ${name}`, figureIn(row.Elbows), way.filter((node) => isElbow(node) || isTrapTee(node)).length, 0);
    all.figures(`Tees on the way to ${name}`, figureIn(row.Tees), way.filter((node) => isTee(node) && !isTrapTee(node)).length, 0);
  }
}

function compareCalculation(pages: readonly PrintedPage[], network: string, nodes: readonly PrintedNode[], all: Comparison): void {
  const lines = sumLines(pages, 'Discharge', network);
  const nodeCalled = (name: string): PrintedNode | undefined => nodes.find(({ number, what, after }) => (name === 'source' ? after === 'none' || after === '' : name === `node ${number}` || what.startsWith(`Nozzle ${name};`)));
  let compared = 0;
  for (const row of lines) {
    const [, from = '', to = ''] = /^Pipe, (.+) to (.+)$/.exec(row.What ?? '') ?? [];
    if (to === '') continue;
    const said = /= (.+?), bore/.exec(resultOf(row) ?? '')?.[1];
    const [start, end] = [nodeCalled(from), nodeCalled(to)];
    compared += 1;
    all.figures(`${row.What} of ${network}: calculated with and on the isometric`, lengthIn(said ?? ''), (lengthIn(end?.fromSource ?? '') ?? Number.NaN) - (lengthIn(start?.fromSource ?? '') ?? Number.NaN), 1.5 * SIXTEENTH_m + LEAST_m);
  }
  all.figures(`${network}: stretches that the calculation prints`, compared > 0 ? 1 : 0, 1, 0);
  const total = lines.find(({ What }) => What === 'Pipe, all together')?.Result;
  all.figures(`Pipe of ${network} in the calculation and between nodes`, lengthIn(/= (.+?),/.exec(total ?? '')?.[1] ?? ''), nodes.reduce((sum, { length }) => sum + (lengthIn(length) ?? 0), 0), ((nodes.length + 1) * SIXTEENTH_m) / 2 + LEAST_m);
}
