import type { Derived } from '../../derived/derived.ts';
import { text } from '../marks.ts';
import { wrapText } from '../text-box.ts';
import { type ViewDraft, uprightBox } from '../view-draft.ts';
import { DETAIL_WIDTH_mm, type Detail, namesText } from './detail.ts';
import { detailPen } from './detail-pen.ts';

interface Sign {
  readonly head: string;
  readonly words: string;
}

/** Wording as it is common practice; the adopted code or the authority may ask for another. */
const SIGNS: Readonly<Record<'door' | 'inside' | 'cylinder', Sign>> = {
  door: { head: 'WARNING', words: 'Nitrogen fire suppression. Do not enter when the alarm sounds: the air may not support life. Enter only when the room has been ventilated and its oxygen measured.' },
  inside: { head: 'WARNING', words: 'Nitrogen fire suppression. When the alarm sounds leave this room at once and close the door.' },
  cylinder: { head: 'CAUTION', words: 'Nitrogen at high pressure. Lock the release out before working on cylinder, valve or pipe.' },
};

function drawSign(view: ViewDraft, { head, words }: Sign): void {
  const pen = detailPen(view);
  const { sizes } = view;
  const [x, y, width, height] = [10, 6, DETAIL_WIDTH_mm - 20, 46];
  pen.box(x, y, width, height);
  const [left, top] = pen.at(x, y + height);
  const wide = width * sizes.factor;
  const lines = wrapText(words, wide - 6 * sizes.factor, sizes.text_mm, 'plain');
  view.texts.push(
    text(left + wide / 2, top + 9 * sizes.factor, head, { height_mm: sizes.title_mm, font: 'bold', align: 'middle' }),
    ...lines.map((each, i) => text(left + wide / 2, top + (17 + i * 4.6) * sizes.factor, each, { height_mm: sizes.text_mm, align: 'middle' })),
  );
  view.placer.block(uprightBox(left + wide / 2, top + (height * sizes.factor) / 2, wide / 2, (height * sizes.factor) / 2), 'sign');
}

/** Signs: at the doors, in the room and at the cylinders, with how many of each. */
export function signDetails({ plan, networks }: Derived): Detail[] {
  if (networks.length === 0) return [];
  const enclosures = Object.values(plan.levels).flatMap((level) => Object.values(level.enclosures));
  const doors = enclosures.flatMap(({ openings }) => Object.values(openings).filter(({ kind }) => kind === 'door'));
  const cylinders = networks.flatMap(({ network }) => Object.values(network.cylinders));
  const common = {
    source: 'wording: common practice; the kinds of sign as NFPA 2001 asks for them (memory)',
    caution: 'The adopted code and the authority decide wording, language, size and place.',
  };
  const sign = (title: string, where: string, notes: readonly string[], which: Sign): Detail => ({ title, where, notes, ...common, draw: (view) => drawSign(view, which) });
  return [
    ...(doors.length > 0 ? [sign('Sign outside each door', namesText(enclosures.map(({ name }) => name)), [`${doors.length} ${doors.length === 1 ? 'door' : 'doors'}: one sign on the outside of each, at eye height, and at every other way in.`], SIGNS.door)] : []),
    ...(enclosures.length > 0 ? [sign('Sign inside each room', namesText(enclosures.map(({ name }) => name)), ['At each exit, to be seen on the way out.', 'Rooms next door that agent can drift into need a sign as well.'], SIGNS.inside)] : []),
    ...(cylinders.length > 0 ? [sign('Sign at the cylinders', namesText(cylinders.map(({ name }) => name)), ['Beside the cylinders, with the name of the room that they protect.'], SIGNS.cylinder)] : []),
  ];
}
