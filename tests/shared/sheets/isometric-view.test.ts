import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { layoutIsometric } from '#shared/isometric/layout-isometric';
import type { PaperId } from '#shared/model/paper-ids';
import { isometricTable } from '#shared/sheets/isometric-table';
import { formatLength } from '#shared/units/length-text';
import { DEMO_NAMES, type DemoName, buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { composedDemo, sheetsOf, textsOf, wordsOf } from '../../support/sheet-set.ts';
import { textOverlaps } from '../../support/text-overlaps.ts';

const PAPERS: readonly PaperId[] = ['A4', 'A3', 'A1', 'ANSI-A', 'ANSI-B', 'ANSI-C', 'ANSI-D'];
/** The pipe of a demo with seeded faults is that of its sound twin but for a few places. */
const papersOf = (name: DemoName): readonly PaperId[] => (name.endsWith('faults') ? ['A4', 'ANSI-B'] : PAPERS);

/** Networks whose isometrics a sheet holds, one or two. */
const networksOn = ({ title }: { readonly title: string }): string[] => title.replace(/^Isometrics?: /, '').split(', ');

describe.each(DEMO_NAMES)('isometric sheets of %s', (name) => {
  test('on every paper: each network once, at most two on a sheet, no texts over each other, 3/32 in at half size on large paper', async () => {
    const { plan } = await buildDemo(name);
    for (const paper of papersOf(name)) {
      const sheets = (await composedDemo(name, { paper })).filter(({ title }) => /^Isometrics?: /.test(title));
      expect(sheets.flatMap(networksOn)).toEqual(derivePlan(plan).networks.map(({ network }) => network.name));
      for (const sheet of sheets) {
        expect(networksOn(sheet).length).toBeLessThanOrEqual(2);
        for (const network of networksOn(sheet)) expect(wordsOf(sheet)).toContain(`Isometric: ${network}`);
      }
      const names = derivePlan(plan).nozzles.map(({ nozzle }) => nozzle.name);
      const words = sheets.flatMap(wordsOf);
      for (const nozzle of names) expect(words.some((text) => text.split(' ').includes(nozzle)), nozzle).toBe(true);
      for (const sheet of sheets) {
        expect(textOverlaps(textsOf(sheet))).toEqual([]);
        if (sheet.paper.width_mm > 450) expect(textsOf(sheet).filter(({ text, height_mm }) => height_mm < 4.76 && /["']\d|^\d+$|elbow|tee|reducer/.test(text) && !text.includes('.'))).toEqual([]);
      }
    }
  });

  test('each run is printed with its true length, each node with its number', async () => {
    const { plan } = await buildDemo(name);
    const sheets = await composedDemo(name, { paper: 'ANSI-B' });
    const { networks } = derivePlan(plan);
    const isometrics = sheets.filter(({ title }) => /^Isometrics?: /.test(title));
    expect(isometrics.flatMap(networksOn)).toEqual(networks.map(({ network }) => network.name));
    for (const sheet of isometrics) {
      const words = wordsOf(sheet);
      expect(words.join(' ')).not.toContain('had no room');
      // Two on one sheet print what both have, each its own.
      const isos = networks.filter(({ network }) => networksOn(sheet).includes(network.name)).map((network) => layoutIsometric(network));
      const lengths = isos.flatMap(({ runs }) => runs.map(({ length_m }) => formatLength(length_m, 'feet')));
      for (const length of lengths) {
        const printed = words.filter((text) => text === length || text.endsWith(`· ${length}`)).length;
        expect(printed, length).toBeGreaterThanOrEqual(lengths.filter((each) => each === length).length);
      }
      const numbers = isos.flatMap(({ nodes }) => nodes.map(({ number }) => String(number)));
      for (const number of numbers) expect(words.filter((text) => text === number).length).toBeGreaterThanOrEqual(numbers.filter((each) => each === number).length);
    }
    for (const { network } of networks) expect(sheets.flatMap(wordsOf)).toContain(`Nodes of the isometric: ${network.name}`);
  });
});

describe('an isometric sheet', () => {
  const built = (assembly: Parameters<ReturnType<typeof planBuilder>['network']>[0] = {}) =>
    planBuilder()
      .room(5, 4, 2.6)
      .network(assembly)
      .cylinder(0.2, 2, Math.PI)
      .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(3, 2, 2.5), place3(3, 2, 2.3)])
      .nozzle(3, 2, 2.3);
  const wordsFor = (plan: Parameters<typeof sheetsOf>[0]): string[] => sheetsOf(plan, { paper: 'A3' }).filter(({ title }) => title.startsWith('Isometric')).flatMap(wordsOf);
  const regulator = (arrowDownstream: boolean) => ({ assembly: [{ id: 'part-1', kind: 'regulator' as const, name: '', length_m: 0, setPressure_Pa: 6e6, arrowDownstream }] });

  test('says that it is not to scale, and lists the symbols in use only', () => {
    const words = wordsFor(built(regulator(true)).plan);
    expect(words.some((text) => text.startsWith('not to scale, seen from the '))).toBe(true);
    // The legend stands beside the view, or where that column has no room for it on a sheet of its own.
    expect(sheetsOf(built(regulator(true)).plan, { paper: 'A3' }).flatMap(wordsOf)).toContain('regulator, arrow with the flow');
    expect(words).not.toContain('check valve, arrow with the flow');
    expect(words).not.toContain('rigid support');
    expect(words).not.toContain('reducer, tip with the flow');
  });

  test('tells where high pressure ends, and a regulator the wrong way round', () => {
    expect(wordsFor(built(regulator(true)).plan)).toContain('high pressure before the regulator');
    expect(wordsFor(built().plan)).toContain('no regulator drawn: all high pressure');
    expect(wordsFor(built(regulator(false)).plan).join('\n')).toContain('ARROW AGAINST THE FLOW');
  });

  test('a network without pipe has none', () => {
    expect(wordsFor(planBuilder().room(5, 4, 2.6).network().plan)).toEqual([]);
  });

  test('a network too large for the paper says what is missing instead of writing over it', () => {
    const many = planBuilder('metric').room(60, 40, 3);
    const main = Array.from({ length: 32 }, (_, i) => place3(i, 20, 2.8));
    many.run(main, '1');
    for (const place of main.slice(1)) many.run([place, place3(place.x, 21, 2.8), place3(place.x, 21, 2.5)]).nozzle(place.x, 21, 2.5);
    const sheets = sheetsOf(many.plan, { paper: 'A4' }).filter(({ title }) => title.startsWith('Isometric'));
    for (const sheet of sheets) expect(textOverlaps(textsOf(sheet))).toEqual([]);
    expect(sheets.flatMap(wordsOf).join(' ')).toContain('had no room');
  });

  test('its table tells each node: what, height, the pipe to it', async () => {
    const network = derivePlan((await buildDemo('F1')).plan).networks[0];
    if (!network) throw new Error('The hut has a network.');
    expect(isometricTable(layoutIsometric(network), 'feet').rows.map((row) => row.slice(0, 6))).toEqual([
      ['1', 'Pipe begins', `+6'-6"`, '', 'none', '0"'],
      ['2', '90° elbow', `+7'-8"`, '1', `3/4" · 1'-2"`, `1'-2"`],
      ['3', '90° elbow', `+7'-8"`, '2', `3/4" · 7'-3"`, `8'-5"`],
      ['4', 'Tee, one leg to the dirt trap', `+7'-8"`, '3', `3/4" · 4'-0"`, `12'-5"`],
      ['5', 'Dirt trap, capped', `+7'-8"`, '4', `3/4" · 4"`, `12'-9"`],
      ['6', 'Nozzle N1; orifice 0.0342 in²; holes 0°, 180°', `+7'-4"`, '4', `3/4" · 4"`, `12'-9"`],
    ]);
  });
});
