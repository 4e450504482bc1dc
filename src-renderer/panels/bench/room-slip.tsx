import { useMemo } from 'react';
import { normalAngle_rad } from '#shared/geometry/angle';
import { reachesOf } from '#shared/margins/patch-reach';
import { slideOf } from '#shared/margins/slide-of';
import { tapeDown_m, tapeUp_m } from '#shared/margins/tape-down';
import { MARGIN_RULES, type MarginRule } from '#shared/margins/place-margin';
import { type Site, siteOf } from '#shared/margins/site';
import { turnRangeOf } from '#shared/margins/turn-range';
import type { DerivedNozzle } from '#shared/derived/derived';
import { changeMargins } from '../../actions/margin-actions.ts';
import { useRoomToMove } from '../../input/board-context.ts';
import { MARGIN_WORDS } from '../../plan-words.ts';
import { selectEvaluation, shownPlan } from '../../store/selectors.ts';
import type { Room } from '../../store/room-to-move.ts';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { Readings, Slip } from './slip.tsx';
import { type Figures, useFigures } from './use-plan.ts';

const marginsOf = (state: State) => state.session.margins;
const WAYS = ['east', 'north', 'west', 'south'] as const;
/** What would be wrong just beyond, by check. */
const END_WORDS: Readonly<Record<string, string>> = {
  N1: 'it is too near a wall',
  N2: 'the ceiling is at another height',
  N5: 'a hole blows into a corner',
  N6: 'a hole blows at a near wall',
  N7: 'a jet is cut short',
  N9: 'floor is left uncovered',
  P1: 'its run goes askew',
  P2: 'the pipe is too long',
  P16: 'a piece of pipe is too short',
  P27: 'its pipe runs into something',
  N8: 'a jet comes to people or loose things',
  N10: 'a nozzle serves floor too far away',
  N12: 'it is too near another nozzle',
  N14: 'a jet runs at a beam',
  N15: 'it hangs too near over equipment',
  N18: 'a jet in the void is cut short',
  N19: 'it comes too near a live part',
  E11: 'a jet blows at the relief vent',
  P8: 'too little straight pipe leads to a tee',
  P11: 'the paths become too uneven',
  P29: 'its pipe goes through a wall',
  P30: 'its pipe hangs too low where people walk',
};
const SLIDE_WORDS = { 'east-west': 'east and west', 'north-south': 'north and south', slanted: 'to and fro' } as const;
const endWords = (rule: string | undefined): string => (rule === undefined ? 'the room ends' : (END_WORDS[rule] ?? 'another check breaks'));

function PatchReadings({ room, figures }: { readonly room: Room; readonly figures: Figures }) {
  const { patch, isTried } = room;
  if (!patch.isKnown) return <p className="field-help">Not known: {patch.because}</p>;
  const { length, system } = figures;
  if (!patch.holdsPlace) return <p className="field-help">{patch.parts.length === 0 ? 'With its height, its holes and its pipe as drawn, every place in this room breaks a check. Turn it or change its height first.' : 'Where it hangs now a rule is broken. Show where it may be put, and drag it there.'}</p>;
  const reaches = reachesOf(patch);
  const also = 'alsoBroken' in patch ? patch.alsoBroken : [];
  const slides = slideOf(patch);
  return (
    <>
      <Readings rows={reaches.map(({ reach_m, endedBy }, i) => ({ label: WAYS[i] ?? '', value: length(tapeDown_m(reach_m, system)), note: `then ${endWords(endedBy)}` }))} />
      {slides ? (
        <p className="field-help">
          It slides along its run only, {SLIDE_WORDS[slides]}: a tee holds the far end, so that across the run it can shift only as far as fittings take up. To go farther, draw the run anew with one more elbow.
        </p>
      ) : null}
      {also.length > 0 ? <p className="field-help">Also kept clear of: {also.map(({ title }) => title.toLowerCase()).join(', ')}.</p> : null}
      <p className="field-help">{isTried ? 'Straight each way, everything else as drawn, until a check stops or warns that does not as drawn. Orifice, flow shares and thrust follow from the discharge: look at them after a move, and see to the supports.' : 'Every check is being tried on it.'}</p>
    </>
  );
}

function turnText(site: Site | undefined, { quantity }: Figures): string {
  const range = site && turnRangeOf(site);
  if (!site || !range) return 'as it points now a hole breaks a rule, or a limit is blank';
  if (range.to_rad - range.from_rad >= 2 * Math.PI - 1e-6) return 'any way';
  const { rotation_rad, holes_rad } = site.nozzle.nozzle;
  const right_rad = normalAngle_rad(rotation_rad + (holes_rad[0] ?? 0) - range.from_rad);
  return `${quantity(range.to_rad - range.from_rad - right_rad, 'angle')} left, ${quantity(right_rad, 'angle')} right`;
}

/** How far the nozzle may be shifted, turned and raised before a rule breaks, with what shows it on the board. */
export function RoomSlip({ derived }: { readonly derived: DerivedNozzle }) {
  const room = useRoomToMove();
  const plan = useStore(shownPlan);
  const margins = useStore(marginsOf);
  const store = useStoreItself();
  const figures = useFigures();
  const { length, system } = figures;
  const isStale = room !== null && room.plan !== plan;
  const heights = room?.heights;
  const evaluation = useStore(selectEvaluation);
  const site = useMemo(() => {
    const found = siteOf(evaluation.derived, derived.ref);
    return 'site' in found ? found.site : undefined;
  }, [evaluation, derived.ref]);
  return (
    <Slip title="Room to move" part="room" aside={isStale ? <span className="quiet">from before this change</span> : undefined}>
      {room ? <PatchReadings room={room} figures={figures} /> : <p className="field-help">Being found: how far it may be shifted before the first check breaks.</p>}
      <Readings
        rows={[
          { label: 'Turn', value: turnText(site, figures) },
          { label: 'Orifice above floor', value: heights ? `${length(tapeUp_m(heights.least_m, system))} to ${length(tapeDown_m(heights.greatest_m, system))}` : room?.patch.isKnown ? 'being found' : 'not known' },
        ]}
      />
      <div className="row">
        <button type="button" className="button is-slim" aria-pressed={margins.patch} onClick={() => changeMargins(store, { patch: !margins.patch })}>
          Show patch
        </button>
        <button type="button" className="button is-slim" aria-pressed={margins.dial} onClick={() => changeMargins(store, { dial: !margins.dial })}>
          Directions at the pointer
        </button>
      </div>
      <div className="fields">
        <Choice
          label="Show margins of"
          value={margins.map ?? ''}
          options={[{ value: '', label: 'no rule' }, ...MARGIN_RULES.map((rule) => ({ value: rule, label: MARGIN_WORDS[rule] }))]}
          onCommit={(rule) => changeMargins(store, { map: rule === '' ? null : (rule as MarginRule) })}
          wide
        />
      </div>
    </Slip>
  );
}
