import { type Comparison, figureIn } from './printed-figure.ts';
import type { PrintedPage } from './printed-set.ts';
import { resultOf, sumLines, tableRows } from './printed-table.ts';

/** Standard atmosphere, between absolute and gauge pressures [psi]: 101 325 Pa over 6894.757 Pa. */
const ATMOSPHERE_psi = 101_325 / 6894.757;
/** A unit states its pressure of filling in round figures [share of it]. */
const ROUNDED = 0.005;

const after = (words: string | undefined): string | undefined => words?.split(' = ')[1];

/** Filling of the cylinders and setting of the regulator in limits, schedule, parts and sums. */
export function comparePressure(pages: readonly PrintedPage[], all: Comparison): void {
  const agents = tableRows(pages, (title) => title.startsWith('Agent quantity: ')).filter(({ What }) => What === 'Agent in one cylinder, m_each');
  all.figures('Rooms that say what one cylinder holds', agents.length > 0 ? 1 : 0, 1, 0);
  for (const { Network = '', Unit = '', 'Assembly in flow order': assembly = '' } of tableRows(pages, 'Cylinders and discharge assembly')) {
    const limits = tableRows(pages, `Limits of the unit: ${Unit}`);
    const limit = (name: string): number => figureIn(limits.find(({ Limit }) => Limit === name)?.Value);
    const [discharge, supervision, mounting] = ['Discharge', 'Pressure supervision', 'Supports, thrust and mounting'].map((sum) => sumLines(pages, sum, Network));

    const filled = resultOf(supervision?.find(({ What }) => What === 'Filled to, by the limits of the unit'));
    all.figures(`Filling of ${Network} in limits (absolute) and supervision (gauge)`, limit('Fill pressure (absolute)') - ATMOSPHERE_psi, figureIn(after(filled)), 0.55);
    const chart = resultOf(supervision?.find(({ What }) => What?.startsWith('Gauge at 15 °C')));
    all.words(`Filling of ${Network} and its chart at the temperature of filling`, filled, /^full (.+?);/.exec(chart ?? '')?.[1]);

    const own = discharge?.find(({ What }) => What === 'Pressure at 15 °C, p, by that density');
    all.figures(`Pressure of ${Network} by its mass and as it is filled`, figureIn(resultOf(own)), figureIn(filled), ROUNDED * figureIn(filled));
    const density = discharge?.find(({ What }) => What === 'Density of the agent in it, ρ');
    const [, mass = '', volume = ''] = /^([\d.]+)\/([\d.]+)$/.exec(density?.['With numbers'] ?? '') ?? [];
    for (const { Result } of agents) all.figures(`Agent in a cylinder of ${Network} in two sums`, Number(mass), figureIn(Result), 0);
    all.figures(`Agent in a cylinder of ${Network} in limits and sum`, limit('Agent mass'), figureIn(after(agents[0]?.Result)), 0.055);
    const water = discharge?.find(({ What }) => What === 'Water volume of one cylinder');
    all.figures(`Water volume of a cylinder of ${Network} in two lines`, Number(volume) * 1000, figureIn(resultOf(water)), 1e-6);
    all.figures(`Water volume of a cylinder of ${Network} in limits and sum`, limit('Water volume'), figureIn(after(resultOf(water))), 0.055);

    const set = /regulator set to ([\d.]+) psi abs/i.exec(assembly)?.[1];
    const regulated = resultOf(discharge?.find(({ What }) => What === 'Regulator set'));
    all.figures(`Regulator of ${Network} in schedule (absolute) and discharge (gauge)`, Number(set) - ATMOSPHERE_psi, figureIn(after(regulated)), 0.11);
    all.figures(`Filled cylinder of ${Network} in limits and on its rail`, limit('Filled mass'), figureIn(after(resultOf(mounting?.find(({ What }) => What === 'Filled cylinder, m')))), 0.055);
    const part = tableRows(pages, 'Parts').find(({ Part, What }) => Part === 'Cylinder' && What === Unit);
    all.figures(`Filled cylinder of ${Network} in limits and parts`, limit('Filled mass'), figureIn(/([\d.]+) lb filled/.exec(part?.Remark ?? '')?.[1]), 0.055);
  }
}
