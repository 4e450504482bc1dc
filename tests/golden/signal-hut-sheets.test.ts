import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { datumsOf } from '#shared/derived/datum';
import { composePlanView } from '#shared/sheets/plan-view';
import { planContents } from '#shared/sheets/plan-content';
import { PAPERS } from '#shared/paper/papers';
import { planCuts } from '#shared/sheets/section-cuts';
import { composeSection } from '#shared/sheets/section-view';
import type { Mark } from '#shared/sheets/sheet';
import { typeSizesOf } from '#shared/paper/type-sizes';
import { buildDemo } from '../../src-main/demos/build-demo.ts';

const ROOM = { left: 0, top: 0, right: 300, bottom: 240 };
const SIZES = typeSizesOf(PAPERS['ANSI-B']);
const round = (value: number): number => Math.round(value * 100) / 100 + 0;

/** Line a mark: what it is, where it begins, what it says. */
const told = (mark: Mark): string => {
  if (mark.kind === 'text') return `text ${round(mark.x)} ${round(mark.y)} ${mark.height_mm} ${mark.font} ${mark.align} ${round(mark.rotation_rad ?? 0)} ${mark.text}`;
  if (mark.kind === 'line') return `line ${mark.stroke.width_mm} ${mark.stroke.colour}${mark.fill ? ` filled ${mark.fill}` : ''} ${mark.places.map(round).join(' ')}`;
  if (mark.kind === 'segments') {
    const places = [...mark.places].map(round);
    return `segments ${mark.stroke.width_mm} ${places.length / 4} ${createHash('sha256').update(places.join(' ')).digest('hex').slice(0, 12)}`;
  }
  if (mark.kind === 'circle') return `circle ${round(mark.x)} ${round(mark.y)} ${round(mark.radius_mm)}`;
  return mark.kind;
};

test('plan and section of the signal hut stay as they are, mark by mark', async () => {
  const { plan } = await buildDemo('F1');
  const derived = derivePlan(plan);
  const [content] = planContents(derived);
  const cuts = planCuts(derived);
  const [cut] = cuts;
  if (!content || !cut) throw new Error('The signal hut has one level and one section.');
  const options = { scale: 32, sizes: SIZES, lengths: 'feet', room: ROOM, drawings: new Map(), cuts, findings: [], issue: null, datums: datumsOf(derived) } as const;
  const view = composePlanView(content, options);
  const section = composeSection(derived, cut, 32, SIZES, 'feet', ROOM);
  const list = ['PLAN', ...(view?.marks ?? []).map(told), 'SECTION', ...section.marks.map(told), ''].join('\n');
  await expect(list).toMatchFileSnapshot('signal-hut-sheets.txt');
});
