import { beforeAll, describe, expect, test } from 'vitest';
import { addSheetNote } from '#shared/commands/add-sheet-note';
import { editSheetNote } from '#shared/commands/edit-sheet-note';
import { forgetPlaces } from '#shared/commands/forget-places';
import { moveDimensionText } from '#shared/commands/move-dimension-text';
import { placeView } from '#shared/commands/place-view';
import type { Plan } from '#shared/model/plan';
import { NOTHING_ASTRAY, astrayOf } from '#shared/sheets/astray';
import type { Sheet } from '#shared/sheets/sheet';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { sheetsOf } from '../../support/sheet-set.ts';
import { done, refusal } from '../../support/try-command.ts';

let plan: Plan;
let usual: Sheet[];
const lookAt = (own: Plan): ReturnType<typeof astrayOf> => astrayOf(own.settings.sheets, sheetsOf(own));

beforeAll(async () => {
  ({ plan } = await buildDemo('F1'));
  usual = sheetsOf(plan);
});

describe('what the user put on sheets that are gone', () => {
  test('nothing of it while every sheet is there', () => {
    const view = usual.flatMap(({ views }) => views)[0];
    const text = usual.flatMap(({ dimensions }) => dimensions)[0];
    if (!view || !text) throw new Error('The demo has views with dimensions.');
    let own = done(plan, addSheetNote(usual[0]?.home ?? '', 40, 40, 50, 'On the first sheet')).next;
    own = done(own, placeView(view.key, { at: view.corner })).next;
    own = done(own, moveDimensionText(text.key, { along_mm: text.along_mm, off_mm: text.off_mm })).next;
    expect(lookAt(own)).toEqual(NOTHING_ASTRAY);
  });

  test('a note is found, and put on another sheet', () => {
    const own = done(plan, addSheetNote('Plan of a room that was deleted', 40, 40, 50, 'Mind the beam')).next;
    const [note] = lookAt(own).notes;
    expect(note).toMatchObject({ text: 'Mind the beam', sheet: 'Plan of a room that was deleted' });
    const back = done(own, editSheetNote(note?.id ?? '', { sheet: usual[1]?.home ?? '' })).next;
    expect(lookAt(back)).toEqual(NOTHING_ASTRAY);
    expect(sheetsOf(back)[1]?.notes).toHaveLength(1);
  });

  test('places of views and of dimension texts are found, and forgotten', () => {
    let own = done(plan, placeView('section/gone', { scale: 50 })).next;
    own = done(own, moveDimensionText('section/gone|height/a/b', { along_mm: 1, off_mm: 2 })).next;
    const { views, dimensions } = lookAt(own);
    expect([views, dimensions]).toEqual([['section/gone'], ['section/gone|height/a/b']]);
    const { next } = done(own, forgetPlaces(views, dimensions));
    expect(next.settings.sheets).toEqual(plan.settings.sheets);
    expect(refusal(next, forgetPlaces(views, dimensions))).toContain('forgotten already');
    expect(sheetsOf(next).flatMap(({ placing }) => placing)).toEqual([]);
  });
});

describe('a note over other words', () => {
  const remarks = (own: Plan): string[] => sheetsOf(own).flatMap(({ placing }) => placing);

  test('is told, on free paper it is not, and of two over each other only one', () => {
    const sheet = usual.find(({ dimensions }) => dimensions.length > 0);
    const text = sheet?.dimensions.find(({ box }) => Math.abs(Math.sin(box.rotation_rad)) < 0.1);
    if (!sheet || !text) throw new Error('The demo has a level dimension.');
    const over = done(plan, addSheetNote(sheet.home, text.box.x - 5, text.box.y - 2, 60, 'Right over the dimension')).next;
    expect(remarks(over)).toEqual(['The note “Right over the dimension” lies over other words. Move it.']);
    const { area } = { area: { x: sheet.paper.width_mm * 0.45, y: sheet.paper.height_mm * 0.42 } };
    const free = done(plan, addSheetNote(sheet.home, area.x, area.y, 60, 'Free')).next;
    expect(remarks(free)).toEqual([]);
    const twice = done(free, addSheetNote(sheet.home, area.x + 1, area.y + 1, 60, 'Free again')).next;
    expect(remarks(twice)).toEqual(['The note “Free again” lies over other words. Move it.']);
  });
});
