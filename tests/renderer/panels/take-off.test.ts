import { describe, expect, test } from 'vitest';
import { editPipe } from '#shared/commands/edit-pipe';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Piece } from '#shared/take-off/pieces-of';
import { USUAL_BILL, billOfMaterials } from '#shared/take-off/bill-of-materials';
import { billOf, networksOf, takeOffFileName } from '../../../src-renderer/actions/save-take-off.ts';
import { preferencesOf, withPreferences } from '../../../src-renderer/actions/keep-preferences.ts';
import { isEnteredInProfile, reasonsIn } from '../../../src-renderer/panels/take-off/missing-lengths.tsx';
import { isPieceSelected, onlyPipeOf, selectPiece } from '../../../src-renderer/panels/take-off/piece-selection.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';

const hut = async () => {
  const { plan } = await buildDemo('F1');
  const store = makeStore(plan, startSession('s'));
  return { plan, store, bill: billOfMaterials(derivePlan(plan)) };
};
const pieceOf = (pieces: readonly Piece[], at: number): Piece => {
  const piece = pieces[at];
  if (!piece) throw new Error('no such piece');
  return piece;
};

describe('a piece of the cut list', () => {
  test('pressed selects its pipes on their level, pressed again lets go of them', async () => {
    const { store, bill, plan } = await hut();
    const piece = pieceOf(bill.pieces, 1);
    selectPiece(store, piece);
    const { selection, level } = store.get().session;
    expect(selection).toEqual(piece.pipes.map((id) => ({ kind: 'pipe', network: piece.network, id })));
    expect(level).toBe(plan.networks[piece.network]?.level);
    expect(isPieceSelected(piece, selection)).toBe(true);
    expect(isPieceSelected(pieceOf(bill.pieces, 0), selection)).toBe(false);
    selectPiece(store, piece);
    expect(store.get().session.selection).toEqual([]);
  });

  test('of another network with pipes of the same ids is not marked', async () => {
    const { bill } = await hut();
    const piece = pieceOf(bill.pieces, 1);
    expect(isPieceSelected({ ...piece, network: 'other' }, [{ kind: 'pipe', network: piece.network, id: piece.pipes[0] ?? '' }])).toBe(false);
  });

  test('can be measured where it is one drawn pipe, not where it is several or a part of one', async () => {
    const { bill } = await hut();
    const piece = pieceOf(bill.pieces, 1);
    expect(onlyPipeOf(piece)).toBe(piece.pipes[0]);
    expect(onlyPipeOf({ ...piece, pipes: ['a', 'b'] })).toBeUndefined();
    expect(onlyPipeOf({ ...piece, to: { ...piece.to, node: null } })).toBeUndefined();
  });

  test('measured by an inch more is cut by an inch more; taken out again it is as drawn', async () => {
    const { store, bill } = await hut();
    const piece = pieceOf(bill.pieces, 1);
    const ref = { kind: 'pipe', network: piece.network, id: onlyPipeOf(piece) ?? '' } as const;
    const now = (): Piece => pieceOf(billOf(derivePlan(store.get().history.present), null, store.get().session.takeOff).pieces, 1);
    expect(store.commit(editPipe(ref, { measured_m: piece.centreToCentre_m + 0.0254 }))).toBe(true);
    expect(now().basis).toBe('measured');
    expect((now().cut_m ?? 0) - (piece.cut_m ?? 0)).toBeCloseTo(0.0254, 9);
    expect(store.commit(editPipe(ref, { measured_m: null }))).toBe(true);
    expect(now()).toEqual(piece);
  });
});

describe('what is missing', () => {
  test('is said once for all pieces that lack it; pieces that are cut are not named', async () => {
    const { plan } = await hut();
    const profiles = Object.fromEntries(Object.entries(plan.profiles).map(([id, profile]) => [id, { ...profile, fittingClass: null, madeFittings: [] }]));
    const bill = billOfMaterials(derivePlan({ ...plan, profiles }));
    const reasons = reasonsIn(bill);
    expect(reasons.map(({ reason }) => reason)).toEqual([...new Set(bill.pieces.filter(({ cut_m }) => cut_m === null).flatMap(({ because }) => because))]);
    expect(reasons.some(({ reason }) => isEnteredInProfile(reason))).toBe(true);
    expect(reasonsIn(billOfMaterials(derivePlan(plan)))).toEqual([]);
  });

  test('pipe that no profile can mend is not sent there', () => {
    expect(isEnteredInProfile('the fittings would touch')).toBe(false);
    expect(isEnteredInProfile('no made fitting turns by this angle')).toBe(false);
  });
});

describe('stock and saw', () => {
  test('are those of the session, and are remembered within bounds', async () => {
    const { plan } = await hut();
    const session = startSession('s');
    expect(billOf(derivePlan(plan), null, session.takeOff)).toMatchObject({ stock_m: USUAL_BILL.stockLength_m, kerf_m: USUAL_BILL.kerf_m });
    expect(billOf(derivePlan(plan), null, { stock_m: 6, kerf_m: 0.002 })).toMatchObject({ stock_m: 6, kerf_m: 0.002 });
    const remembered = preferencesOf({ ...session, takeOff: { stock_m: 6, kerf_m: 0.002 } });
    expect(withPreferences(session, remembered).takeOff).toEqual({ stock_m: 6, kerf_m: 0.002 });
    expect(withPreferences(session, { stock_m: -1, kerf_m: 'x' }).takeOff).toEqual(session.takeOff);
  });

  test('one network is taken off by itself, and its spreadsheet carries its name', async () => {
    const { plan } = await buildDemo('F3');
    const derived = derivePlan(plan);
    const [first] = derived.networks;
    const id = first?.ref.id ?? '';
    expect(networksOf(derived, id)).toEqual([first]);
    expect(networksOf(derived, null)).toEqual(derived.networks);
    expect(takeOffFileName(plan, 'Ferry', id)).toBe(`Ferry ${plan.networks[id]?.name} take-off.xlsx`);
    expect(takeOffFileName(plan, 'Ferry', null)).toBe('Ferry take-off.xlsx');
  });
});
