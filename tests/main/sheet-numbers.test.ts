import { beforeAll, describe, expect, test } from 'vitest';
import { addShutdowns } from '#shared/commands/add-shutdowns';
import { setNozzleHeight } from '#shared/commands/set-nozzle-height';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Plan } from '#shared/model/plan';
import { buildDemo } from '../../src-main/demos/build-demo.ts';
import { composeAndPrint } from '../../src-main/services/compose-and-print.ts';
import { comparePlan } from '../support/printed-set/compare-plan.ts';
import { compareSet } from '../support/printed-set/compare-set.ts';
import { Comparison } from '../support/printed-set/printed-figure.ts';
import { type PrintedPage, type PrintedText, readPrintedSet, withSlip, wordsOfLink } from '../support/printed-set/printed-set.ts';
import { TEST_TIME } from '../support/hosts.ts';
import { done } from '../support/try-command.ts';

const CHOICE = { paper: 'auto', scale: 'auto', set: 'submittal' } as const;

/** The whole set as the program prints it, read back by a library that knows nothing of the plan. The floor plan under it is no figure of ours. */
async function printed(plan: Plan): Promise<{ plan: Plan; pages: PrintedPage[] }> {
  const bytes = await composeAndPrint({ plan, choice: CHOICE, drawings: new Map(), attached: new Uint8Array(), now: TEST_TIME }, () => undefined);
  return { plan, pages: await readPrintedSet(bytes) };
}

describe.each([
  ['F2', 1000],
  ['F3', 1700],
] as const)('the printed set of %s', (name, least) => {
  let set: Awaited<ReturnType<typeof printed>>;
  beforeAll(async () => {
    set = await printed((await buildDemo(name)).plan);
  }, 240_000);

  test('says the same of a thing on every sheet', () => {
    const { told, compared } = compareSet(set.pages);
    expect(told).toEqual([]);
    // Edges of the paper are one comparison a text; figures stand beside them.
    expect(compared - set.pages.reduce((sum, { texts }) => sum + texts.length, 0)).toBeGreaterThan(least);
  });

  test('says what the plan file holds', () => {
    const all = new Comparison();
    comparePlan(set.pages, set.plan, all);
    expect(all.told).toEqual([]);
  });

  test('is words throughout: every sheet is found by its number, title and project', () => {
    for (const { number, texts } of set.pages) {
      const words = texts.map(({ text }) => text).join(' ');
      expect(words, number).toContain(set.plan.info.project);
      expect(words, number).not.toMatch(/\uFFFD|undefined|NaN|\[object/);
    }
  });

  const series = (number: string): RegExp => new RegExp(`-${number}\\.\\d+$`);
  const slips: readonly [string, string, (text: PrintedText, before: PrintedText | undefined) => boolean, (text: string) => string][] = [
    ['a length of pipe on the plan', '02', ({ text }) => /^[\d /]+" · \d+'-\d+"/.test(text), (text) => text.replace(/\d+'-/, (feet) => `${Number.parseInt(feet, 10) + 1}'-`)],
    ['a size of pipe on the isometric', '05', ({ text }) => /^1" · /.test(text), (text) => text.replace('1"', '3/4"')],
    ['an offset of a nozzle on the plan', '02', ({ text }) => /N1.*: \d+'-/.test(text), (text) => text.replace(/\d+'-(\d+)/, "2'-$1")],
    ['a height of a nozzle on the plan', '02', ({ text }) => text.startsWith('orifice +8'), (text) => text.replace('+8', '+9')],
    ['a count of fittings', '08', ({ text }, before) => before?.text === '300' && /^\d+$/.test(text), (text) => String(Number(text) + 1)],
    ['a volume', '08', ({ text }) => / ft³$/.test(text), (text) => text.replace(/^\d/, '9')],
    ['a result of a calculation', '09', ({ text }) => /^[\d.]+ m?m = \d+'-.*bore/.test(text), (text) => text.replace(/= (\d)/, '= 1$1')],
    ['a planned length of the field sheet', '12', ({ text }, before) => /^\d{4,5}$/.test(text) && /"$/.test(before?.text ?? ''), (text) => String(Number(text) + 30)],
    ['a name of a device on the plan', '07', ({ text }) => /^D1(?: |$)/.test(text), (text) => text.replace('D1', 'D99')],
    ['where the first hole may point', '12', ({ text }) => text.startsWith('first hole '), (text) => `${text}, or so`],
    ['what a room shuts', '07', ({ text }) => text === 'Ventilation of the room', (text) => text.replace('Ventilation', 'Heating')],
    ['the signal that shuts it', '07', ({ text }) => text === 'X', () => 'Y'],
    ['the pressure that a cylinder is filled to', '09', ({ text }) => text === '300 bar gauge = 4351 psi gauge', (text) => text.replaceAll('3', '2')],
    ['the agent in a cylinder', '09', ({ text }) => /^24\.7\/0\.08$/.test(text), (text) => `1${text}`],
    ['a number in the index', '00', ({ text }) => /-02\.1$/.test(text), (text) => text.replace('02.1', '02.9')],
  ];
  test.each(slips)('a slip in %s is told', (_, number, isMeant, said) => {
    const slipped = withSlip(set.pages, (text, page, before) => series(number).test(page.number) && isMeant(text, before), said);
    expect(compareSet(slipped).told.length).toBeGreaterThan(0);
  });
});

describe('the printed set of F1 with a nozzle that hangs too low and a door that its release shuts', () => {
  let pages: readonly PrintedPage[];
  beforeAll(async () => {
    const { plan } = await buildDemo('F1');
    const derived = derivePlan(plan);
    const [nozzle] = derived.nozzles;
    const [space] = derived.spaces;
    const door = Object.values(space?.enclosure.openings ?? {}).find(({ kind }) => kind === 'door');
    if (!nozzle || !space || !door) throw new Error('The hut has no nozzle or no door.');
    const low = done(plan, setNozzleHeight(nozzle.ref, 1.5)).next;
    const room = { kind: 'enclosure', level: space.level.id, id: space.enclosure.id } as const;
    pages = (await printed(done(low, addShutdowns(room, [{ name: '', kind: 'door', target: door.id, on: 'manual-release' }])).next)).pages;
  }, 120_000);

  const links = (): PrintedPage[] => pages.filter((page) => page.links.some((link) => link.shown && /^\d+$/.test(wordsOfLink(page, link))));

  test('says the same of a thing on every sheet, and every mark ends at the number of its finding', () => {
    expect(compareSet(pages).told).toEqual([]);
    expect(links().map(({ number }) => number.slice(-4))).toEqual(['02.1', '10.1']);
  });

  test('a mark or a row with the number of another finding is told', () => {
    for (const page of links()) {
      const slipped = withSlip(pages, ({ text }, { number }) => number === page.number && text === '2', () => '3');
      expect(compareSet(slipped).told.filter((words) => words.startsWith('Link of finding')).length, page.number).toBeGreaterThan(0);
    }
  });

  test('a door in the release matrix that is on no sheet is told', () => {
    const slipped = withSlip(pages, ({ text }, { number }) => number.includes('-07.') && /^Door of|^Door$/.test(text), () => 'Hatch');
    expect(compareSet(slipped).told.join()).toContain('Hatch');
  });
});
